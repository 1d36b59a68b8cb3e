package calc

import (
	"fmt"
	"slices"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

func init() { handlers[term.AskLeftover] = leftover }

// leftover says how far the planks and offcuts left over go in a closet, with its layout, or whether they cover an area. What
// nobody said is of the job: what its own floor leaves, and its own closet.
func leftover(in *inputs) (Result, error) {
	_, saysArea := in.said[term.FloorArea]
	_, saysLeft := in.said[term.Leftover]
	sides, hasCloset := in.closet()
	if !saysLeft && !in.hasFloor() {
		in.lack(term.Leftover)
	}
	if !hasCloset && !saysArea {
		in.lack(term.Closet, term.FloorArea)
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	p := plank.Plank{Width: in.needLength(term.PlankWidth), Length: in.needLength(term.PlankLength)}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	have, lines := in.leftovers(p)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	var r Result
	var err error
	if hasCloset {
		r, err = in.closetFrom(have, p, sides)
		lines = append(lines, in.passage()...)
	} else {
		r, err = in.areaFrom(have, p)
	}
	r.Working = append(lines, r.Working...)
	return r, err
}

func (in *inputs) hasFloor() bool {
	p := in.job.Plan
	return p.Rect != nil || p.Quad != nil || len(p.Walk) > 0
}

// closet is the one asked about: as said, else the job's only one.
func (in *inputs) closet() (sides term.Lens, ok bool) {
	if sides, ok = get[term.Lens](in, term.Closet); ok {
		if len(sides) != 2 {
			in.refuse("a closet is two sides, as 5 ft x 2 ft")
		}
		return sides, true
	}
	if at := in.ownCloset(); at >= 0 {
		c := in.job.Plan.Closets[at]
		sides = term.Lens{c.Wide, c.Deep}
		if c.Wall == room.East || c.Wall == room.West {
			sides = term.Lens{c.Deep, c.Wide}
		}
		in.use(term.Given{Name: term.Closet, Value: sides, From: term.FromJob})
		return sides, true
	}
	return nil, false
}

// passage tells that the floor of the way through the job's closet's wall is not counted.
func (in *inputs) passage() []string {
	if _, said := in.said[term.Closet]; said {
		return nil
	}
	if c := in.job.Plan.Closets[in.ownCloset()]; c.Opening == 0 || c.Opening == c.Wide {
		return nil
	}
	return []string{"the closet inside its walls; what lies in its doorway is of the room's rows"}
}

// ownCloset is the place of the job's closet among what opens off its rooms, or -1 where there is none or more than one.
func (in *inputs) ownCloset() int {
	at := -1
	for i, c := range in.job.Plan.Closets {
		if c.What != "" && c.What != "closet" {
			continue
		}
		if at >= 0 {
			return -1
		}
		at = i
	}
	return at
}

// leftovers lists what is left over, the longest first: so many whole planks, or the lengths listed, or what the job leaves.
func (in *inputs) leftovers(p plank.Plank) (have []layout.Scrap, lines []string) {
	g, said := in.said[term.Leftover]
	if !said {
		return in.jobLeaves(p)
	}
	in.use(g)
	switch v := g.Value.(type) {
	case term.Count:
		if v < 0 || v > 10_000 {
			in.refuse("%d planks left over is out of bounds: 0 to 10 000", int64(v))
			return nil, nil
		}
		return slices.Repeat([]layout.Scrap{{Len: p.Length, Left: true, Right: true}}, int(v)), nil
	case term.Len:
		return in.eachPiece(term.Lens{length.Length(v)}, p)
	case term.Lens:
		return in.eachPiece(v, p)
	}
	in.refuse("what is left over is a count of planks, or their lengths")
	return nil, nil
}

// eachPiece takes the lengths listed for offcuts of last pieces, as most are: the right end's lock is left of them.
func (in *inputs) eachPiece(list term.Lens, p plank.Plank) (have []layout.Scrap, lines []string) {
	cut := false
	for _, l := range list {
		if l <= 0 || l > p.Length {
			in.refuse("a leftover of %s is no piece of a plank %s long", in.tape.Exact(l), in.tape.Exact(p.Length))
		}
		cut = cut || l < p.Length
		have = append(have, layout.Scrap{Len: l, Left: l == p.Length, Right: true})
	}
	if cut {
		lines = []string{"an offcut is taken to have its right end's lock left: it can start a row or span one, not end one"}
	}
	return longestFirst(have), lines
}

func longestFirst(have []layout.Scrap) []layout.Scrap {
	slices.SortStableFunc(have, func(a, b layout.Scrap) int { return int(min(1, max(-1, b.Len-a.Len))) })
	return have
}

// areaFrom compares areas alone: without the shape nothing more is known.
func (in *inputs) areaFrom(have []layout.Scrap, p plank.Plank) (Result, error) {
	area := in.needArea()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	var sum length.Length
	for _, s := range have {
		sum += s.Len
	}
	covers := sum.Times(p.Width)
	return Result{
		Values: []term.Named{{Name: term.Passes, Value: term.Pass(covers.Cmp(area) >= 0)}},
		Working: []string{
			fmt.Sprintf("%s of plank x %s = %s", in.tape.Room(sum), in.text(p.Width), in.tape.Area(covers)),
			fmt.Sprintf("against %s, before any cutting waste", in.tape.Area(area)),
		},
	}, nil
}

// closetFrom lays a closet from the leftovers, the way that they go further: along its longer side where both will do.
func (in *inputs) closetFrom(have []layout.Scrap, p plank.Plank, sides term.Lens) (Result, error) {
	floor := in.rectangle(sides[0], sides[1])
	rules := in.rules()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	var best *closetLaid
	for _, along := range closetWays(sides) {
		l, rows, err := layout.LayScraps(layout.Request{Floor: floor, Plank: p, Along: along, Mark: in.tape.Division(), Rules: rules}, have)
		if err != nil {
			in.refuse("%v", err)
			return Result{}, in.err()
		}
		if c := (&closetLaid{l, rows}); best == nil || c.further(best) {
			best = c
		}
	}
	r := Result{
		Values: []term.Named{{Name: term.Rows, Value: term.Count(len(best.layout.Rows))}, {Name: term.Passes, Value: term.Pass(best.whole())}},
		Floor:  floor, Working: best.lines(in, sides),
	}
	if len(best.layout.Rows) > 0 {
		r.Layout = best.layout
	}
	return r, in.err()
}

// closetWays are the two ways that rows can run, the longer side's first.
func closetWays(sides term.Lens) [2]layout.Direction {
	if layout.Longer(sides[0], sides[1]) == layout.NorthSouth {
		return [2]layout.Direction{layout.NorthSouth, layout.EastWest}
	}
	return [2]layout.Direction{layout.EastWest, layout.NorthSouth}
}

// closetLaid is a closet as far as the leftovers go, and the rows that it has.
type closetLaid struct {
	layout *layout.Layout
	rows   int
}

func (c *closetLaid) whole() bool { return len(c.layout.Rows) == c.rows }

// further says whether the leftovers go further this way: over more of the floor.
func (c *closetLaid) further(than *closetLaid) bool {
	if c.whole() != than.whole() {
		return c.whole()
	}
	return !c.whole() && len(c.layout.Rows)*than.rows > len(than.layout.Rows)*c.rows
}

func (c *closetLaid) lines(in *inputs, sides term.Lens) []string {
	side := "longer"
	if c.layout.Along != closetWays(sides)[0] {
		side = "shorter"
	}
	lines := []string{fmt.Sprintf("%d rows along the %s side fill the closet; what is left lays %d of them, from %d pieces of plank", c.rows, side, len(c.layout.Rows), c.layout.Planks)}
	for _, row := range c.layout.Rows {
		for _, p := range row.Runs[0].Pieces {
			lines = append(lines, in.pieceLine(c.layout, p))
		}
	}
	return lines
}
