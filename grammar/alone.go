package grammar

import "lastrow/calc/term"

// alones are the words that ask by themselves: what each is asked of the job.
var alones = map[string]term.Kind{
	"box": term.AskBoxes, "row": term.AskRows, "start": term.AskStart, "gap": term.AskGap, "expansion": term.AskGap, "trim": term.AskTrim, "underlay": term.AskUnderlay, "roll": term.AskUnderlay,
	"piece": term.AskCutList, "stagger": term.AskStagger, "transition": term.AskTransition, "direction": term.AskStart, "square": term.AskSquare, "flat": term.AskFlatness, "moisture": term.AskMoisture,
}

// alone reads a message of one word: "boxes", "the gap pls", "jobs", "more".
func (r *reader) alone() (Reading, bool) {
	if len(r.seq) != 1 || r.ctx.Group || len(r.unknown) > 0 || len(r.items) > 4 || r.items[r.seqAt[0]].near {
		return Reading{}, false
	}
	switch it := &r.items[r.seqAt[0]]; {
	case it.meaning == "more" && r.ctx.Last != nil:
		return Reading{Follow: "more"}, true
	case it.word == "jobs" || it.word == "projects":
		return Reading{Question: &Question{Kind: term.AskJobs}}, true
	case alones[it.meaning] != "" && !r.accompanied():
		return Reading{Question: &Question{Kind: alones[it.meaning], Job: r.job}}, true
	}
	return Reading{}, false
}

// accompanied says whether a word of doing stands with the one word: "did the trim" asks nothing.
func (r *reader) accompanied() bool {
	for i := range r.items {
		if w := r.items[i].word; w != "" && i != r.seqAt[0] && !isOne(w, polite) {
			return true
		}
	}
	return false
}

// gapOfRun reads "gap 18 ft": no gap is so wide, so it is asked for a run.
func (r *reader) gapOfRun() bool {
	qs := r.quantities()
	if len(qs) != 1 || !r.has("gap", "expansion") || len(r.seq) > 4 || r.has("laid", "make", "leave", "sorry") {
		return false
	}
	t := r.items[qs[0]].sizes[0]
	return t.class == tLength && len(r.items[qs[0]].sizes) == 1 && t.meas.Len >= 5*foot
}

// further reads what goes on from the last thing said: "2 more", "another one", "and the next one", "piece 2", "in mm".
func (r *reader) further() (Reading, bool) {
	if r.ctx.Group || len(r.unknown) > 0 || len(r.items) > 7 {
		return Reading{}, false
	}
	switch n, ok := r.moreOf(); {
	case ok && r.ctx.LastSet != nil && !r.asks():
		return r.addedTo(n)
	case r.ctx.Last == nil:
		return Reading{}, false
	case len(r.seq) == 0 && len(r.quantities()) == 0 && len(r.system()) > 0 && r.hasWord("in"):
		q := carried(r.ctx.Last)
		q.Given = set(q.Given, r.system()[0])
		return Reading{Question: q}, true
	}
	return r.nextRow()
}

// moreOf is how many more are said, of nothing named.
func (r *reader) moreOf() (Whole, bool) {
	n := Whole(1)
	for _, s := range r.seq {
		if s.is[0] != '#' && s.is != "more" && s.is != "another" {
			return 0, false
		}
	}
	switch qs := r.quantities(); {
	case len(qs) > 1 || !r.has("more", "another") || len(qs) == 0 && !r.has("another"):
		return 0, false
	case len(qs) == 1:
		t := r.items[qs[0]].sizes[0]
		if t.class != tNumber || !t.num.Whole() || r.items[qs[0]].vague || len(r.items[qs[0]].sizes) > 1 {
			return 0, false
		}
		n = Whole(t.num.Num / t.num.Den)
	}
	return n, true
}

// addedTo adds so many to the count recorded last.
func (r *reader) addedTo(n Whole) (Reading, bool) {
	switch r.ctx.LastSet.(type) {
	case Laid:
		return Reading{Statements: []Statement{Laid{n, true}}}, true
	case Opened:
		return Reading{Statements: []Statement{Opened{n, true}}}, true
	case Damaged:
		return Reading{Statements: []Statement{Damaged{Planks: n}}}, true
	}
	return Reading{}, false
}

// nextRow reads "and the next one", "what about 5" and "piece 2" after a row or a piece was shown.
func (r *reader) nextRow() (Reading, bool) {
	last, name := carried(r.ctx.Last), term.Row
	switch last.Kind {
	case term.AskPiece:
		name = term.Piece
	case term.AskRow:
	default:
		return Reading{}, false
	}
	qs := r.quantities()
	switch {
	case len(qs) == 0 && (r.hasWord("next") && len(r.seq) == 0 || len(r.seq) == 1 && r.seq[0].is == "nextrow"):
		return Reading{Question: stepped(last, name)}, true
	case len(qs) == 1 && len(r.items[qs[0]].sizes) == 1 && (len(r.seq) == 1 && r.opensFollow() || len(r.seq) == 2 && name == term.Piece && r.seq[0].is == "piece" || len(r.seq) == 2 && r.seq[0].is == "what" && r.opensFollow()):
		t := r.items[qs[0]].sizes[0]
		if t.class != tNumber || !t.num.Whole() {
			return Reading{}, false
		}
		last.Given = set(last.Given, given(name, term.Count(t.num.Num/t.num.Den)))
		return Reading{Question: last}, true
	}
	return Reading{}, false
}

// stepped asks for the one after the row or piece of a question.
func stepped(q *Question, name term.Name) *Question {
	for _, g := range q.Given {
		if n, ok := g.Value.(term.Count); ok && g.Name == name {
			q.Given = set(q.Given, given(name, n+1))
		}
	}
	return q
}

// onlyNamed says whether a thing is named and nothing is said of it: "row 5 pls", and not "row 5 is wrong".
func (r *reader) onlyNamed() bool {
	for i := range r.items {
		if it := &r.items[i]; it.word != "" && !it.says() && !isOne(it.word, polite) {
			return false
		}
	}
	return true
}

var polite = []string{"the", "my", "our", "a", "please", "pls", "plz", "and", "ok", "so", "now", "then", "just", "for", "this", "it", "of"}
