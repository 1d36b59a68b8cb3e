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
		if w := r.items[i].word; w != "" && i != r.seqAt[0] && !isOne(w, []string{"the", "my", "our", "a", "please", "pls", "plz", "and", "ok", "so", "now", "then", "just", "for", "this", "it"}) {
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
