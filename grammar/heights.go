package grammar

import (
	"slices"
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// heightTerse are turns that ask by themselves where corners, angles and tapers are spoken of.
var heightTerse = []cue{
	{1, "# # # square"}, {1, "^square # # #"}, {1, "cut angle"},
}

// bySizes is what the sizes of a message speak for a kind of question, besides its words.
func (r *reader) bySizes(kind term.Kind) float64 {
	switch {
	case kind == term.AskFlatness && r.dipOver():
		if r.has("dip", "flat", "step") {
			return 8
		}
		return 4
	case kind == term.AskGap && r.gapOfRun():
		return 5
	case kind == term.AskMoisture && (r.dampShare() || r.slabPounds()):
		return 4
	case kind == term.AskVaporBarrier && r.mils():
		return 5
	}
	return 0
}

// spans are words that stand between a dip and what it was measured under.
var spans = []string{"in", "over", "across", "under", "underneath", "beneath", "per"}

// dipOver finds "1/4 in 10 feet", "3mm over 2m", "5/16 low over 8 ft": a dip and what it was measured under.
func (r *reader) dipOver() bool {
	qs := r.quantities()
	for k := 0; k+1 < len(qs); k++ {
		a, b := qs[k], qs[k+1]
		if !r.spanned(a, b) {
			continue
		}
		dip, ok1 := r.message.read(r.items[a].sizes[0], bareSmall, r.lean)
		edge, ok2 := r.message.read(r.items[b].sizes[0], bareRoom, r.lean)
		if ok1 && ok2 && dip.Len < 2*inch && edge.Len >= 3*foot && edge.Len <= 12*foot {
			return true
		}
	}
	return false
}

// spanned says whether "over", "in" and the like stand between two sizes, and nothing but them, articles and words for
// a dip; or, where the first is in inches, nothing: its "in" may be either.
func (r *reader) spanned(a, b int) bool {
	if b == a+1 {
		t := r.items[a].sizes[0]
		return t.class == tLength && t.meas.Unit == length.Inches && t.meas.Amount.Den > 1 && !r.decimal(t)
	}
	over := b == a+2 && r.items[a+1].meaning == "dip"
	for i := a + 1; i < b; i++ {
		switch it := &r.items[i]; {
		case slices.Contains(spans, it.word):
			over = true
		case !isOne(it.word, []string{"a", "the", "low", "high", "out", "off", "my", "our"}) && it.meaning != "dip" && it.meaning != "step":
			return false
		}
	}
	return over && b <= a+5
}

// dampShare finds a percentage on wood or concrete, which is how damp it is.
func (r *reader) dampShare() bool {
	return r.has("wood", "concrete") && !r.has("box", "spare", "shopping") && slices.ContainsFunc(r.quantities(), func(i int) bool { return r.items[i].sizes[0].class == tPercent })
}

// slabPounds finds pounds tested on a slab, which are of a calcium chloride test.
func (r *reader) slabPounds() bool {
	return r.has("concrete") && r.has("test", "reading") && slices.ContainsFunc(r.quantities(), func(i int) bool { t := r.items[i].sizes[0]; return t.class == tMass && t.unit == "lb" })
}

// tags are words that a message ends with to have what it says agreed to.
var tags = []string{"right", "yeah", "yea", "yes", "yep", "huh", "eh", "correct", "no", "good"}

// endsTag says whether a message about what passes or fails ends with a word that wants a yes: "we're good, yeah".
func (r *reader) endsTag() bool {
	i := len(r.items) - 1
	for i > 0 && r.items[i].mark != "" {
		i--
	}
	if i < 2 || !isOne(r.items[i].word, tags) || r.items[i-1].mark != "," && r.items[i-1].meaning != "ok" || r.has("laid", "opened", "damaged", "record", "note") {
		return false
	}
	kind, top, _ := r.kind()
	return top >= 4 && (judged[kind] || kind == term.AskVaporBarrier)
}

// dropLeast takes "7 ft" out of "still over 7 ft": the least that a ceiling is held to anyway.
func (r *reader) dropLeast(qs *[]int) {
	for k, i := range *qs {
		t := r.items[i].sizes[0]
		if k > 0 && i > 0 && isOne(r.items[i-1].word, []string{"over", "above", "under", "least", "than"}) && t.class == tLength && len(r.items[i].sizes) == 1 && t.meas.Len == 7*foot {
			*qs = without(*qs, []int{i})
			return
		}
	}
}

// found says whether the message tells what was measured: "we measured a 4 mm dip".
func (r *reader) found() bool {
	return r.hasWord("measured", "found", "recorded", "worst") || r.has("record", "note")
}

// endsOK says whether the message gives a size and ends with "ok", "good" or "pass": "cacl 2.1 lb good".
func (r *reader) endsOK() bool {
	if len(r.quantities()) == 0 || r.found() {
		return false
	}
	i := len(r.items) - 1
	for i > 0 && (r.items[i].mark != "" || r.items[i].word == "enough" || r.items[i].word == "still") {
		i--
	}
	if it := &r.items[i]; it.meaning != "ok" && it.word != "pass" && it.word != "code" && it.word != "right" || i > 0 && isOne(r.items[i-1].word, []string{"all", "is", "was", "looks", "are", "its", "not"}) {
		return false
	}
	kind, top, _ := r.kind()
	return top >= 4 && judged[kind]
}

// judged are the kinds of question that end in yes or no.
var judged = map[term.Kind]bool{
	term.AskMoisture: true, term.AskFlatness: true, term.AskHeadroom: true, term.AskDoor: true, term.AskSquare: true, term.AskStagger: true, term.AskLongRun: true, term.AskTrimCover: true, term.AskTransition: true,
}

// builtUp says whether the floor's height is given as a whole where a kind takes board and underlay: "14 mm in total".
func (r *reader) builtUp(kind term.Kind) bool {
	if kind != term.AskUndercut && kind != term.AskDoor && kind != term.AskHeadroom {
		return false
	}
	return !r.has("plank", "underlay") && len(r.quantities()) < 3 && (r.has("total") || strings.Contains(r.src, " of floor") || r.hasWord("finished", "buildup", "build"))
}

// owners and others are words for the new floor's height and for the height beside it.
var (
	owners = []string{"ours", "mine", "our", "my"}
	others = []string{"tile", "carpet", "vinyl", "theirs", "wood", "concrete"}
)

// ownHeight gives which of two heights is the new floor's, by "ours" or "mine" before it, or after it where the first
// height stands before any such word; or else -1.
func (r *reader) ownHeight(a, b int) int {
	if !r.hasWord("ours", "mine") && !r.has("ours") && !r.finishes() {
		return -1
	}
	before := false
	for i := 0; i < a; i++ {
		before = before || r.labels(i)
	}
	own := -1
	for _, q := range []int{a, b} {
		step, stop := 1, len(r.items)
		if before {
			step, stop = -1, -1
		}
		for i := q + step; i != stop && !r.items[i].quantity(); i += step {
			if r.labels(i) {
				if r.owns(i) {
					if own >= 0 {
						return -1
					}
					own = q
				}
				break
			}
		}
	}
	return own
}

func (r *reader) labels(i int) bool {
	return r.owns(i) || isOne(r.items[i].meaning, others)
}

// finishes says whether the message tells what the new floor finishes at: "our laminate will finish 13 mm above the slab".
func (r *reader) finishes() bool {
	return r.hasWord("finish", "finishes", "ends") && r.has("plank", "floor") && !r.has("underlay", "wood")
}

// owns says whether the word at item i names the new floor.
func (r *reader) owns(i int) bool {
	return isOne(r.items[i].word, owners) || r.finishes() && isOne(r.items[i].meaning, []string{"plank", "floor"})
}

// fromTo gives the new floor's height in "from 14 mm down to 5 mm vinyl": the one with no other floor's name by it.
func (r *reader) fromTo(a, b int) int {
	if !r.hasWord("from", "down", "up", "our", "my", "us") || r.has("plank", "underlay") {
		return -1
	}
	named := func(q int) bool { return r.nearness(q, "tile carpet vinyl concrete wood") >= 4.5 }
	switch {
	case named(b) && !named(a):
		return a
	case named(a) && !named(b):
		return b
	}
	return -1
}

// mils finds "6 mil" on a slab or on wood, with no board or pad that it could be the thickness of: a film's.
func (r *reader) mils() bool {
	qs := r.quantities()
	return len(qs) == 1 && r.has("wood", "concrete") && !r.has("plank", "underlay", "floor", "dip") && strings.HasSuffix(strings.ToLower(r.src[r.items[qs[0]].at:r.items[qs[0]].end]), "mil")
}

// damper asks of moisture again with another reading or test: "and if it was 80%".
func (r *reader) damper(last *Question) (Reading, bool) {
	q := carried(last)
	test := r.testSaid()
	for _, g := range q.Given {
		if w, ok := g.Value.(term.Word); ok && g.Name == term.Test && test == "" {
			test = string(w)
		}
	}
	said := r.quantities()
	if len(said) != 1 || r.saysMore("moisture", "rh", "concrete", "wood", "screed", "test", "percent", "sorry", "no") && !r.opensFollow() {
		return Reading{}, false
	}
	it := r.items[said[0]]
	v := reading(it.sizes[0], test)
	switch {
	case v == nil || test == "":
		return Reading{}, false
	case it.vague:
		return r.askBack(q, term.Reading), true
	}
	q.Given = set(q.Given, given(term.Test, term.Word(test)))
	q.Given = set(q.Given, given(term.Reading, v))
	return Reading{Question: q}, true
}

// saysMore says whether the message has a word of the trade besides these.
func (r *reader) saysMore(but ...string) bool {
	for i := range r.items {
		if it := &r.items[i]; it.says() && !isOne(it.meaning, but) {
			return true
		}
	}
	return false
}

// amended puts one size of the last question right: "no sorry, it's 10 mm boards".
func (r *reader) amended(qs []int) (Reading, bool) {
	last := r.ctx.Last
	if last == nil || len(qs) != 1 || r.items[qs[0]].vague {
		return Reading{}, false
	}
	best := nearest(r.renewals(last, qs[0]))
	if best == nil {
		return Reading{}, false
	}
	return r.askedAnew(last, best.given), true
}

// thickOf is 1 where the only quantity stands before a word of the meaning, as its thickness: "3/4 ply".
func (r *reader) thickOf(meaning string) int {
	qs := r.quantities()
	if len(qs) != 1 || qs[0]+1 >= len(r.items) {
		return 0
	}
	for i := qs[0] + 1; i < len(r.items) && i <= qs[0]+2; i++ {
		if r.items[i].meaning == meaning {
			return 1
		}
	}
	return 0
}

// boarded takes a floor's height for the board's thickness where an underlay is named besides: "mine 10+2".
func boarded(gs []term.Given) []term.Given {
	if !hasName(gs, term.UnderlayThickness) || hasName(gs, term.PlankThickness) {
		return gs
	}
	for i := range gs {
		if gs[i].Name == term.FloorHeight && gs[i].From == term.Message {
			gs[i].Name = term.PlankThickness
		}
	}
	return gs
}
