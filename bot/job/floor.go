package job

import (
	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/grammar"
)

// applyFloor does what a statement says of the floor's shape and edges, and says whether it was one of them.
func applyFloor(j *calc.Job, s grammar.Statement) bool {
	switch s := s.(type) {
	case grammar.Room:
		j.Plan.Rect, j.Plan.Walk, j.Plan.Quad = rect(s), nil, nil
	case grammar.Walls:
		j.Plan.Rect, j.Plan.Walk, j.Plan.Quad = nil, nil, nil
		if len(s.Diagonals) > 0 {
			j.Plan.Quad = quad(s)
		} else {
			j.Plan.Walk = walk(s)
		}
	case grammar.Closet:
		j.Plan.Closets = append(j.Plan.Closets, closet(s))
	case grammar.Opening:
		j.Plan.Openings = append(j.Plan.Openings, room.Opening{
			Off: s.Off, Wall: s.Wall, Wide: s.Wide.Len, From: size(s.From), FromEnd: s.FromEnd, To: s.To, ToFrom: size(s.ToFrom), ToEnd: s.ToEnd})
	case grammar.Doorway:
		j.Plan.Doorways = append(j.Plan.Doorways, room.Doorway{
			Off: s.Off, Wall: s.Wall, Wide: s.Wide.Len, From: size(s.From), FromEnd: s.FromEnd, Into: size(s.Into)})
	case grammar.Fixture:
		j.Plan.Fixtures = append(j.Plan.Fixtures, fixture(s))
	case grammar.Gap:
		applyGap(j, s)
	case grammar.Hidden:
		j.Plan.OutOfView[s.Wall] = true
	default:
		return false
	}
	return true
}

// Shapes says whether a statement shapes the floor, so that its area is of interest.
func Shapes(s grammar.Statement) bool {
	switch s.(type) {
	case grammar.Room, grammar.Walls, grammar.Closet, grammar.Opening, grammar.Doorway, grammar.Fixture:
		return true
	}
	return false
}

func size(s *grammar.Size) length.Length {
	if s == nil {
		return 0
	}
	return s.Len
}

func rect(s grammar.Room) *room.Rect {
	r := &room.Rect{EastWest: s.EastWest.Len, NorthSouth: s.NorthSouth.Len}
	for _, c := range s.CutOuts {
		r.CutOuts = append(r.CutOuts, room.CutOut{Corner: corners[c.Corner], EastWest: c.EastWest.Len, NorthSouth: c.NorthSouth.Len, Angled: c.Angled})
	}
	return r
}

var corners = map[string]string{"ne": "NE", "se": "SE", "sw": "SW", "nw": "NW"}

func walk(s grammar.Walls) []room.Wall {
	w := make([]room.Wall, len(s.Legs))
	for i, l := range s.Legs {
		w[i] = room.Wall{To: l.To, Len: l.Long.Len, Across: size(l.Across)}
	}
	return w
}

func quad(s grammar.Walls) *room.Quad {
	q := &room.Quad{}
	for _, l := range s.Legs {
		switch l.To {
		case room.North:
			q.North = l.Long.Len
		case room.East:
			q.East = l.Long.Len
		case room.South:
			q.South = l.Long.Len
		case room.West:
			q.West = l.Long.Len
		}
	}
	for _, d := range s.Diagonals {
		if d.Way == "nw-se" {
			q.NWSE = d.Long.Len
		} else {
			q.SWNE = d.Long.Len
		}
	}
	return q
}

func closet(s grammar.Closet) room.Closet {
	return room.Closet{What: s.What, Off: s.Off, Wall: s.Wall, Wide: s.Wide.Len, Deep: s.Deep.Len, From: size(s.From), FromEnd: s.FromEnd,
		Opening: size(s.Opening), OpeningFrom: size(s.OpeningFrom)}
}

func fixture(s grammar.Fixture) room.Fixture {
	f := room.Fixture{What: s.What, In: s.In, FromX: s.FromX.Len, SideX: s.SideX, FromY: s.FromY.Len, SideY: s.SideY}
	if s.Deep == nil {
		f.Diameter = s.Wide.Len
	} else {
		f.Wide, f.Deep = s.Wide.Len, s.Deep.Len
	}
	return f
}

func applyGap(j *calc.Job, g grammar.Gap) {
	if g.Wall == "" {
		j.Plan.Gap = g.Size.Len
		return
	}
	j.Plan.WallGaps[g.Wall] = g.Size.Len
}
