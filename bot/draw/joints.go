package draw

import (
	"fmt"
	"strings"

	"lastrow/calc/layout"
	"lastrow/calc/length"
)

// joints tells how near the row's joints come to those of its neighbours.
func (p *rowPage) joints() {
	var parts []string
	for _, n := range []int{p.row.N - 1, p.row.N + 1} {
		if n < 1 || n > len(p.layout.Rows) {
			continue
		}
		if d, ok := apart(p.row, &p.layout.Rows[n-1]); ok {
			parts = append(parts, fmt.Sprintf("%s to row %d", p.title.Tape.Text(d), n))
		}
	}
	if len(parts) > 0 {
		p.write("Joints are at the nearest "+strings.Join(parts, ", ")+".", plainText+2, false)
	}
}

// apart is the least distance between the joints of two rows; ok is false where either has none.
func apart(a, b *layout.Row) (least length.Length, ok bool) {
	other := jointsOf(b)
	for _, x := range jointsOf(a) {
		for _, y := range other {
			if d := abs(x - y); !ok || d < least {
				least, ok = d, true
			}
		}
	}
	return least, ok
}

// jointsOf gives the places of a row's joints from its left-hand end.
func jointsOf(r *layout.Row) []length.Length {
	var out []length.Length
	for _, run := range r.Runs {
		for i := 1; i < len(run.Pieces); i++ {
			out = append(out, run.Pieces[i].Left)
		}
	}
	return out
}
