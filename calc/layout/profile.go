package layout

import (
	"cmp"
	"slices"

	"lastrow/calc/length"
)

// profile is how many arcs lie over each point of the circle from 0 to a plank, in steps.
type profile struct {
	plank  length.Length
	goal   int // the most that may lie over a point
	extra  int // over every point
	steps  []turning
	before []reach // before[i] is the reach of the circle up to steps[i]
	all    reach
}

// turning is where an arc begins or ends.
type turning struct {
	at  length.Length
	by  int
	run int
}

// reach is the length of circle where the arcs reach the goal, and where they come to one under it or more.
type reach struct{ full, nearly length.Length }

func (p *profile) reset(plank length.Length) {
	p.plank, p.extra, p.steps = plank, 0, p.steps[:0]
}

func (p *profile) add(run int, a arc) {
	p.extra += 1 + a.extra
	p.steps = append(p.steps, turning{a.needs, -1, run}, turning{a.leaves, 1, run})
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
	for _, t := range [...]turning{{a.needs, -1, run}, {a.leaves, 1, run}} {
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

// joined is the number of pieces that are just as long as an offcut that another leaves.
func (p *profile) joined() int {
	n := 0
	for i := 0; i < len(p.steps); {
		needs, leaves, at := 0, 0, p.steps[i].at
		for ; i < len(p.steps) && p.steps[i].at == at; i++ {
			if p.steps[i].by < 0 {
				needs++
			} else {
				leaves++
			}
		}
		n += min(needs, leaves)
	}
	return n
}
