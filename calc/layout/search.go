package layout

import (
	"cmp"
	"slices"

	"lastrow/calc/length"
)

// search looks for the joints of all runs, one run after the other in the order of laying, keeping the best few beginnings.
type search struct {
	supply
	rules   Rules
	runs    []stretch
	fine    length.Length // joints nearer than this to a line count as on it
	dual    *dual         // what offcuts are worth; nil where no run has a joint
	tight   map[length.Length][]length.Length
	taste   bool // weigh the preferences while searching, not only at the end
	scratch []offcut
	steps   int // beginnings weighed so far
}

// beginning is a choice of joints for the runs up to one.
type beginning struct {
	stock
	parent      *beginning
	run         int
	first       length.Length // length of the first piece
	left, right length.Length // the first joint and the last; right < left where there is none
	broken      int           // rules not kept
	taste       length.Length // against the preferences, in lengths of plank that it may cost
	rank        length.Length
}

// option is a beginning not yet written out.
type option struct {
	order           int // among the options of a run
	from            *beginning
	first           length.Length
	broken          int
	planks          int
	rank, fineprint length.Length
}

// best finds joints, keeping so many beginnings at each run.
func (s *search) best(width int) *beginning {
	front := []*beginning{{run: -1}}
	s.scratch = make([]offcut, 0, s.most+4)
	for i := range s.runs {
		var next []option
		for _, b := range front {
			next = s.options(next, b, i)
		}
		s.steps += len(next)
		front = s.keepBest(next, i, width)
	}
	return slices.MinFunc(front, compareDone)
}

func compareDone(a, b *beginning) int {
	return cmp.Or(cmp.Compare(a.broken, b.broken), cmp.Compare(a.planks, b.planks), cmp.Compare(a.cuts, b.cuts), cmp.Compare(a.taste, b.taste))
}

func (s *search) options(out []option, b *beginning, run int) []option {
	for _, first := range s.firsts(b, run) {
		next := s.try(b, run, first, s.scratch)
		out = append(out, option{order: len(out), from: b, first: first, broken: next.broken, planks: next.planks, rank: next.rank, fineprint: next.taste})
	}
	return out
}

func (s *search) keepBest(all []option, run, width int) []*beginning {
	slices.SortFunc(all, func(a, b option) int {
		return cmp.Or(cmp.Compare(a.broken, b.broken), cmp.Compare(a.rank, b.rank), cmp.Compare(a.fineprint, b.fineprint), cmp.Compare(a.order, b.order))
	})
	var out []*beginning
	for i, o := range all {
		if i > 0 && o.first == all[i-1].first && o.rank == all[i-1].rank && o.broken == all[i-1].broken {
			continue
		}
		b := s.try(o.from, run, o.first, nil)
		out = append(out, &b)
		if len(out) == width {
			break
		}
	}
	return out
}

// try lays one more run, keeping the offcuts in the room given.
func (s *search) try(from *beginning, run int, first length.Length, room []offcut) beginning {
	b := s.judged(from, run, first)
	b.stock = from.stock
	b.kept = append(room[:0], from.kept...)
	s.supply.run(&b.stock, &s.runs[run], first)
	s.value(&b)
	return b
}

// judged places the joints of one more run and weighs them.
func (s *search) judged(from *beginning, run int, first length.Length) beginning {
	st := &s.runs[run]
	b := beginning{parent: from, run: run, first: first, broken: from.broken, taste: from.taste}
	b.left, b.right = 0, -1
	if first < st.len() {
		last := lastPiece(st.len(), s.plank, first)
		b.left, b.right = st.left+first, st.right-last
		if first < s.rules.LeastEnd || last < s.rules.LeastEnd {
			b.broken++
		}
		s.judge(&b, st)
	}
	return b
}

// value ranks a beginning by its planks less what the offcuts kept are worth.
func (s *search) value(b *beginning) {
	b.rank = length.Length(b.planks) * s.plank
	for _, o := range b.kept {
		switch {
		case o.width > 0:
		case s.dual == nil:
			b.rank -= o.len
		default:
			b.rank -= s.dual.worth(o) * 31 / 32
		}
	}
	if s.taste {
		b.rank += b.taste + length.Length(b.cuts)*s.fine/8
	}
}

// judge weighs the joints of a run against those of the runs that it lies against.
func (s *search) judge(b *beginning, st *stretch) {
	for _, k := range st.before {
		p := b.parent.at(k)
		if p.right < p.left {
			continue
		}
		d := apart(b.left, b.right, p.left, p.right, s.plank)
		if d < s.rules.LeastStagger {
			b.broken++
		}
		b.taste += max(0, s.plank/2-d) / 16
		s.regular(b, p)
	}
}

// regular weighs a joint straight above the one two rows before, and a staircase.
func (s *search) regular(b, p *beginning) {
	for _, k := range s.runs[p.run].before {
		q := p.parent.at(k)
		if q.right < q.left {
			continue
		}
		if apart(b.left, b.right, q.left, q.right, s.plank) < s.fine {
			b.taste += s.plank / 4
		}
		step := b.left - p.left - (p.left - q.left)
		if abs(step-floorDiv(step+s.plank/2, s.plank)*s.plank) < s.fine {
			b.taste += s.plank / 8
		}
	}
}

// at is the beginning that laid a run.
func (b *beginning) at(run int) *beginning {
	for b.run != run {
		b = b.parent
	}
	return b
}
