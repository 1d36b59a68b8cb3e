package grammar

import "lastrow/calc/term"

// less and more are words for what a limit is set against: "no row under 3 in", "every end piece over 10 in".
var (
	less = []string{"under", "below", "less", "shorter", "narrower", "smaller", "thinner", "skinnier", "closer", "nearer", "tighter"}
	more = []string{"over", "above", "longer", "wider", "bigger", "more", "larger"}
)

// forbidden reads a limit that is set by what must not be, or by what must: "I don't want any row under 3 inches", "keep
// the ends over 10 in".
func (r *reader) forbidden() (Reading, bool) {
	qs := r.quantities()
	if len(qs) != 1 || r.marked() || r.whWord() || len(r.items[qs[0]].sizes) != 1 || !r.limits(qs[0]) {
		return Reading{}, false
	}
	name := r.limitOf()
	if name == "" {
		return Reading{}, false
	}
	if r.items[qs[0]].vague {
		return Reading{}, false
	}
	size, ok := r.message.read(r.items[qs[0]].sizes[0], bareInch, r.lean)
	if !ok {
		return Reading{}, false
	}
	l := Limit{name, size}
	if w := r.impossible(l.Given()); w != "" {
		return r.refused(l.Kind(), w), true
	}
	return Reading{Statements: []Statement{l}}, true
}

// limits says whether a word for a limit stands before a quantity, and one that sets it before that.
func (r *reader) limits(q int) bool {
	under, over, at := false, false, 0
	for j := q - 1; j >= 0 && j >= q-3; j-- {
		w := r.items[j].word
		if isOne(w, less) || isOne(w, more) {
			under, over, at = isOne(w, less), isOne(w, more), j
		}
	}
	for j := 0; j < at; j++ {
		it := &r.items[j]
		switch {
		case under && (it.meaning == "no" || it.meaning == "not" || isOne(it.word, []string{"dont", "never", "nothing", "avoid", "wont", "cant", "without", "none", "neither", "doesnt", "hates"})):
			return r.tellsLimit(j)
		case over && isOne(it.word, []string{"keep", "always", "every", "must", "ensure"}):
			return r.tellsLimit(j)
		}
	}
	return false
}

// tellsLimit says whether the sentence does not ask up to item j.
func (r *reader) tellsLimit(j int) bool {
	return !r.opensAsk(r.firsts[r.items[j].sentence]) && !r.hasAskPair()
}

// limitOf is the limit that the message is of.
func (r *reader) limitOf() term.Name {
	switch {
	case r.has("joint", "stagger"):
		return term.LeastStagger
	case r.has("endpiece", "piece", "offcut", "end") || r.has("plank") && r.hasWord("shorter", "longer"):
		return term.LeastEnd
	case r.has("row", "lastrow", "firstrow", "rip", "sliver") || r.has("plank") && r.hasWord("narrower", "skinnier", "thinner", "wider"):
		return term.LeastRow
	}
	return ""
}

// shareForPrice refuses a percentage where an amount belongs: "price 12% a box".
func (r *reader) shareForPrice() (Reading, bool) {
	for _, q := range r.quantities() {
		if r.items[q].sizes[0].class == tPercent && r.has("price") && r.perBox(q) && !r.has("spare") {
			return r.refused(term.SetPrice, "a price is an amount, as 31.90 a box"), true
		}
	}
	return Reading{}, false
}
