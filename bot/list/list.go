// Package list makes the cut list of a floor: every piece that is cut, in the order of laying, for a helper at the saw.
// It is text in columns for a chat, and CSV for a sheet of cells, in the job's units.
package list

import (
	"fmt"
	"strings"

	"lastrow/calc/layout"
	"lastrow/calc/length"
)

// Line is one piece to cut. Its texts are as the tape reads; an empty one means no such cut.
type Line struct {
	Row, Piece             int
	Length                 length.Length
	Long                   string // its length, and the end that this is measured from: the factory end that stays
	Rip, Angle, Notch, Lip string
	Plank                  int    // counted from 1 in the order that planks are taken from boxes
	From                   string // "new" or the piece whose offcut it is cut from
	Rest                   string // where the rest of the plank goes
}

// Lines lists the pieces that need a cut, if only of a lip.
func Lines(l *layout.Layout, t length.Tape) []Line {
	var out []Line
	for _, row := range l.Rows {
		for _, run := range row.Runs {
			for i := range run.Pieces {
				if p := &run.Pieces[i]; len(p.Cuts) > 0 {
					out = append(out, Of(l, p, t))
				}
			}
		}
	}
	return out
}

// Of gives the line of one piece. A whole plank has no cuts in it.
func Of(l *layout.Layout, p *layout.Piece, t length.Tape) Line {
	line := Line{Row: p.Row, Piece: p.N, Length: p.Right - p.Left, Long: t.Text(p.Right - p.Left), Plank: p.Plank + 1}
	for _, c := range p.Cuts {
		line.add(c, t)
	}
	line.From, line.Rest = stock(l, p, t)
	return line
}

func (line *Line) add(c layout.Cut, t length.Tape) {
	switch c.What {
	case "crosscut":
		line.Long += " from the " + c.Edge
	case "rip", "taper":
		line.Rip = also(line.Rip, c.Text(t))
	case "angle":
		line.Angle = also(line.Angle, c.Text(t))
	case "notch", "hole":
		line.Notch = also(line.Notch, c.Text(t))
	case "lip":
		line.Lip = also(line.Lip, c.Edge)
	}
}

func also(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

// stock tells what a piece is cut from and where the rest of that plank goes.
func stock(l *layout.Layout, p *layout.Piece, t length.Tape) (from, rest string) {
	from = "new"
	if p.Plank < 0 || p.Plank >= len(l.Stock) {
		return from, ""
	}
	s := l.Stock[p.Plank]
	if s.Scrap > 0 {
		from = t.Text(s.Scrap) + " offcut"
	}
	var later []string
	for i, ref := range s.Pieces {
		if ref.Row != p.Row || ref.N != p.N {
			continue
		}
		if i > 0 {
			from = "offcut of " + name(s.Pieces[i-1])
		}
		for _, next := range s.Pieces[i+1:] {
			later = append(later, name(next))
		}
	}
	if len(later) > 0 {
		return from, "to " + strings.Join(later, ", ")
	}
	return from, leftOver(s.Left, t)
}

func leftOver(left []length.Length, t length.Tape) string {
	var parts []string
	for _, l := range left {
		if t.Round(l) > 0 {
			parts = append(parts, t.Text(l))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return strings.Join(parts, ", ") + " left over"
}

func name(r layout.Ref) string { return fmt.Sprintf("%d.%d", r.Row, r.N) }
