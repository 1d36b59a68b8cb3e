package sheet

import (
	"fmt"
	"strings"
)

// Fill is an area in one tone, under a texture. Its rings may be nested: what lies in an even number of them is left out.
type Fill struct {
	Rings   [][]Point
	Tone    Tone
	Texture Texture
	Within  Box // where not empty, only what lies in it
}

// Line is a straight line, Width pixels wide, in black.
type Line struct {
	A, B  Point
	Width int
	Dash  Dash
}

// Head is a filled arrowhead with its tip at a point, coming from another; Size is its length.
type Head struct {
	Tip, From Point
	Size      int
}

// Text is one line of black lettering, At the top left corner of its box. Turned runs from bottom to top. With Clear, the box
// is first filled with Tone, so that no hatching runs through the letters. Tight makes the box just high enough for its own letters.
type Text struct {
	At     Point
	Size   int // of the letters, in pixels
	Bold   bool
	Turned bool
	Clear  bool
	Tight  bool
	Tone   Tone
	S      string
}

// Dash is how a line is broken.
type Dash int

// The dashes, after ISO 128-2: a continuous line, a dashed one for what lies hidden or beyond, a chain for seams and centres.
const (
	Solid Dash = iota
	Dashed
	Chain
)

var dashNames = [...]string{"solid", "dashed", "chain"}

// dashRuns are lengths of stroke and of gap by turns, in line widths.
var dashRuns = [...][]int{nil, {6, 4}, {12, 3, 2, 3}}

func (f Fill) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "fill %s %s", tones[f.Tone].name, textureNames[f.Texture])
	for i, ring := range f.Rings {
		if i > 0 {
			b.WriteString(" /")
		}
		for _, p := range ring {
			fmt.Fprintf(&b, " %d,%d", p.X, p.Y)
		}
	}
	if f.Within != (Box{}) {
		fmt.Fprintf(&b, " within %d,%d %d,%d", f.Within.X0, f.Within.Y0, f.Within.X1, f.Within.Y1)
	}
	return b.String()
}

func (l Line) String() string {
	return fmt.Sprintf("line %d %s %d,%d %d,%d", l.Width, dashNames[l.Dash], l.A.X, l.A.Y, l.B.X, l.B.Y)
}

func (h Head) String() string {
	return fmt.Sprintf("head %d %d,%d from %d,%d", h.Size, h.Tip.X, h.Tip.Y, h.From.X, h.From.Y)
}

func (t Text) String() string {
	style := "plain"
	if t.Bold {
		style = "bold"
	}
	if t.Turned {
		style += " turned"
	}
	if t.Clear {
		style += " on " + tones[t.Tone].name
	}
	return fmt.Sprintf("text %d %s %d,%d %q", t.Size, style, t.At.X, t.At.Y, t.S)
}

// Area is the smallest box about a fill's first ring.
func (f Fill) Area() Box { return Bounds(f.Rings[0]...) }

// Box is the room that the text takes.
func (t Text) Box() Box {
	w, h := Measure(t.S, t.Size, t.Bold)
	if t.Tight {
		up, down := t.reach()
		h = up + down
	}
	if t.Turned {
		w, h = h, w
	}
	return Box{t.At.X, t.At.Y, t.At.X + w, t.At.Y + h}
}

// Outline draws a closed line round points.
func Outline(points []Point, width int, dash Dash) []Shape {
	out := make([]Shape, 0, len(points))
	for i, p := range points {
		out = append(out, Line{p, points[(i+1)%len(points)], width, dash})
	}
	return out
}
