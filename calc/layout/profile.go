package layout

import (
	"cmp"
	"slices"

	"lastrow/calc/length"
)

// profile is how many arcs lie over each point of the circle from 0 to a plank, in steps.
type profile struct {
	plank  length.Length
	kerf   length.Length
	goal   int // the most that may lie over a point
	extra  int // over every point
	steps  []turning
	before []reach // before[i] is the reach of the circle up to steps[i]
	all    reach
}

// turning is where an arc begins or ends. It is clean where nothing but a cut square to the row is made there: one cut then
// serves both where an offcut is just as long as the piece taken from it.
type turning struct {
	at    length.Length
	by    int
	run   int
	clean bool
}

// reach is the length of circle where the arcs reach the goal, and where they come to one under it or more.
type reach struct{ full, nearly length.Length }

func (p *profile) reset(plank, kerf length.Length) {
	p.plank, p.kerf, p.extra, p.steps = plank, kerf, 0, p.steps[:0]
}

func (p *profile) add(run int, a arc) {
	p.extra += 1 + a.extra
	p.steps = append(p.steps, a.turnings(run)...)
}

func (a arc) turnings(run int) []turning {
	return []turning{{a.needs, -1, run, a.cleanNeed}, {a.leaves, 1, run, a.cleanLeft}}
}

func (p *profile) sort() { slices.SortFunc(p.steps, turning.compare) }

func (t turning) compare(u turning) int {
	return cmp.Or(cmp.Compare(t.at, u.at), cmp.Compare(t.by, u.by), cmp.Compare(t.run, u.run))
}

// without takes a run's arc out.
func (p *profile) without(run int, a arc) {
	p.extra -= 1 + a.extra
	p.steps = slices.DeleteFunc(p.steps, func(t turning) bool { return t.run == run })
}

// with puts an arc in.
func (p *profile) with(run int, a arc) {
	p.extra += 1 + a.extra
	for _, t := range a.turnings(run) {
		i, _ := slices.BinarySearchFunc(p.steps, t, turning.compare)
		p.steps = slices.Insert(p.steps, i, t)
	}
}

// most is the greatest number of arcs over one point.
func (p *profile) most() int {
	depth, most, at := p.extra, 0, length.Length(0)
	for _, t := range p.steps {
		if t.at > at && at < p.plank {
			most, at = max(most, depth), t.at
		}
		depth += t.by
	}
	if at < p.plank {
		most = max(most, depth)
	}
	return most
}

// measure works out the reach up to every step.
func (p *profile) measure() {
	p.before, p.all = p.before[:0], reach{}
	depth, at := p.extra, length.Length(0)
	for _, t := range p.steps {
		to := min(max(t.at, 0), p.plank)
		p.all.grow(depth-p.goal, to-at)
		p.before = append(p.before, p.all)
		depth, at = depth+t.by, to
	}
	p.all.grow(depth-p.goal, p.plank-at)
}

func (r *reach) grow(above int, by length.Length) {
	if above >= 0 {
		r.full += by
	}
	if above >= -1 {
		r.nearly += by
	}
}

// to is the reach up to a point. Between two steps it grows evenly or not at all.
func (p *profile) to(x length.Length) reach {
	x = min(max(x, 0), p.plank)
	i, _ := slices.BinarySearchFunc(p.steps, x, func(t turning, x length.Length) int { return cmp.Compare(t.at, x) })
	next, at, r := p.all, length.Length(0), reach{}
	if i < len(p.steps) {
		next = p.before[i]
	}
	if i > 0 {
		at, r = max(p.steps[i-1].at, 0), p.before[i-1]
	}
	if next.full > r.full {
		r.full += x - at
	}
	if next.nearly > r.nearly {
		r.nearly += x - at
	}
	return r
}

// over is the length of circle that one more arc puts over the goal.
func (p *profile) over(a arc) length.Length {
	from, to := p.to(a.leaves), p.to(a.needs)
	switch {
	case a.needs <= a.leaves:
		return p.all.full - from.full + to.full
	case a.extra < 0:
		return to.full - from.full
	}
	return p.all.full + to.nearly - from.nearly
}

// saved is the cuts that are saved: one for each piece just as long as an offcut that another leaves, and for each whole plank.
func (p *profile) saved() int {
	n := 0
	for i := 0; i < len(p.steps); {
		at := p.steps[i].at
		needs, leaves := p.clean(at)
		n += min(needs, leaves)
		n += p.alone(at, needs, leaves)
		for i < len(p.steps) && p.steps[i].at == at {
			i++
		}
	}
	return n
}

// alone counts the pieces that are whole planks, where a piece needs a plank or leaves nothing.
func (p *profile) alone(at length.Length, needs, leaves int) int {
	switch at {
	case p.plank:
		return needs - min(needs, leaves)
	case -p.kerf:
		return leaves - min(needs, leaves)
	}
	return 0
}

// clean counts the clean turnings at a place.
func (p *profile) clean(at length.Length) (needs, leaves int) {
	i, _ := slices.BinarySearchFunc(p.steps, at, func(t turning, x length.Length) int { return cmp.Compare(t.at, x) })
	for ; i < len(p.steps) && p.steps[i].at == at; i++ {
		switch {
		case !p.steps[i].clean:
		case p.steps[i].by < 0:
			needs++
		default:
			leaves++
		}
	}
	return needs, leaves
}

// saves is the cuts that one more arc saves.
func (p *profile) saves(a arc) int {
	n := 0
	if a.cleanNeed {
		if needs, leaves := p.clean(a.needs); leaves > needs || a.needs == p.plank {
			n++
		}
	}
	if a.cleanLeft {
		if needs, leaves := p.clean(a.leaves); needs > leaves || a.leaves == -p.kerf {
			n++
		}
	}
	return n
}
