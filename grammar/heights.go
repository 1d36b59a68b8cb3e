package grammar

import (
	"math"
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

// edge is one length of a triangle: a token, or two that are feet and inches.
type edge struct {
	t    token
	size length.Length
}

// triangle puts the longest of three lengths at the diagonal: no side of a room is longer. Where there are more numbers,
// some are feet and inches: "9 x 12 and 15 1".
func (r *reader) triangle(q *Question, qs *[]int) {
	var all []token
	for _, i := range *qs {
		if r.items[i].vague {
			return
		}
		all = append(all, r.items[i].sizes...)
	}
	if len(all) < 3 || len(all) > 6 {
		return
	}
	l := r.lean3(*qs)
	sides := r.edges(all, l)
	if len(all) > 3 {
		sides = r.merged(all, l)
	}
	if len(sides) != 3 {
		return
	}
	k := longest(sides)
	if sides[k].size < 2*foot {
		return
	}
	names := []term.Name{term.SideA, term.SideB}
	for i, s := range sides {
		if i == k {
			q.Given = set(q.Given, given(term.Diagonal, term.Len(s.size)))
			continue
		}
		q.Given = set(q.Given, given(names[0], term.Len(s.size)))
		names = names[1:]
	}
	*qs = nil
}

// edges reads tokens as lengths of walls; nil where one can't be.
func (r *reader) edges(ts []token, l leaning) []edge {
	var out []edge
	for _, t := range ts {
		size, ok := r.message.read(t, bareRoom, l)
		if !ok {
			return nil
		}
		out = append(out, edge{t, size.Len})
	}
	return out
}

func longest(e []edge) int {
	k := 0
	for i := range e {
		if e[i].size > e[k].size {
			k = i
		}
	}
	return k
}

// merged tries which numbers are feet and the inches after them, and gives the one way to three lengths that are
// nearly a right corner.
func (r *reader) merged(ts []token, l leaning) []edge {
	var found []edge
	ways := 0
	for way := 1; way < 1<<(len(ts)-1); way++ {
		if e := r.edges(pairUp(ts, way), l); len(e) == 3 && nearlyRight(e) {
			found, ways = e, ways+1
		}
	}
	if ways != 1 {
		return nil
	}
	return found
}

// pairUp makes feet and inches of the bare numbers at each bit set and after it; nil where they can't be.
func pairUp(ts []token, way int) []token {
	var out []token
	for i := 0; i < len(ts); i++ {
		if way>>i&1 == 0 {
			out = append(out, ts[i])
			continue
		}
		if i+1 == len(ts) || way>>(i+1)&1 == 1 {
			return nil
		}
		a, b := ts[i], ts[i+1]
		if a.class != tNumber || b.class != tNumber || !a.num.Whole() || b.num.Num >= 12*b.num.Den || b.at-a.end != 1 {
			return nil
		}
		out = append(out, pairOf(a, b))
		i++
	}
	return out
}

// nearlyRight says whether the longest of three lengths is within a fiftieth of the diagonal of the other two.
func nearlyRight(e []edge) bool {
	k := longest(e)
	d, sum := e[k].size.MM(), 0.0
	for i := range e {
		if i != k {
			sum += e[i].size.MM() * e[i].size.MM()
		}
	}
	return math.Abs(math.Sqrt(sum)-d) < d/50
}

// lean3 leans to metres where three bare lengths are small and one has decimals: 3.6, 3.2 and 4.81.
func (r *reader) lean3(qs []int) leaning {
	if r.lean.sure {
		return r.lean
	}
	dec := false
	for _, i := range qs {
		for _, t := range r.items[i].sizes {
			if t.class != tNumber || t.num.Float() >= 9 {
				return r.lean
			}
			dec = dec || r.decimal(t)
		}
	}
	if dec {
		return leaning{length.Metric, true}
	}
	return r.lean
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
