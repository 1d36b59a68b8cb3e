package draw

import (
	"fmt"
	"strings"

	"lastrow/calc/layout"
)

// trap is a reason why pieces can't be tilted in, the way in, and the pieces.
type trap struct {
	why, wayIn string
	pieces     []string
}

// traps tells the pieces that can't be tilted in, those of one reason together.
func (p *plan) traps() []string {
	var found []*trap
	p.each(func(piece *layout.Piece) {
		if piece.Trapped == "" {
			return
		}
		name := fmt.Sprintf("row %d piece %d", piece.Row, piece.N)
		for _, t := range found {
			if t.why == piece.Trapped && t.wayIn == piece.WayIn {
				t.pieces = append(t.pieces, name)
				return
			}
		}
		found = append(found, &trap{piece.Trapped, piece.WayIn, []string{name}})
	})
	var out []string
	for _, t := range found {
		out = append(out, "! "+t.names()+": "+t.why+"; "+t.wayIn+".")
	}
	return out
}

// names lists the pieces, the first few of many.
func (t *trap) names() string {
	const most = 6
	if len(t.pieces) <= most {
		return strings.Join(t.pieces, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(t.pieces[:most], ", "), len(t.pieces)-most)
}
