package layout

import (
	"fmt"
	"strings"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// Cut is one cut to mark on a plank lying face up with its near edge to you. All is measured from edges that stay as the
// factory made them, so that the whole plank can be marked before the first cut; in the order listed, the cuts make the piece.
type Cut struct {
	What string // "crosscut", "angle", "rip", "taper", "notch", "hole", "lip"
	Edge string // the edge that it is measured from, or the end and the edge: "right end, near edge"
	Off  string // the edge, end or corner that comes off: "right end", "near left corner"
	// Near and Far are the lengths (crosscut, angle) on the near and the far edge, as even rips leave them, or the widths (rip, taper)
	// at the left and the right end of the piece.
	Near, Far length.Length
	// The box of a notch or a hole, from its end and its edge. Of a taper, where the width at an end stands that is no
	// square one: Left so far from the right end, Right so far from the left end; 0 else.
	Left, Right, Bottom, Top length.Length
	Round                    bool // the hole is drilled, as wide as its box
	// Marks are the points to join, where such a cut is no box; lengths in X, widths in Y, from the end and the edge.
	Marks []geom.Point
}

// FromRight says whether lengths are measured from the right end.
func (c Cut) FromRight() bool { return strings.HasPrefix(c.Edge, "right end") }

// FromFar says whether widths are measured from the far edge.
func (c Cut) FromFar() bool { return strings.HasSuffix(c.Edge, "far edge") }

// Text says the cut as it is marked, on a tape.
func (c Cut) Text(t length.Tape) string {
	switch c.What {
	case "crosscut":
		return fmt.Sprintf("crosscut at %s from the %s", t.Text(c.Near), c.Edge)
	case "rip":
		return c.ripText(t)
	case "taper":
		if t.Text(c.Near) == t.Text(c.Far) {
			return c.ripText(t)
		}
		return c.taperText(t)
	case "lip":
		return "cut the lip off the " + c.Edge
	case "hole":
		return c.holeText(t)
	}
	switch {
	case len(c.Marks) > 0 && c.Off == "":
		return "cut out what lies between " + c.marksText(t)
	case len(c.Marks) > 0 && c.What == "angle":
		return fmt.Sprintf("cut off the %s, joining %s", c.Off, c.marksText(t))
	case len(c.Marks) > 0:
		return fmt.Sprintf("notch off the %s, joining %s", c.Off, c.marksText(t))
	case c.What == "angle" && c.Off != c.Edge && t.Text(c.Near) == t.Text(c.Far):
		return fmt.Sprintf("crosscut at %s from the %s", t.Text(c.Near), c.Edge)
	case c.What == "angle":
		return fmt.Sprintf("cut the %s at an angle, %s on the near edge and %s on the far, from the %s", c.Off, t.Text(c.Near), t.Text(c.Far), c.Edge)
	}
	return "notch from " + c.boxText(t)
}

func (c Cut) ripText(t length.Tape) string {
	if c.Off == c.Edge {
		return fmt.Sprintf("rip %s off the %s", t.Text(c.Near), c.Edge)
	}
	return fmt.Sprintf("rip at %s from the %s", t.Text(c.Near), c.Edge)
}

func (c Cut) taperText(t length.Tape) string {
	left, right := "at the left end", "at the right end"
	if c.Left != 0 {
		left = "at " + t.Text(c.Left) + " from the right end"
	}
	if c.Right != 0 {
		right = "at " + t.Text(c.Right) + " from the left end"
	}
	from := ", from the " + c.Edge
	if c.Off == c.Edge {
		from = ", off the " + c.Edge
	}
	return fmt.Sprintf("rip tapered, %s %s and %s %s%s", t.Text(c.Near), left, t.Text(c.Far), right, from)
}

func (c Cut) holeText(t length.Tape) string {
	switch {
	case c.Round:
		return fmt.Sprintf("drill a hole %s wide, its centre %s along and %s across, from the %s",
			t.Text(c.Right-c.Left), t.Text((c.Left+c.Right)/2), t.Text((c.Bottom+c.Top)/2), c.both())
	case len(c.Marks) > 0:
		return "cut out what lies between " + c.marksText(t)
	}
	return "cut out a hole from " + c.boxText(t)
}

func (c Cut) boxText(t length.Tape) string {
	return fmt.Sprintf("%s to %s along and %s to %s across, from the %s", t.Text(c.Left), t.Text(c.Right), t.Text(c.Bottom), t.Text(c.Top), c.both())
}

func (c Cut) marksText(t length.Tape) string {
	var marks []string
	for _, m := range c.Marks {
		marks = append(marks, fmt.Sprintf("%s along %s across", t.Text(m.X), t.Text(m.Y)))
	}
	return strings.Join(marks, ", ") + ", from the " + c.both()
}

// both names the end and the edge that the cut is measured from.
func (c Cut) both() string { return strings.Replace(c.Edge, ", ", " and the ", 1) }
