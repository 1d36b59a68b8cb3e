package layout

import (
	"slices"
	"sort"

	"lastrow/calc/length"
)

// A plank gives at most one first piece s and one last piece c, where s + c + kerf is at most its length. So, for any
// length t, first pieces longer than t need planks of their own beyond the number of last pieces shorter than
// plank - kerf - t (Hall's condition). A weighted mean of that over several t is a bound that comes apart into one term for each run,
// and each run's term is least at one of few lengths: that is what least computes. The stagger is left out, which can only
// make a bound lower. The weights are found by fictitious play between the runs and the lengths t.

// kindOf is the runs of one length: how many, and what first pieces they may have.
type kindOf struct {
	n     int64
	run   length.Length
	spans [2]span
}

// loosen gives the first pieces that a run may have which is longer by no more than the slack, where its last piece is as
// much shorter.
func (k *kindOf) loosen(plank, slack length.Length) {
	rho := leftOver(k.run, plank)
	k.spans[0].hi = min(k.spans[0].hi+slack, plank, rho-1)
	k.spans[1].hi = min(k.spans[1].hi+slack, plank)
}

// dual is the weighing: a weight for each length t, with those below it summed.
type dual struct {
	plank, kerf, limit length.Length
	t                  []length.Length
	weight, below      []int64 // below[i] is the weight of the lengths before t[i]
	total              int64
}

// lowerBound is a number of planks that no choice of joints for the runs can do without, and the weights that show it;
// nil where no run is longer than a plank. Each run may be longer by the slack. Any weights make a bound: those of other
// runs, where they are given, spare the search for better ones.
func lowerBound(p supply, least, stagger length.Length, runs []stretch, slack length.Length, d *dual) (int, *dual) {
	all := runs
	runs = unshared(p, runs)
	bound := byLength(p, runs)
	if len(runs) == len(all) {
		bound = max(bound, wholeRuns(p, stagger, runs))
	}
	kinds := kindsOf(p, least, runs, 0)
	for i := range kinds {
		kinds[i].loosen(p.plank, slack)
	}
	if len(kinds) == 0 {
		return bound, nil
	}
	if d == nil {
		d = weigh(p, least, kinds)
	}
	return max(bound, int((d.sum(kinds, nil)+d.total-1)/d.total)), d
}

// wholeRuns is the bound for runs that are all a number of whole planks, where two lie against each other joint on joint.
// They can't both be whole planks. One that is cut has a first and a last piece of a plank together, and no plank gives
// both: its first piece comes from another's offcut, that one's from a longer one's, and the longest from a new plank.
func wholeRuns(p supply, stagger length.Length, runs []stretch) int {
	sum, meet := 0, false
	for _, s := range runs {
		if s.len()%p.plank != 0 {
			return 0
		}
		sum += int(s.len() / p.plank)
		for _, k := range s.before {
			meet = meet || s.len() > p.plank && runs[k].len() > p.plank && (s.left-runs[k].left)%p.plank == 0
		}
	}
	if meet && stagger > 0 && p.kerf > 0 {
		return sum + 1
	}
	return sum
}

// weigh finds the weights that make the bound largest: of few kinds of run exactly, as a linear program, of many by play.
func weigh(p supply, least length.Length, kinds []kindOf) *dual {
	d := newDual(p, least, thresholds(p, least, kinds))
	if len(kinds) > mostSolved {
		return d.play(kinds)
	}
	// One unknown for each kind, what one run of it costs at least beyond its whole planks, and one for each weight.
	n := len(kinds)
	c := make([]float64, n+len(d.t))
	var a [][]float64
	var b []float64
	for i, k := range kinds {
		c[i] = float64(k.n)
		d.each(k, func(s length.Length) {
			row := make([]float64, len(c))
			row[i] = 1
			b = append(b, float64(wholes(k.run, d.plank, s)-int(k.run/d.plank)+3)+d.overdrawn(row[n:], k, s))
			a = append(a, row)
		})
	}
	all := make([]float64, len(c))
	for i := range d.t {
		all[n+i] = 1
	}
	x := maximise(c, append(a, all), append(b, 1))
	const fine = 1 << 24
	for i := range d.t {
		d.weight[i] = int64(max(0, x[n+i]) * fine)
		d.below[i+1] = d.below[i] + d.weight[i]
	}
	d.total = max(fine, d.below[len(d.t)])
	return d
}

// mostSolved is the number of kinds of run up to which the linear program is solved.
const mostSolved = 6

// overdrawn fills in how a run's cost falls with each weight, negated. It gives what the run costs apart from them: a
// plank for a first piece that no last piece can share one with.
func (d *dual) overdrawn(row []float64, k kindOf, s length.Length) float64 {
	spare, own := d.plank-d.kerf-lastPiece(k.run, d.plank, s), 0.0
	if s > d.limit {
		own = 1
	}
	for i, t := range d.t {
		if own == 0 && s > t {
			row[i]--
		}
		if t < spare {
			row[i]++
		}
	}
	return own
}

func newDual(p supply, least length.Length, t []length.Length) *dual {
	return &dual{
		plank: p.plank, kerf: p.kerf, limit: p.plank - p.kerf - least,
		t: t, weight: make([]int64, len(t)), below: make([]int64, len(t)+1),
	}
}

// sum is the bound under the weights, in planks times the total weight. It adds to excess, where there is one, what the
// runs overdraw at each length.
func (d *dual) sum(kinds []kindOf, excess []int64) int64 {
	sum := int64(0)
	for _, k := range kinds {
		cost, first := d.least(k)
		sum += k.n * cost
		if excess != nil {
			d.count(excess, k, first)
		}
	}
	return sum
}

// play looks for weights: each round the runs answer them with their cheapest first pieces, and the length that they have
// overdrawn most so far gets a unit more.
func (d *dual) play(kinds []kindOf) *dual {
	excess := make([]int64, len(d.t))
	for range max(12, min(100, 2000/len(kinds))) {
		d.raise(excess)
		d.sum(kinds, excess)
	}
	return d
}

// price is what a first piece costs, and what an offcut that can start a row is worth, in planks times the total weight.
func (d *dual) price(long length.Length) int64 {
	return d.below[sort.Search(len(d.t), func(i int) bool { return d.t[i] >= long })]
}

// raise gives one more unit of weight to the length that the runs so far have overdrawn most.
func (d *dual) raise(excess []int64) {
	d.total++
	best, at := int64(0), -1
	for i, e := range excess {
		if e > best || d.total == 1 && i == len(excess)/2 {
			best, at = e, i
		}
	}
	if at >= 0 {
		d.weight[at]++
	}
	for i, w := range d.weight {
		d.below[i+1] = d.below[i] + w
	}
}

// least gives the least cost of a run under the weights, in planks times the total weight, and a first piece that has it.
func (d *dual) least(k kindOf) (int64, length.Length) {
	best, first := int64(-1), length.Length(0)
	d.each(k, func(s length.Length) {
		if c := d.cost(k, s); first == 0 || c < best {
			best, first = c, s
		}
	})
	return best, first
}

// each gives the first pieces of which one costs least: the ends of the spans, and where the last piece just leaves enough.
func (d *dual) each(k kindOf, try func(length.Length)) {
	rho := leftOver(k.run, d.plank)
	for i, sp := range k.spans {
		if sp.empty() {
			continue
		}
		try(sp.lo)
		shift := rho + d.kerf + length.Length(i-1)*d.plank
		for _, t := range d.t {
			if x := t + shift + 1; sp.lo <= x && x <= sp.hi {
				try(x)
			}
		}
	}
}

func (d *dual) cost(k kindOf, s length.Length) int64 {
	cost := d.total * int64(wholes(k.run, d.plank, s)+1)
	if s > d.limit {
		cost += d.total
	} else {
		cost += d.price(s)
	}
	return cost - d.price(d.plank-d.kerf-lastPiece(k.run, d.plank, s))
}

// count adds what a run with a first piece overdraws at each length.
func (d *dual) count(excess []int64, k kindOf, s length.Length) {
	spare := d.plank - d.kerf - lastPiece(k.run, d.plank, s)
	for i, t := range d.t {
		if s > t {
			excess[i] += k.n
		}
		if t < spare {
			excess[i] -= k.n
		}
	}
}

// unshared leaves out the narrow runs that might be cut from strips ripped off others, whatever they would cost.
func unshared(p supply, runs []stretch) []stretch {
	if p.strip == 0 {
		return runs
	}
	return slices.DeleteFunc(slices.Clone(runs), func(s stretch) bool {
		return s.width() < p.width && s.nearLock && !s.farLock && slices.ContainsFunc(runs, func(o stretch) bool { return p.shares(o, s) })
	})
}

// byLength counts what the pieces and the cuts between them take: j pieces from one plank need j - 1 cuts.
func byLength(p supply, runs []stretch) int {
	sum := length.Length(0)
	for _, s := range runs {
		pieces := (s.len() + p.plank - 1) / p.plank
		sum += s.len() + pieces*p.kerf
	}
	each := p.plank + p.kerf
	return int((sum + each - 1) / each)
}

// kindsOf sorts the runs longer than a plank into kinds, by length. Runs that differ by no more than some are of one kind,
// where what is over whole planks differs alike: its length is the longest's, and its first pieces suit them all.
func kindsOf(p supply, least length.Length, runs []stretch, some length.Length) []kindOf {
	var lens []length.Length
	for _, s := range runs {
		if s.len() > p.plank {
			lens = append(lens, s.len())
		}
	}
	slices.Sort(lens)
	var out []kindOf
	from := length.Length(0)
	for _, l := range lens {
		short, long := starts(l, p.plank, least)
		if short.empty() && long.empty() {
			long = span{1, p.plank}
		}
		if n := len(out); n > 0 && l-from <= some && (l-1)/p.plank == (from-1)/p.plank {
			k := &out[n-1]
			both := [2]span{k.spans[0].and(short), k.spans[1].and(long)}
			if l == from || !both[0].empty() || !both[1].empty() {
				k.n, k.run, k.spans = k.n+1, l, both
				continue
			}
		}
		from = l
		out = append(out, kindOf{n: 1, run: l, spans: [2]span{short, long}})
	}
	return out
}

// thresholds are the lengths that get weights: a hair under the shortest first pieces, and under those whose last piece
// leaves as much as such a one, and so on back along the walk; with many kinds, even steps as well.
func thresholds(p supply, least length.Length, kinds []kindOf) []length.Length {
	most := 64
	if len(kinds) > 2 {
		most = 32
	}
	limit := p.plank - p.kerf - least
	var out []length.Length
	add := func(t length.Length) {
		if t >= 0 && t <= limit && len(out) < most && !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	step := (len(kinds) + 5) / 6
	for i := 0; i < len(kinds); i += step {
		add(kinds[i].spans[0].lo - 1)
		add(kinds[i].spans[1].lo - 1)
	}
	for j := range length.Length(8) {
		if len(kinds) > mostSolved {
			add(limit * j / 8)
		}
	}
	for at := 0; at < len(out); at++ {
		for i := 0; i < len(kinds); i += step {
			k := kinds[i]
			fall := leftOver(k.run, p.plank) + p.kerf
			for j, s := range k.spans {
				if t := out[at] + fall - length.Length(1-j)*p.plank; s.lo <= t+1 && t < s.hi {
					add(t)
				}
			}
		}
	}
	slices.Sort(out)
	return out
}
