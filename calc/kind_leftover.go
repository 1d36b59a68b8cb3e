package calc

import (
	"fmt"
	"slices"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/term"
)

func init() { handlers[term.AskLeftover] = leftover }

// leftover says how far the planks and offcuts left over go in a closet, or whether they cover an area.
func leftover(in *inputs) (Result, error) {
	if !in.has(term.Leftover) {
		in.lack(term.Leftover)
	}
	_, saysCloset := in.said[term.Closet]
	if !saysCloset && !in.has(term.FloorArea) {
		in.lack(term.Closet, term.FloorArea)
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	p := plank.Plank{Width: in.needLength(term.PlankWidth), Length: in.needLength(term.PlankLength)}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	have := in.leftovers(p)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	if saysCloset {
		return in.closetFrom(have, p)
	}
	return in.areaFrom(have, p)
}

// leftovers lists the lengths left over, the longest first: so many whole planks, or as listed.
func (in *inputs) leftovers(p plank.Plank) []length.Length {
	g, _ := in.peek(term.Leftover)
	in.use(g)
	switch v := g.Value.(type) {
	case term.Count:
		if v < 0 || v > 10_000 {
			in.refuse("%d planks left over is out of bounds: 0 to 10 000", int64(v))
			return nil
		}
		return slices.Repeat([]length.Length{p.Length}, int(v))
	case term.Len:
		return in.eachPiece(term.Lens{length.Length(v)}, p)
	case term.Lens:
		return in.eachPiece(v, p)
	}
	in.refuse("what is left over is a count of planks, or their lengths")
	return nil
}

func (in *inputs) eachPiece(list term.Lens, p plank.Plank) []length.Length {
	out := slices.Clone([]length.Length(list))
	for _, l := range out {
		if l <= 0 || l > p.Length {
			in.refuse("a leftover of %s is no piece of a plank %s long", in.tape.Exact(l), in.tape.Exact(p.Length))
		}
	}
	slices.SortFunc(out, func(a, b length.Length) int { return int(min(1, max(-1, b-a))) })
	return out
}

// areaFrom compares areas alone: without the shape nothing more is known.
func (in *inputs) areaFrom(have []length.Length, p plank.Plank) (Result, error) {
	area := in.needArea()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	var sum length.Length
	for _, l := range have {
		sum += l
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

// closetFrom fills a closet row by row from the leftovers.
func (in *inputs) closetFrom(have []length.Length, p plank.Plank) (Result, error) {
	sides := need[term.Lens](in, term.Closet)
	if len(sides) != 2 {
		in.refuse("a closet is two sides, as 5 ft x 2 ft")
		return Result{}, in.err()
	}
	floor := in.rectangle(sides[0], sides[1])
	rules := in.rules()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	l, err := layout.Lay(layout.Request{Floor: floor, Plank: p, Mark: in.tape.Division(), Rules: rules})
	if err != nil {
		in.refuse("%v", err)
		return Result{}, in.err()
	}
	run := l.Rows[0].Runs[0].Right - l.Rows[0].Runs[0].Left
	t := tray{have: have, run: run, plank: p.Length, kerf: rules.Kerf}
	rows := t.fill(len(l.Rows))
	r := Result{
		Values: []term.Named{{Name: term.Rows, Value: term.Count(rows)}, {Name: term.Passes, Value: term.Pass(rows >= len(l.Rows))}},
		Working: append([]string{
			fmt.Sprintf("%d rows of %s fill the closet", len(l.Rows), in.text(run)),
		}, t.lines(in, rows)...),
		Floor: floor,
	}
	if t.whole() {
		r.Layout = l
	}
	return r, nil
}

// tray is the leftovers while they are used up. A row no longer than a leftover is one piece of it. A longer one starts
// with an offcut, where there is one, and goes on and ends with whole planks: an offcut has its lock at one end alone.
type tray struct {
	have       []length.Length // falling
	run, plank length.Length
	kerf       length.Length
}

func (t *tray) whole() bool {
	return len(t.have) > 0 && !slices.ContainsFunc(t.have, func(l length.Length) bool { return l < t.plank })
}

// fill gives the number of rows, up to the most, that the leftovers lay.
func (t *tray) fill(most int) int {
	rows := 0
	if t.run <= t.plank {
		for _, l := range t.have {
			rows += int((l + t.kerf) / (t.run + t.kerf))
		}
		return min(rows, most)
	}
	wholes, offcuts := 0, []length.Length{}
	for _, l := range t.have {
		if l == t.plank {
			wholes++
		} else {
			offcuts = append(offcuts, l)
		}
	}
	for rows < most {
		n, at := t.cheapest(offcuts)
		if n > wholes {
			break
		}
		wholes -= n
		if at >= 0 {
			offcuts = slices.Delete(offcuts, at, at+1)
		}
		rows++
	}
	return rows
}

// cheapest is the fewest whole planks that lay a row, and the shortest offcut to start it with that makes it so.
func (t *tray) cheapest(offcuts []length.Length) (wholes, at int) {
	wholes, at = t.planksFor(t.run), -1
	for i, o := range offcuts {
		if n := t.planksFor(t.run - o); n < wholes || n == wholes && at >= 0 {
			wholes, at = n, i
		}
	}
	return wholes, at
}

func (t *tray) planksFor(l length.Length) int { return int((l + t.plank - 1) / t.plank) }

func (t *tray) lines(in *inputs, rows int) []string {
	if t.run <= t.plank {
		return []string{fmt.Sprintf("%d leftovers give %d rows in one piece each, a saw cut of %s between two from one", len(t.have), rows, in.text(t.kerf))}
	}
	return []string{
		fmt.Sprintf("a row is longer than a plank: an offcut can start it, whole planks go on and end it; the %d leftovers give %d rows", len(t.have), rows),
	}
}
