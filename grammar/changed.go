package grammar

import "lastrow/calc/term"

// areaChanged asks the last question again with so much more or less floor: "and another 40 sq ft", "take 28 sq ft off that".
func (r *reader) areaChanged(last *Question, q int) (Reading, bool) {
	it := &r.items[q]
	if len(it.sizes) != 1 || it.sizes[0].class != tArea || it.vague {
		return Reading{}, false
	}
	old, ok := areaOf(last)
	if !ok {
		return Reading{}, false
	}
	more := flatOf(it.sizes[0]).Area()
	switch {
	case r.around(q, "another", "extra", "additional", "added", "add", "plus", "more", "bigger"):
		old.Area = old.Plus(more)
	case r.around(q, "off", "less", "minus", "take", "drop", "lose", "smaller", "without"):
		old.Area = old.Minus(more)
	default:
		return Reading{}, false
	}
	if old.Sign() <= 0 {
		return r.refused(last.Kind, "no floor is left"), true
	}
	return r.askedAnew(last, given(term.FloorArea, old)), true
}

// areaOf is the area that a question was given.
func areaOf(q *Question) (term.Area, bool) {
	for _, g := range q.Given {
		if a, ok := g.Value.(term.Area); ok && g.Name == term.FloorArea {
			return a, true
		}
	}
	return term.Area{}, false
}

// around says whether one of the words stands within two words before a quantity or right after it.
func (r *reader) around(q int, any ...string) bool {
	for i := max(q-2, 0); i <= q+1 && i < len(r.items); i++ {
		if i != q && isOne(r.items[i].word, any) {
			return true
		}
	}
	return false
}

// firstRowChanged asks the last question again with a first row of so much: "what if we started with a 100 mm strip".
func (r *reader) firstRowChanged(last *Question, q int) (Reading, bool) {
	if last.Kind != term.AskRows || !r.has("start", "firstrow") && !r.hasWord("started", "began") || r.hasWord("board", "boards", "plank", "planks") || r.has("gap") || r.items[q].vague || len(r.items[q].sizes) != 1 {
		return Reading{}, false
	}
	v, _, ok := r.valueFor(q, &sFirst, r.leanOf(last))
	if !ok || far(v.sizes[0].Len, &sFirst) {
		return Reading{}, false
	}
	return r.askedAnew(last, given(term.FirstRow, v.term)), true
}
