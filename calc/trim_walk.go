package calc

import (
	"fmt"
	"math"
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/material"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// trimPieces numbers the pieces of trim round the job's floor, from its door on, and cuts them from sticks.
func (in *inputs) trimPieces(f *room.Floor, stick length.Length) (Result, error) {
	pieces := TrimOf(f)
	run, _, _ := in.wallsOf(f)
	kerf := in.lengthOr(term.Kerf, limit.Kerf.In(in.tape.System))
	thick := in.trimThickness(pieces)
	var lengths []length.Length
	for _, p := range pieces {
		lengths = append(lengths, p.Stock(thick))
	}
	plan, joints, err := material.Sticks(lengths, stick, kerf)
	if err != nil {
		in.refuse("%v", err)
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	in.use(term.Given{Name: term.Perimeter, Value: term.Len(f.Perimeter()), From: term.FromJob})
	return Result{
		Values:  []term.Named{{Name: term.TrimLength, Value: term.Len(run)}, {Name: term.Sticks, Value: term.Count(len(plan.Sticks))}},
		Working: append(in.pieceLines(pieces), in.stickLine(len(plan.Sticks), plan.Bound, joints, stick)),
		Floor:   f,
	}, nil
}

// trimThickness matters at outside corners alone, where a mitre reaches past the wall.
func (in *inputs) trimThickness(pieces []material.TrimPiece) length.Length {
	for _, p := range pieces {
		if p.Left.Kind == material.Outside {
			return in.lengthOr(term.TrimThickness, limit.TrimThickness.In(in.tape.System))
		}
	}
	return 0
}

// wallsOf gives the length of the walls that trim goes along.
func (in *inputs) wallsOf(f *room.Floor) (run length.Length, working []string, ok bool) {
	for _, e := range f.Walls() {
		run += e.Len()
	}
	return run, []string{fmt.Sprintf("walls less doorways = %s", in.tape.Room(run))}, true
}

func (in *inputs) pieceLines(pieces []material.TrimPiece) []string {
	var lines []string
	for _, p := range pieces {
		lines = append(lines, fmt.Sprintf("%d. %s: %s; right end %s, left end %s", p.N, p.Wall, in.text(p.Length), endText(p.Right), endText(p.Left)))
	}
	return lines
}

func endText(e material.End) string {
	if e.Kind == material.AtCasing {
		return string(e.Kind)
	}
	return fmt.Sprintf("%s %.3g°", e.Kind, e.Saw)
}

func (in *inputs) stickLine(n, bound, joints int, stick length.Length) string {
	line := fmt.Sprintf("cut from %s of %s", some(int64(n), "stick"), in.tape.Room(stick))
	if n > bound {
		line += fmt.Sprintf(" (at least %d)", bound)
	}
	if joints > 0 {
		line += fmt.Sprintf(", with %s on a stud, cut at a slant", some(int64(joints), "joint"))
	}
	return line + "; each end as seen facing the wall, in degrees on the saw; inside corners may be coped instead"
}

// TrimEdges are the edges that trim goes along, in the order of the walk: each ring from a door on.
func TrimEdges(f *room.Floor) []room.Edge {
	var out []room.Edge
	for _, ring := range ringsOf(f.Edges) {
		for _, e := range fromDoor(ring) {
			if e.Cover == "trim" {
				out = append(out, e)
			}
		}
	}
	return out
}

// TrimOf walks each ring of the floor's edges from a door on, and gives the trim along them.
func TrimOf(f *room.Floor) []material.TrimPiece {
	var out []material.TrimPiece
	for _, ring := range ringsOf(f.Edges) {
		for _, p := range material.Trim(wallsFrom(ring)) {
			p.N = len(out) + 1
			out = append(out, p)
		}
	}
	return out
}

// ringsOf parts edges into closed walks: each begins where the one before has come back to its start.
func ringsOf(edges []room.Edge) [][]room.Edge {
	var rings [][]room.Edge
	start := 0
	for i, e := range edges {
		if e.B == edges[start].A {
			rings = append(rings, edges[start:i+1])
			start = i + 1
		}
	}
	return rings
}

// fromDoor turns a ring to begin at the edge after a door's line, where it has one.
func fromDoor(ring []room.Edge) []room.Edge {
	for i, e := range ring {
		if e.Door {
			return append(slices.Clone(ring[i+1:]), ring[:i+1]...)
		}
	}
	return ring
}

// wallsFrom gives the walls of a ring, from the edge after a door's line where it has one.
func wallsFrom(ring []room.Edge) []material.Wall {
	ring = fromDoor(ring)
	var out []material.Wall
	for i, e := range ring {
		if e.Cover != "trim" {
			continue
		}
		w := material.Wall{Name: e.Wall, Length: e.Len()}
		if next := ring[(i+1)%len(ring)]; next.Cover == "trim" {
			w.Corner = within(e.A, e.B, next.B)
		}
		out = append(out, w)
	}
	return out
}

// within is the angle at b, on the left of the walk from a to c, in degrees.
func within(a, b, c geom.Point) float64 {
	in := math.Atan2(float64(b.Y-a.Y), float64(b.X-a.X))
	out := math.Atan2(float64(c.Y-b.Y), float64(c.X-b.X))
	turn := math.Remainder(out-in, 2*math.Pi) * 180 / math.Pi
	return 180 - turn
}
