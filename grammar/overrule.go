package grammar

import (
	"lastrow/calc/term"
)

// anew are words that ask for a thing to be worked out once more.
var anew = []string{"rerun", "redo", "recalc", "recalculate", "refigure", "rework", "recompute", "rerunning"}

// rerun asks once more with other values: "run the boxes again at 8% extra". The kind is the one named, or the last.
func (r *reader) rerun() (Reading, bool) {
	qs := r.quantities()
	if r.ctx.Group || len(qs) == 0 || !r.has("again") && !r.hasWord(anew...) || r.has("laid", "opened", "damaged", "make") || r.hasWord("changed", "its", "moved") {
		return Reading{}, false
	}
	kind := r.kindNamed()
	last := r.ctx.Last
	if kind == "" && last != nil {
		kind = last.Kind
	}
	if kind == "" || len(takes[kind]) == 0 {
		return Reading{}, false
	}
	if last != nil && last.Kind == kind {
		return r.again(last, qs)
	}
	return r.ask(kind), true
}

// kindNamed is the kind of question that the goods named are asked for.
func (r *reader) kindNamed() term.Kind {
	if kind, top, _ := r.kind(); top >= 4 && !commands[kind] {
		return kind
	}
	for _, s := range r.seq {
		if k := alones[s.is]; k != "" && s.is != "direction" {
			return k
		}
	}
	return ""
}

// changed are words of what is otherwise now: "tile guy went thicker, it's 19 mm now".
var changed = []string{
	"now", "actually", "instead", "though", "tho", "but", "turns", "went", "changed", "says", "after", "rather", "swapped", "switched", "thicker", "thinner", "wider", "narrower", "longer", "shorter", "higher", "lower", "bigger", "smaller", "deeper", "taller",
}

// news asks the last question again where a message tells that something said in it, and not to the job, is otherwise now.
func (r *reader) news(out []Statement) (Reading, bool) {
	last := r.ctx.Last
	if last == nil || r.ctx.Told || r.ctx.Group || len(out) != 1 || !r.hasWord(changed...) || r.has("laid", "opened", "damaged") {
		return Reading{}, false
	}
	gs := out[0].Given()
	for _, g := range gs {
		if !hasName(last.Given, g.Name) || r.jobSays(g.Name) {
			return Reading{}, false
		}
	}
	return r.askedAnew(last, gs...), len(gs) > 0
}

// jobSays says whether a statement of the job gives a name.
func (r *reader) jobSays(n term.Name) bool {
	for _, s := range r.ctx.Statements {
		for _, g := range s.Given() {
			if g.Name == n {
				return true
			}
		}
	}
	return false
}

// laidOut are the kinds of question whose answer turns on the way of the rows.
var laidOut = map[term.Kind]bool{
	term.AskRows: true, term.AskBoxes: true, term.AskPlan: true, term.AskCutList: true, term.AskShopping: true, term.AskRow: true, term.AskPiece: true, term.AskCost: true,
}

// along gives a question the way of the rows that the message says: "what if the rows run the short way".
func (r *reader) along(kind term.Kind, gs []term.Given) []term.Given {
	if walls := r.startWalls(); len(walls) == 1 && r.hasWord("if") && (laidOut[kind] || kind == term.AskStart) {
		return set(gs, given(term.Start, term.Word(walls[0])))
	}
	if !laidOut[kind] || r.whichAsks() {
		return gs
	}
	long := r.longWay()
	for _, g := range gs {
		if sides, ok := g.Value.(term.Lens); ok && g.Name == term.Room && len(sides) == 2 {
			if long = "north-south"; sides[0] > sides[1] {
				long = "east-west"
			}
		}
	}
	if wall := r.alongWall(); wall != "" {
		return set(gs, given(term.Direction, term.Word(Direction{Wall: wall}.said())))
	}
	if way := r.waySaid(long); way != "" && !hasName(gs, term.Across) {
		return set(gs, given(term.Direction, term.Word(way)))
	}
	return gs
}

// turnedRows asks the last question again with its rows the other way: "and running the short way".
func (r *reader) turnedRows(last *Question) (Reading, bool) {
	if !laidOut[last.Kind] || !r.opensFollow() {
		return Reading{}, false
	}
	q := carried(last)
	before := len(q.Given)
	if q.Given = r.along(q.Kind, q.Given); len(q.Given) == before {
		return Reading{}, false
	}
	return Reading{Question: q}, true
}

// overrides says whether a size would go in the place of a plank's that the job knows, with no word that says so.
func (r *reader) overrides(q int, s *slot) bool {
	return s.dim == dLen && s.bare == bareFace && r.nearness(q, s.cues) < 1 && r.jobSays(s.name)
}
