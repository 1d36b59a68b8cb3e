package grammar

import "lastrow/calc/term"

// likelyTold reads a statement of the kind that the message most likely is, where no rule has its words: its quantities go
// to that kind's places, whatever words stand beside them, and all of them must.
func (r *reader) likelyTold() (Reading, bool) { return r.toldAll(false) }

// toldAll reads it so; where every quantity must, none is passed over as said in passing.
func (r *reader) toldAll(must bool) (Reading, bool) {
	g := r.guess()
	if r.ctx.Group || g.p < sure || !statementKinds[g.kind] || r.whWord() || r.marked() || len(r.unknown) > 3 && g.kind != term.SetNote {
		return Reading{}, false
	}
	switch g.kind {
	case term.SetJob:
		return r.likelyJob()
	case term.SetNote:
		return r.likelyNote()
	}
	qs := r.ofRowOne(g.kind, r.meant())
	r.placedFor(g.kind)
	switch len(qs) {
	case 0:
		return r.likelyOne(g.kind)
	case 1:
		if out, ok := r.likelySole(g.kind, qs[0]); ok {
			return out, true
		}
	case 2:
		if out, ok := r.likelyDip(qs); ok && g.kind == term.SetReading {
			return out, true
		}
	}
	slots := placesOf(g.kind)
	p, _ := r.place(qs, slots, r.lean)
	put := placed{by: map[term.Name]value{}}
	for i, q := range qs {
		switch {
		case len(p.slot) == 0 || p.slot[i] < 0 && (must || r.chance(q, nowhere) < likelier):
			return Reading{}, false
		case p.slot[i] < 0:
		case r.items[q].vague || r.likelyIn(q, &slots[p.slot[i]]) < likelier && slots[p.slot[i]].dim != dPlank:
			return Reading{}, false
		default:
			put.by[slots[p.slot[i]].name] = p.value[i]
		}
	}
	return r.tell(r.more(put.build(), put))
}

// ofRowOne takes the number of the row out of "row one at 110 mm".
func (r *reader) ofRowOne(k term.Kind, qs []int) []int {
	for i, q := range qs {
		if t := r.items[q].sizes[0]; k == term.SetFirstRow && len(qs) == 2 && q > 0 && r.items[q-1].meaning == "row" && t.class == tNumber && t.num.Num == t.num.Den {
			return []int{qs[1-i]}
		}
	}
	return qs
}

// placesOf lists the places of a kind of statement, which need no words for them.
func placesOf(k term.Kind) []slot {
	var out []slot
	for _, s := range settings {
		if kindOf(s.name) == k || k == term.SetSpare && s.name == "spare-planks" {
			s.must, s.spoken, s.stacked = false, false, false
			out = append(out, s)
		}
	}
	return out
}

// likelyOne reads what counts one thing without a number: "popped another", "dog chewed a board", "finished my first row".
func (r *reader) likelyOne(k term.Kind) (Reading, bool) {
	switch {
	case k == term.SetSpare || k == term.SetKerf || k == term.SetFirstRow || k == term.SetSubfloor:
		return r.likelyBare(k)
	case k == term.SetDirection:
		return r.likelyWay()
	case k == term.SetStart && r.wallSaid() != "":
		return r.tell([]Statement{Start{r.wallSaid()}})
	case !r.has("another", "more") && !r.hasWord("a", "an", "one", "new", "first", "this", "that", "it", "the"):
		return Reading{}, false
	}
	switch k {
	case term.SetDamaged:
		return r.tell([]Statement{Damaged{Planks: 1}})
	case term.SetOpened:
		return r.tell([]Statement{Opened{1, !r.hasWord("first")}})
	case term.SetLaid:
		return r.tell([]Statement{Laid{1, !r.hasWord("first")}})
	}
	return Reading{}, false
}

// tell gives statements as a reading, unless they say what can't be or speak of what is still to be done.
func (r *reader) tell(out []Statement) (Reading, bool) {
	if len(out) == 0 || r.intends() && progressed(out) {
		return Reading{}, false
	}
	for _, s := range out {
		if w := r.impossible(s.Given()); w != "" {
			return r.refused(s.Kind(), w), true
		}
	}
	return Reading{Statements: out}, true
}
