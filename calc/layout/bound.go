package layout

import (
	"cmp"
	"slices"
	"sort"

	"lastrow/calc/length"
)

// A plank gives at most one first piece s and one last piece c, where s + c + kerf is at most its length. So, for any
// length t, first pieces longer than t need planks of their own beyond the number of last pieces at most plank - kerf - t
// long (Hall's condition). A weighted mean of that over several t is a bound that comes apart into one term for each run,
// and each run's term is least at one of few lengths: that is what least computes. The stagger is left out, which can only
// make a bound lower. The weights are found by fictitious play between the runs and the lengths t.

// kindOf is the runs of one length: how many, and what first pieces they may have.
type kindOf struct {
	n     int64
	run   length.Length
	spans [2]span
}

// dual is the weighing: a weight for each length t, with those below it summed.
type dual struct {
	plank, kerf, limit length.Length
	t                  []length.Length
	weight, below      []int64 // below[i] is the weight of the lengths before t[i]
	total              int64
	none               int64
}

// lowerBound is a number of planks that no choice of joints for the runs can do without, and the weights that show it;
// nil where no run is longer than a plank.
func lowerBound(p supply, least length.Length, runs []stretch) (int, *dual) {
	runs = unshared(p, runs)
	bound := byLength(p, runs)
	kinds := kindsOf(p, least, runs)
	if len(kinds) == 0 {
		return bound, nil
	}
	d := &dual{plank: p.plank, kerf: p.kerf, limit: p.plank - p.kerf - least}
	d.t = thresholds(p, least, kinds)
	d.weight, d.below = make([]int64, len(d.t)), make([]int64, len(d.t)+1)
	excess := make([]int64, len(d.t))
	for range max(12, min(3000, 4000/len(kinds))) {
		d.raise(excess)
		sum := int64(0)
		for _, k := range kinds {
			cost, first := d.least(k)
			sum += k.n * cost
			d.count(excess, k, first)
		}
		bound = max(bound, int((sum+d.total-1)/d.total))
	}
	return bound, d
}

// credit is what an offcut that can start a row is worth, in planks times the total weight.
func (d *dual) credit(long length.Length) int64 {
	return d.below[sort.Search(len(d.t), func(i int) bool { return d.t[i] > long })]
}

// price is what a first piece costs that is cut from such an offcut.
func (d *dual) price(first length.Length) int64 {
	return d.below[sort.Search(len(d.t), func(i int) bool { return d.t[i] >= first })]
}

// worth is what a kept offcut saves later, as a length of plank. One that ends a row saves a plank, less the offcut that
// the plank would have left.
func (d *dual) worth(o offcut) length.Length {
	start, end := d.credit(o.len), d.total-d.price(d.plank-d.kerf-o.len)
	w := int64(0)
	switch o.ends {
	case rightEnd:
		w = start
	case leftEnd:
		w = end
	case eitherEnd:
		w = max(start, end)
	}
	return length.Length(w * int64(d.plank) / d.total)
}

// tight lists the first pieces of a run that cost least under the weights, most of them to try for the joints.
func (d *dual) tight(k kindOf, most int) []length.Length {
	type costed struct {
		cost  int64
		first length.Length
	}
	var all []costed
	d.each(k, func(s length.Length) { all = append(all, costed{d.cost(k, s), s}) })
	slices.SortStableFunc(all, func(a, b costed) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.first, b.first)) })
	var out []length.Length
	for _, c := range all {
		if len(out) < most && !slices.Contains(out, c.first) {
			out = append(out, c.first)
		}
	}
	return out
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
			if x := t + shift; sp.lo <= x && x <= sp.hi {
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
	return cost - d.credit(d.plank-d.kerf-lastPiece(k.run, d.plank, s))
}

// count adds what a run with a first piece overdraws at each length.
func (d *dual) count(excess []int64, k kindOf, s length.Length) {
	spare := d.plank - d.kerf - lastPiece(k.run, d.plank, s)
	for i, t := range d.t {
		if s > t {
			excess[i] += k.n
		}
		if t <= spare {
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

// shares says whether a strip ripped off one run's plank is wide enough for another's piece.
func (p *supply) shares(ripped, other stretch) bool {
	return ripped.farLock && !ripped.nearLock && other.nearLock && !other.farLock && ripped.width()+other.width()+p.kerf <= p.width
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

func kindsOf(p supply, least length.Length, runs []stretch) []kindOf {
	var lens []length.Length
	for _, s := range runs {
		if s.len() > p.plank {
			lens = append(lens, s.len())
		}
	}
	slices.Sort(lens)
	var out []kindOf
	for _, l := range lens {
		if n := len(out); n > 0 && out[n-1].run == l {
			out[n-1].n++
			continue
		}
		short, long := starts(l, p.plank, least)
		if short.empty() && long.empty() {
			long = span{1, p.plank}
		}
		out = append(out, kindOf{n: 1, run: l, spans: [2]span{short, long}})
	}
	return out
}

// thresholds are lengths that first pieces tend to have, and those a hair less: the ends of the spans and the steps of a
// chain of offcuts from there.
func thresholds(p supply, least length.Length, kinds []kindOf) []length.Length {
	const most = 64
	var out []length.Length
	add := func(t length.Length) {
		if t >= 0 && t <= p.plank-p.kerf-least {
			out = append(out, t)
		}
	}
	step := max(1, len(kinds)/3)
	for i := 0; i < len(kinds); i += step {
		k := kinds[i]
		chain := leftOver(k.run, p.plank) + p.kerf
		for j := range length.Length(8) {
			for _, s := range k.spans {
				add(s.lo + j*chain)
				add(s.lo + j*chain - 1)
				add(s.hi - j*chain)
				add(s.hi - j*chain - 1)
			}
			add(p.plank * j / 8)
		}
	}
	slices.Sort(out)
	out = slices.Compact(out)
	for len(out) > most {
		out = everySecond(out)
	}
	return out
}

func everySecond(t []length.Length) []length.Length {
	out := t[:0]
	for i := 0; i < len(t); i += 2 {
		out = append(out, t[i])
	}
	return out
}
