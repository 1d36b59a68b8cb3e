package sheet

import (
	"fmt"
	"math"
)

// Leaning is one line of black bold lettering at a slant, on a ground of one tone: it runs the way of (X, Y), a step of length
// 1 on the sheet, with its middle at a point. Its box is just high enough for its letters.
type Leaning struct {
	Middle Point
	X, Y   float64
	Size   int
	Tone   Tone
	S      string
}

func (l Leaning) String() string {
	return fmt.Sprintf("leaning %d on %s %d,%d along %.3f,%.3f %q", l.Size, tones[l.Tone].name, l.Middle.X, l.Middle.Y, l.X, l.Y, l.S)
}

// line is the same lettering lying level.
func (l Leaning) line() Text { return Text{Size: l.Size, Bold: true, Tight: true, S: l.S} }

// at is a place of the line's own, from its middle, on the sheet.
func (l Leaning) at(along, down float64) Point {
	return Point{
		X: l.Middle.X + int(math.Round(float64(along*l.X)-float64(down*l.Y))),
		Y: l.Middle.Y + int(math.Round(float64(along*l.Y)+float64(down*l.X))),
	}
}

// Outline gives points round the lettering, by some pixels wider than it: corners and the middles between.
func (l Leaning) Outline(by int) []Point {
	b := l.line().Box()
	w, h := float64(b.W())/2+float64(by), float64(b.H())/2+float64(by)
	return []Point{l.at(-w, -h), l.at(-w/2, -h), l.at(0, -h), l.at(w/2, -h), l.at(w, -h), l.at(w, 0), l.at(w, h), l.at(w/2, h), l.at(0, h), l.at(-w/2, h), l.at(-w, h), l.at(-w, 0)}
}

// Boxes are small boxes that cover the lettering, for a Placer.
func (l Leaning) Boxes() []Box {
	b := l.line().Box()
	h := float64(b.H()) / 2
	n := max(1, b.W()/8)
	var out []Box
	for i := range n {
		from, to := float64(b.W()*i)/float64(n)-float64(b.W())/2, float64(b.W()*(i+1))/float64(n)-float64(b.W())/2
		out = append(out, Bounds(l.at(from, -h), l.at(to, -h), l.at(to, h), l.at(from, h)))
	}
	return out
}

func (l Leaning) paint(c *canvas) {
	Fill{Rings: [][]Point{l.Outline(2)}, Tone: l.Tone}.paint(c)
	t := l.line()
	b := t.Box()
	if b.W() <= 0 || b.H() <= 0 {
		return
	}
	level := newCanvas(b.W(), b.H(), make([]uint8, b.W()*b.H()))
	t.paint(level)
	all := Bounds(l.Outline(2)...)
	for y := all.Y0; y <= all.Y1; y++ {
		for x := all.X0; x <= all.X1; x++ {
			dx, dy := float64(x-l.Middle.X), float64(y-l.Middle.Y)
			along, down := float64(dx*l.X)+float64(dy*l.Y), float64(dy*l.X)-float64(dx*l.Y)
			if ink := level.between(along+float64(b.W())/2, down+float64(b.H())/2); ink > 0 {
				c.ink(x, y, ink)
			}
		}
	}
}

// between is the ink at a place between pixels.
func (c *canvas) between(x, y float64) uint8 {
	x0, y0 := int(math.Floor(x)), int(math.Floor(y))
	fx, fy := x-float64(x0), y-float64(y0)
	at := func(x, y int) float64 {
		if x < 0 || y < 0 || x >= c.w || y >= c.h {
			return 0
		}
		return float64(c.pix[y*c.w+x] & 15)
	}
	top := float64(at(x0, y0)*(1-fx)) + float64(at(x0+1, y0)*fx)
	low := float64(at(x0, y0+1)*(1-fx)) + float64(at(x0+1, y0+1)*fx)
	return uint8(math.Round(float64(top*(1-fy)) + float64(low*fy)))
}
