package grammar

import "lastrow/calc/term"

// sumMore adds up two counts of one thing, where one is said to be more: "5 rows Saturday and 3 more Sunday".
func (r *reader) sumMore(p *placed) bool {
	if len(p.loose) != 1 {
		return false
	}
	for _, n := range []term.Name{term.Laid, term.Opened, term.Damaged} {
		v, ok := p.by[n]
		if !ok || len(p.by) > 1 || !r.addable(p.loose[0]) || !r.addable(v.item) || r.saidMore(v.item) == r.saidMore(p.loose[0]) {
			continue
		}
		t := r.items[p.loose[0]].sizes[0]
		v.term = v.term.(term.Count) + term.Count(t.num.Num/t.num.Den)
		v.item = min(v.item, p.loose[0])
		p.by[n], p.loose = v, nil
		return true
	}
	return false
}

// addable says whether an item is a bare whole number, said as it is.
func (r *reader) addable(i int) bool {
	it := &r.items[i]
	return it.quantity() && len(it.sizes) == 1 && it.sizes[0].class == tNumber && it.sizes[0].num.Whole() && !it.vague && !it.sizes[0].nth
}

// saidMore says whether "more" or "another" stands right beside a number.
func (r *reader) saidMore(i int) bool {
	return i+1 < len(r.items) && r.items[i+1].meaning == "more" || i > 0 && r.items[i-1].meaning == "another"
}
