package layout

import (
	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// pipe is the hole that a pipe needs: its own width and the gap round it. The centre is in the frame.
type pipe struct {
	centre geom.Point
	wide   length.Length
}

// pipes lists the pipes that stand whole within the floor.
func (f frame) pipes(edges []room.Edge) []pipe {
	var out []pipe
	for i := 0; i+3 < len(edges); i++ {
		e, opposite := edges[i], edges[i+2]
		if !e.Round || edges[i+3].Wall != e.Wall || edges[i+3].B != e.A {
			continue
		}
		centre := geom.Point{X: (e.A.X + opposite.A.X) / 2, Y: (e.A.Y + opposite.A.Y) / 2}
		out = append(out, pipe{f.in(centre), e.Len() + 2*e.Gap})
	}
	return out
}
