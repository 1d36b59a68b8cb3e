package sheet

import "strings"

// ascent and descent are the room that letters of a size take over and under the base line: in the Go fonts capitals are 0.72
// of the size high, and what hangs under the line is 0.21 of it.
// The accent of a capital may stand out.
func ascent(size int) int  { return (size*13 + 15) / 16 }
func descent(size int) int { return (size*4 + 15) / 16 }

// Measure gives the width and the height of a line of text.
func Measure(s string, size int, bold bool) (w, h int) {
	for _, r := range s {
		w += letter(r, size, bold).advance
	}
	return w, ascent(size) + descent(size)
}

// reach is how far the letters of a text go over and under the base line.
func (t Text) reach() (up, down int) {
	for _, r := range t.S {
		g := letter(r, t.Size, t.Bold)
		up, down = max(up, -g.y), max(down, g.y+g.h)
	}
	return up, down
}

func (t Text) paint(c *canvas) {
	b := t.Box()
	if t.Clear {
		clear := b.Grow(2)
		for y := clear.Y0; y < clear.Y1; y++ {
			c.span(clear.X0, clear.X1, y, t.Tone, Plain)
		}
	}
	up := ascent(t.Size)
	if t.Tight {
		up, _ = t.reach()
	}
	pen := Point{b.X0, b.Y0 + up}
	if t.Turned {
		pen = Point{b.X0 + up, b.Y1}
	}
	for _, r := range t.S {
		g := letter(r, t.Size, t.Bold)
		if t.Turned {
			c.turned(g, pen)
			pen.Y -= g.advance
		} else {
			c.upright(g, pen)
			pen.X += g.advance
		}
	}
}

func (c *canvas) upright(g *glyph, pen Point) {
	for y := range g.h {
		for x := range g.w {
			if ink := g.ink[y*g.w+x]; ink > 0 {
				c.ink(pen.X+g.x+x, pen.Y+g.y+y, ink)
			}
		}
	}
}

// turned draws a letter a quarter turn to the left: its way right goes up, its way down goes right.
func (c *canvas) turned(g *glyph, pen Point) {
	for y := range g.h {
		for x := range g.w {
			if ink := g.ink[y*g.w+x]; ink > 0 {
				c.ink(pen.X+g.y+y, pen.Y-g.x-x-1, ink)
			}
		}
	}
}

// Wrap breaks text into lines no wider than a width, at spaces; a word that is wider stays whole.
func Wrap(s string, size int, bold bool, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if w, _ := Measure(longer, size, bold); w > width && line != "" {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// Fit cuts text off, with dots, where it is wider than a width.
func Fit(s string, size int, bold bool, width int) string {
	if w, _ := Measure(s, size, bold); w <= width {
		return s
	}
	letters := []rune(s)
	for n := len(letters) - 1; n > 0; n-- {
		short := string(letters[:n]) + "..."
		if w, _ := Measure(short, size, bold); w <= width {
			return short
		}
	}
	return ""
}
