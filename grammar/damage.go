package grammar

import "lastrow/calc/term"

// brokenBoxes reads whole boxes that are damaged: "2 boxes came broken". They count the planks in them.
func (r *reader) brokenBoxes() (Reading, bool) {
	n := r.boxesCounted()
	if n == 0 || !r.has("damaged") || r.asks() || r.ctx.Group || r.intends() {
		return Reading{}, false
	}
	if per := r.planksPerBox(); per > 0 {
		return Reading{Statements: []Statement{Damaged{Planks: n * per}}}, true
	}
	return Reading{Problem: &Problem{Outcome: "ask-back", Kind: term.SetDamaged, Read: r.gist(), Example: "8 per box", Missing: []term.Name{term.PlanksPerBox}, Setting: term.SetPlank}}, true
}

// boxesCounted is the number of boxes that are spoken of as things of their own, and of no planks: "two boxes", "a whole
// box of planks"; 0 where there are none.
func (r *reader) boxesCounted() Whole {
	qs := r.quantities()
	for i := 1; i < len(r.items); i++ {
		before := &r.items[i-1]
		if r.items[i].meaning != "box" || r.placed(i-1) || r.planksBefore(i) {
			continue
		}
		switch {
		case before.quantity() && len(qs) == 1 && before.sizes[0].class == tNumber && before.sizes[0].num.Whole() && len(before.sizes) == 1 && !before.vague && !before.sizes[0].nth:
			return Whole(before.sizes[0].num.Num / before.sizes[0].num.Den)
		case len(qs) == 0 && isOne(before.word, []string{"a", "one", "whole", "entire", "full", "another"}):
			return 1
		}
	}
	return 0
}

// placed says whether a thing is in or on what item i begins: "in a box".
func (r *reader) placed(i int) bool {
	for j := i; j >= 0 && j >= i-2; j-- {
		if isOne(r.items[j].word, []string{"in", "from", "inside", "out", "per", "opened", "open"}) {
			return true
		}
	}
	return false
}

// planksBefore says whether planks are spoken of before item i, so that it is they that are damaged.
func (r *reader) planksBefore(i int) bool {
	for j := range r.items[:i] {
		if isOne(r.items[j].meaning, []string{"plank", "piece"}) {
			return true
		}
	}
	for j := i + 1; j < len(r.items); j++ {
		if r.items[j].meaning == "plank" && r.items[j-1].word != "of" {
			return true
		}
	}
	return false
}

// planksPerBox is what the job's statements say is in a box; 0 where they don't.
func (r *reader) planksPerBox() (n Whole) {
	for _, s := range r.ctx.Statements {
		if p, ok := s.(Plank); ok && p.PerBox != nil {
			n = *p.PerBox
		}
	}
	return n
}
