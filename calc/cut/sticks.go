package cut

import (
	"fmt"
	"slices"

	"lastrow/calc/length"
)

// Plan is pieces cut from sticks.
type Plan struct {
	Sticks []Stick
	Bound  int // no plan uses fewer
}

// Stick is one stick: the pieces cut from it, by their index, in the order of cutting, and what is left over.
type Stick struct {
	Pieces []int
	Left   length.Length
}

// Proven says whether no plan uses fewer sticks.
func (p Plan) Proven() bool { return len(p.Sticks) == p.Bound }

// maxSteps bounds the search, so that the same pieces always give the same plan.
const maxSteps = 100_000

// Sticks cuts the pieces from the fewest sticks that it finds, with a kerf between two pieces of a stick, and a bound that
// no plan beats. The search is exhaustive for a few dozen pieces of few lengths; past its steps, the best plan found stands.
// A piece of no length, or longer than the stock, is an error.
func Sticks(pieces []length.Length, stock, kerf length.Length) (Plan, error) {
	for _, p := range pieces {
		if p <= 0 || p > stock {
			return Plan{}, fmt.Errorf("a piece of %s can't be cut from a stick of %s", p, stock)
		}
	}
	if kerf < 0 {
		return Plan{}, fmt.Errorf("a kerf of %s cuts nothing", kerf)
	}
	s := newSearch(pieces, stock, kerf)
	s.firstFit()
	s.bound = s.lower()
	s.steps = maxSteps
	if len(s.best) > s.bound && s.branch(0) {
		s.bound = len(s.best)
	}
	return s.plan(pieces, stock, kerf), nil
}

// search packs sizes, each a piece and a kerf, into bins of the stock and a kerf.
type search struct {
	order []int           // pieces, longest first
	size  []length.Length // of order[i]
	rest  []length.Length // rest[i] is the sum of size[i:]
	room  length.Length   // of an empty bin
	bins  [][]int         // of positions in order
	free  []length.Length // of each bin
	best  [][]int
	bound int
	steps int
}

func newSearch(pieces []length.Length, stock, kerf length.Length) *search {
	s := &search{room: stock + kerf}
	for i := range pieces {
		s.order = append(s.order, i)
	}
	slices.SortStableFunc(s.order, func(a, b int) int { return int(min(1, max(-1, pieces[b]-pieces[a]))) })
	s.rest = make([]length.Length, len(pieces)+1)
	for _, i := range s.order {
		s.size = append(s.size, pieces[i]+kerf)
	}
	for i := len(pieces) - 1; i >= 0; i-- {
		s.rest[i] = s.rest[i+1] + s.size[i]
	}
	return s
}

// firstFit puts each size into the first bin that has room for it: a plan to beat.
func (s *search) firstFit() {
	var free []length.Length
	for i, size := range s.size {
		at := slices.IndexFunc(free, func(f length.Length) bool { return f >= size })
		if at < 0 {
			at = len(free)
			free, s.best = append(free, s.room), append(s.best, nil)
		}
		free[at] -= size
		s.best[at] = append(s.best[at], i)
	}
}

// lower is Martello and Toth's bound: for each size k up to half a bin, those over room-k fill a bin each, those over half a
// bin too, and those from k to half a bin need what room the latter leave them.
func (s *search) lower() int {
	best := 0
	for _, k := range append([]length.Length{0}, s.size...) {
		if 2*k > s.room {
			continue
		}
		alone, halves := 0, 0
		var spare, small length.Length
		for _, size := range s.size {
			switch {
			case size > s.room-k:
				alone++
			case 2*size > s.room:
				halves++
				spare += s.room - size
			case size >= k:
				small += size
			}
		}
		more := 0
		if small > spare {
			more = bins(small-spare, s.room)
		}
		best = max(best, alone+halves+more)
	}
	return best
}

func bins(sum, room length.Length) int { return int((sum + room - 1) / room) }

// branch places the sizes from i on in every way that could beat the best plan. It is false where its steps ran out first.
func (s *search) branch(i int) bool {
	if i == len(s.size) {
		s.keep()
		return true
	}
	var spare length.Length
	for _, f := range s.free {
		spare += f
	}
	if len(s.bins)+bins(max(0, s.rest[i]-spare), s.room) >= len(s.best) {
		return true
	}
	return s.place(i)
}

// place tries size i in each bin of its own room, an exact fit alone, and then in a new bin.
func (s *search) place(i int) bool {
	size := s.size[i]
	var tried []length.Length
	if at := slices.Index(s.free, size); at >= 0 {
		return s.put(i, at)
	}
	for at, f := range s.free {
		if f < size || slices.Contains(tried, f) {
			continue
		}
		tried = append(tried, f)
		if !s.put(i, at) {
			return false
		}
	}
	if len(s.bins)+1 >= len(s.best) {
		return true
	}
	s.bins, s.free = append(s.bins, nil), append(s.free, s.room)
	ok := s.put(i, len(s.bins)-1)
	s.bins, s.free = s.bins[:len(s.bins)-1], s.free[:len(s.free)-1]
	return ok
}

// put places size i in a bin, goes on from there, and takes it out again.
func (s *search) put(i, at int) bool {
	if s.steps--; s.steps < 0 {
		return false
	}
	s.bins[at], s.free[at] = append(s.bins[at], i), s.free[at]-s.size[i]
	ok := s.branch(i + 1)
	s.bins[at], s.free[at] = s.bins[at][:len(s.bins[at])-1], s.free[at]+s.size[i]
	return ok
}

func (s *search) keep() {
	s.best = nil
	for _, b := range s.bins {
		s.best = append(s.best, slices.Clone(b))
	}
}

func (s *search) plan(pieces []length.Length, stock, kerf length.Length) Plan {
	p := Plan{Bound: s.bound}
	for _, b := range s.best {
		stick := Stick{Left: stock}
		for n, i := range b {
			stick.Pieces = append(stick.Pieces, s.order[i])
			stick.Left -= s.size[i]
			if n == 0 {
				stick.Left += kerf
			}
		}
		p.Sticks = append(p.Sticks, stick)
	}
	return p
}
