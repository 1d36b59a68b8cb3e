package grammar

import (
	"cmp"
	"slices"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// renewal is a value that a size of this message puts in the place of one said before, and how alike the two are: 1 where
// they are the same, near 0 where one is many times the other.
type renewal struct {
	slot  *slot
	given term.Given
	like  float64
	near  float64 // how near a word for it stands
	other bool    // said in the other system than the size now
}

// renewals lists what a size can renew of a question: every value said before that it measures the like of.
func (r *reader) renewals(last *Question, q int) []renewal {
	var out []renewal
	if len(r.items[q].sizes) != 1 {
		return nil
	}
	t, slots, l := r.items[q].sizes[0], takes[last.Kind], r.leanOf(last)
	for i := range slots {
		for _, g := range last.Given {
			if _, count := g.Value.(term.Count); count && r.perBox(q) && g.Name != term.PlanksPerBox {
				continue
			}
			if g.Name != slots[i].name || g.From == term.Default || g.From == term.FromJob {
				continue
			}
			if v, like, ok := r.renewed(t, g.Value, &slots[i], l); ok {
				out = append(out, renewal{&slots[i], given(g.Name, v), like, r.nearness(q, slots[i].cues), otherSystem(t, g.Value)})
			}
		}
	}
	return out
}

// renewed reads a token as what an earlier value measures.
func (r *reader) renewed(t token, old term.Value, s *slot, l leaning) (v term.Value, like float64, ok bool) {
	bare := t.class == tNumber && !t.nth
	switch o := old.(type) {
	case term.Len:
		size, ok := r.message.read(t, s.bare, l)
		like = alike(float64(size.Len), float64(o))
		if size.System != roundIn(length.Length(o)) {
			like *= 0.5 // nobody goes over to the other system for one size
		}
		return term.Len(size.Len), like, ok
	case term.Count:
		n := t.num.Num / max(1, t.num.Den)
		return term.Count(n), alike(float64(n), float64(o)), bare && t.num.Whole() && !r.decimal(t)
	case term.Money:
		n, err := scale(t.num, 100)
		if t.unit == "" || t.class == tNumber {
			t.unit = o.Currency
		}
		return term.Money{Minor: n, Currency: t.unit}, alike(float64(n), float64(o.Minor)), err == nil && (bare || t.class == tMoney)
	case term.Percent:
		n, err := scale(t.num, 1000)
		return term.Percent(n), alike(float64(n), float64(o)), err == nil && (bare || t.class == tPercent)
	case term.Area:
		f := Flat{t.num, "sq ft"}
		if l.sure && l.system == length.Metric {
			f.Unit = "sq m"
		}
		if t.class == tArea {
			f = flatOf(t)
		}
		return term.Area{Area: f.Area()}, alike(f.Area().M2(), o.M2()), bare || t.class == tArea
	case term.Degrees:
		return term.Degrees(t.num.Float()), alike(t.num.Float(), float64(o)), bare || t.class == tAngle
	}
	return nil, 0, false
}

func alike(a, b float64) float64 {
	if a <= 0 || b <= 0 {
		return 0
	}
	return min(a, b) / max(a, b)
}

// most renewals differ by less than this from what they renew.
const akin = 0.4

// renews gives the one value of the last question that a size with no other place renews: the one that a word by it
// names, else the one that is akin to it. several says that more than one would do.
func (r *reader) renews(last *Question, q int) (out renewal, several bool) {
	all := r.renewals(last, q)
	if best := nearest(all); best != nil {
		return *best, false
	}
	for i := range takes[last.Kind] {
		if s := &takes[last.Kind][i]; r.nearness(q, s.cues) >= 4.5 {
			if _, _, ok := r.valueFor(q, s, r.leanOf(last)); ok {
				return renewal{}, false
			}
		}
	}
	kin := sameSystem(slices.DeleteFunc(all, func(n renewal) bool { return n.like < akin }))
	slices.SortFunc(kin, func(a, b renewal) int { return cmp.Compare(b.like, a.like) })
	switch {
	case len(kin) == 0:
		return renewal{}, false
	case len(kin) == 1 || kin[0].like-kin[1].like > 0.25 || 1-kin[0].like < (1-kin[1].like)/4:
		return kin[0], false
	}
	for _, n := range kin {
		if _, ok := n.given.Value.(term.Money); ok && r.at(q) {
			return n, false
		}
	}
	return renewal{}, true
}

// nearest is the one renewal that a word by the size names, if any.
func nearest(all []renewal) *renewal {
	var best *renewal
	for i := range all {
		if n := &all[i]; n.near >= 2.5 && (best == nil || n.near > best.near) {
			best = n
		}
	}
	return best
}

// askedAnew asks the last question again with other values.
func (r *reader) askedAnew(last *Question, values ...term.Given) Reading {
	q := carried(last)
	for _, g := range values {
		q.Given = renew(q.Given, g)
	}
	if w := r.impossible(q.Given); w != "" {
		return r.refused(q.Kind, w)
	}
	return Reading{Question: q}
}

// akinNames are the values of the last question that a size could as well renew.
func (r *reader) akinNames(last *Question, q int) []term.Name {
	var out []term.Name
	for _, n := range r.renewals(last, q) {
		if n.like >= akin {
			out = append(out, n.given.Name)
		}
	}
	return out
}

// otherSystem says whether a size has a unit of the other system than an earlier length.
func otherSystem(t token, old term.Value) bool {
	l, ok := old.(term.Len)
	return ok && t.class == tLength && t.meas.Unit.System() != roundIn(length.Length(l))
}

// sameSystem keeps the renewals of values said in the system of the size now, where there are any: "only half an inch" is
// no new 12 mm where 3/4 in was said besides.
func sameSystem(kin []renewal) []renewal {
	if !slices.ContainsFunc(kin, func(n renewal) bool { return !n.other }) {
		return kin
	}
	return slices.DeleteFunc(kin, func(n renewal) bool { return n.other })
}
