package grammar

import (
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// plainWords gives the statements that hold no size: walls, ways and materials; and marks what is "more".
func (r *reader) plainWords(p placed) []Statement {
	var out []Statement
	wall := r.wallSaid()
	way := r.waySaid(r.longWay())
	switch along := r.alongWall(); {
	case along != "":
		out = append(out, Direction{Wall: along})
	case way != "" && (len(r.quantities()) == 0 || !r.has("longways", "shortways")):
		out = append(out, Direction{Way: way})
	}
	if r.has("eastwest") && r.has("northsouth") {
		out = append(out, Direction{Way: "north-south"})
	}
	for _, w := range r.startWalls() {
		out = append(out, Start{w})
	}
	if r.has("tight") && wall != "" {
		out = append(out, Gap{Size{0, r.lean.system}, wall})
	}
	if r.has("hidden") && wall != "" {
		out = append(out, Hidden{wall})
	}
	if s, ok := r.subfloorSaid(); ok {
		out = append(out, s)
	}
	if r.has("another") && r.has("opened") && p.whole(term.Opened) == nil {
		out = append(out, Opened{1, true})
	}
	if r.has("damaged") && (r.has("another") || r.has("plank") && r.hasWord("a")) && p.whole(term.Damaged) == nil {
		out = append(out, Damaged{Planks: 1})
	}
	if r.has("another") && r.has("row") && r.has("laid") && p.whole(term.Laid) == nil {
		out = append(out, Laid{1, true})
	}
	return out
}

// waySaid is the way that the message says rows are to run, in a room whose longer side lies the long way.
func (r *reader) waySaid(long string) string {
	switch {
	case r.has("eastwest"):
		return "east-west"
	case r.has("northsouth"):
		return "north-south"
	case r.has("otherway"):
		return r.turned()
	case r.has("longways"):
		return long
	case r.has("shortways"):
		return otherWay[long]
	case r.has("diagonally") || r.has("diagonal") && r.has("row", "lay", "run", "direction"):
		return "diagonal"
	}
	return ""
}

var otherWay = map[string]string{"east-west": "north-south", "north-south": "east-west"}

// turned gives the other way than the one the rows of the job run: the one said, or along the longer side of its room.
func (r *reader) turned() string {
	_, last := r.ctx.LastSet.(Direction)
	if !last && !r.has("run", "lay", "row", "plank", "direction", "switch", "make") && !r.hasWord("turn", "go") {
		return ""
	}
	way := r.longWay()
	for _, s := range r.ctx.Statements {
		if d, ok := s.(Direction); ok {
			way = d.Way
		}
	}
	return otherWay[way]
}

// longWay is the way of the longer side of the job's room.
func (r *reader) longWay() (way string) {
	for _, s := range r.ctx.Statements {
		if v, ok := s.(Room); ok {
			if way = "north-south"; v.EastWest.Len > v.NorthSouth.Len {
				way = "east-west"
			}
		}
	}
	return way
}

var sides = map[string]room.Side{"north": room.North, "east": room.East, "south": room.South, "west": room.West}

func (r *reader) wallSaid() room.Side {
	for i := range r.seq {
		if side := r.wallAt(i); side != "" {
			return side
		}
	}
	return ""
}

// startWalls gives the walls that the message says to start at.
func (r *reader) startWalls() []room.Side {
	var out []room.Side
	for i, s := range r.seq {
		if s.is != "start" && s.is != "firstrow" {
			continue
		}
		for j := i + 1; j < len(r.seq) && j <= i+5; j++ {
			if side := r.wallAt(j); side != "" {
				out = append(out, side)
				break
			}
			if r.seq[j].is == "start" || r.seq[j].is[0] == '#' {
				break
			}
		}
	}
	return out
}

func (r *reader) subfloorSaid() (Subfloor, bool) {
	if !r.has("subfloor", "concrete", "heated", "wood") || len(r.quantities()) > r.thickOf("wood") || r.has("tile", "carpet", "door", "drill") {
		return Subfloor{}, false
	}
	if r.has("wood") && r.has("concrete") && len(r.quantities()) > 0 {
		return Subfloor{}, false
	}
	s := Subfloor{What: r.subfloor(), Heated: r.has("heated")}
	return s, s != Subfloor{}
}

// measured reads a moisture reading that is told.
func (r *reader) measured(qs *[]int) []Statement {
	test := r.testSaid()
	if test == "" && r.has("concrete") && r.has("reading", "probe") {
		test = "rh"
	}
	if test == "" && !r.has("moisture") {
		return nil
	}
	for k, i := range *qs {
		t := r.items[i].sizes[0]
		if r.items[i].vague {
			continue
		}
		m := Measured{Test: test}
		switch v := reading(t, test).(type) {
		case term.Percent:
			if test == "rh" && r.testSaid() == "" && v < 30_000 {
				continue // a share of weight, as a carbide test gives, and not an air humidity
			}
			p := Thousandths(v)
			m.Percent = &p
		case term.Number:
			n, err := scale(t.num, 100)
			if err != nil {
				continue
			}
			c := Cents(n)
			m.Pounds, m.Test = &c, "calcium-chloride"
		default:
			continue
		}
		if m.Test == "" {
			continue
		}
		*qs = append((*qs)[:k], (*qs)[k+1:]...)
		return []Statement{m}
	}
	return nil
}
