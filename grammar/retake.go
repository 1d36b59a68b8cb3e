package grammar

import (
	"lastrow/calc/length"
	"lastrow/calc/term"
)

// retaken reads a message that takes back what was said and says it anew: "scratch that, it's 10 ft 5". Where the size is
// the one that was said last, it is only taken back.
func (r *reader) retaken(qs []int) (Reading, bool) {
	at := r.takesBack()
	if at < 0 || len(qs) != 1 || qs[0] < at || r.marked() || r.repeats(qs[0]) {
		return Reading{}, false
	}
	if t := r.items[qs[0]].sizes[0]; r.hasWord("last") && t.class == tNumber && t.num.Whole() {
		return problem("unclear", term.AskUndo, r.gist(), "more than one at a time", example(term.AskUndo)), true
	}
	if n, ok := r.counted(qs[0]); ok {
		return n, true
	}
	return r.putRight(qs[0])
}

// marked says whether the message has a question mark.
func (r *reader) marked() bool {
	for i := range r.items {
		if r.items[i].mark == "?" {
			return true
		}
	}
	return false
}

// takesBack gives the item that takes something back, or -1.
func (r *reader) takesBack() int {
	for i := range r.items {
		if r.items[i].meaning == "undo" {
			return i
		}
	}
	return -1
}

// repeats says whether a size is one of the last statement: "take back the 5 rows".
func (r *reader) repeats(q int) bool {
	if r.ctx.LastSet == nil {
		return false
	}
	for _, g := range r.ctx.LastSet.Given() {
		for _, t := range r.items[q].sizes {
			switch v := g.Value.(type) {
			case term.Count:
				if t.num.Whole() && t.num.Num == int64(v)*t.num.Den {
					return true
				}
			case term.Len:
				if r.sameLen(t, length.Length(v)) {
					return true
				}
			case term.Lens:
				if len(v) > 0 && (r.sameLen(t, v[0])) && len(r.items[q].sizes) == len(v) && r.sameLen(r.items[q].sizes[len(v)-1], v[len(v)-1]) {
					return true
				}
			}
		}
	}
	return false
}

func (r *reader) sameLen(t token, old length.Length) bool {
	_, ok := swapping{r: r, from: t, to: t}.match(old)
	return ok
}

// counted takes back the last count and gives the one said in its place.
func (r *reader) counted(q int) (Reading, bool) {
	t := r.items[q].sizes[0]
	if len(r.items[q].sizes) != 1 || t.class != tNumber || !t.num.Whole() || r.items[q].vague || !r.ctx.Told {
		return Reading{}, false
	}
	n := Whole(t.num.Num / t.num.Den)
	switch v := r.ctx.LastSet.(type) {
	case Laid:
		return Reading{Statements: []Statement{Laid{Rows: n}}}, !v.More
	case Opened:
		return Reading{Statements: []Statement{Opened{Boxes: n}}}, !v.More
	case Damaged:
		return Reading{Statements: []Statement{Damaged{Back: true, Planks: v.Planks}, Damaged{Planks: n}}}, !v.Back
	}
	return Reading{}, false
}

// putRight puts a size in place of the last thing said that it can stand for: first in the last question or the last
// statement, whichever is newer.
func (r *reader) putRight(q int) (Reading, bool) {
	if r.items[q].vague {
		return Reading{}, false
	}
	ways := []func(int) (Reading, bool){r.rightAsked, r.rightTold}
	if r.ctx.Told {
		ways = []func(int) (Reading, bool){r.rightTold, r.rightAsked}
	}
	for _, way := range ways {
		if out, ok := way(q); ok {
			return out, true
		}
	}
	return r.rightBefore(q)
}

// rightBefore puts a size with a unit right in the newest statement that has one near to it.
func (r *reader) rightBefore(q int) (Reading, bool) {
	t := r.items[q].sizes[0]
	if t.class != tLength || len(r.items[q].sizes) > 1 {
		return Reading{}, false
	}
	for i := len(r.ctx.Statements) - 1; i >= 0; i-- {
		if st, ok := (swapping{r: r, to: t, any: true}).statement(r.ctx.Statements[i]); ok {
			return Reading{Statements: []Statement{st}}, true
		}
	}
	return Reading{}, false
}

// rightAsked puts a size right in the last question.
func (r *reader) rightAsked(q int) (Reading, bool) {
	last := r.ctx.Last
	if last == nil {
		return Reading{}, false
	}
	if last.Kind == term.AskMoisture {
		return r.damper(last)
	}
	if len(r.items[q].sizes) == 2 {
		return r.sidesAsked(last, q)
	}
	if out, ok := (swapping{r: r, to: r.items[q].sizes[0], any: true}).question(last); ok {
		return Reading{Question: out}, true
	}
	var said []renewal
	for _, n := range r.renewals(last, q) {
		if !r.ctx.Told && n.like > 0.1 {
			said = append(said, n)
		}
	}
	if len(said) == 1 {
		return r.askedAnew(last, said[0].given), true
	}
	if n, _ := r.renews(last, q); n.slot != nil {
		return r.askedAnew(last, n.given), true
	}
	return Reading{}, false
}

// sidesAsked puts two sides in the place of the ones that the last question was given.
func (r *reader) sidesAsked(last *Question, q int) (Reading, bool) {
	for _, s := range takes[last.Kind] {
		if s.dim != dPair || !hasName(last.Given, s.name) {
			continue
		}
		if v, fit, ok := r.valueFor(q, &s, r.leanOf(last)); ok && fit >= 0 {
			return r.askedAnew(last, r.givens(&s, v)...), true
		}
	}
	return Reading{}, false
}

// rightTold puts a size right in the last statement.
func (r *reader) rightTold(q int) (Reading, bool) {
	if r.ctx.LastSet == nil {
		return Reading{}, false
	}
	if len(r.items[q].sizes) == 2 {
		return r.sidesTold(q)
	}
	st, ok := (swapping{r: r, to: r.items[q].sizes[0], any: true}).statement(r.ctx.LastSet)
	return Reading{Statements: []Statement{st}}, ok
}

// sidesTold puts two sides in the place of the room's that was told last.
func (r *reader) sidesTold(q int) (Reading, bool) {
	old, ok := r.ctx.LastSet.(Room)
	if !ok {
		return Reading{}, false
	}
	v, fit, ok := r.valueFor(q, &settings[0], leaning{old.EastWest.System, true})
	if !ok || fit < 0 {
		return Reading{}, false
	}
	old.EastWest, old.NorthSouth = v.sizes[0], v.sizes[1]
	return Reading{Statements: []Statement{old}}, true
}
