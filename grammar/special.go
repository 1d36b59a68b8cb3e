package grammar

import (
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
	"lastrow/grammar/words"
)

// special reads what some kinds take besides sizes in slots, and takes the quantities that it used out of qs.
// It gives the reason where a thing said can't be.
func (r *reader) special(q *Question, qs *[]int) string {
	r.dropTimber(qs)
	r.dropGauge(qs)
	r.addUp(q, qs)
	switch q.Kind {
	case term.AskMoisture:
		r.moisture(q, qs)
	case term.AskVaporBarrier:
		if what := r.subfloor(); what != "" {
			q.Given = append(q.Given, given(term.Subfloor, term.Word(what)))
		}
	case term.AskLeftover:
		r.lengthsLeft(q, qs)
	case term.AskWeight:
		r.oneBox(q, *qs)
	case term.AskNails, term.AskScrews:
		r.dropOne(qs)
	case term.AskTrim:
		r.stickAsked(q, qs)
		r.doors(q, qs)
	case term.AskLeveler:
		r.lastSize(q, qs, term.Depth)
	case term.AskCaulk:
		r.lastSize(q, qs, term.Bead)
		if r.has("fillet") {
			q.Given = append(q.Given, given(term.BeadShape, term.Word("fillet")))
		}
	case term.AskStagger:
		r.stagger(q, qs)
	case term.AskTransition:
		r.sameHeights(q, qs)
		if r.hasWord("bare") && r.has("concrete", "wood", "subfloor") && !r.has("tile", "carpet", "vinyl") && !hasName(q.Given, term.OtherHeight) {
			q.Given = append(q.Given, given(term.OtherHeight, term.Len(0)))
		}
	case term.AskSquare:
		r.threeFourFive(q, qs)
		r.triangle(q, qs)
	case term.AskTaper:
		r.taperOfRoom(q, qs)
	case term.AskHeadroom:
		r.dropLeast(qs)
	case term.AskGap:
		r.gapSaid(q, qs)
	}
	return ""
}

// dropTimber takes "two by four" and "2x4" out: a length of timber used as a straightedge.
func (r *reader) dropTimber(qs *[]int) {
	kept := (*qs)[:0]
	for _, i := range *qs {
		it := &r.items[i]
		if len(it.sizes) == 2 && it.sizes[0].class == tNumber && it.sizes[0].num == (length.Number{Num: 2, Den: 1}) && it.sizes[1].num == (length.Number{Num: 4, Den: 1}) && it.sizes[1].class == tNumber && i > 0 && (r.items[i-1].quantity() || r.items[i-1].meaning == words.Filler && r.has("dip", "flat")) {
			continue
		}
		kept = append(kept, i)
	}
	*qs = kept
}

// dropGauge takes "18 gauge" out: the thickness of a nail changes no count of them.
func (r *reader) dropGauge(qs *[]int) {
	kept := (*qs)[:0]
	for _, i := range *qs {
		if i+1 >= len(r.items) || r.items[i+1].meaning != "gauge" {
			kept = append(kept, i)
		}
	}
	*qs = kept
}

// dropOne takes the 1 out of "1 every 16 in".
func (r *reader) dropOne(qs *[]int) {
	kept := (*qs)[:0]
	for _, i := range *qs {
		if t := r.items[i].sizes[0]; t.class != tNumber || t.num.Num != t.num.Den || i+1 >= len(r.items) || r.items[i+1].meaning != "every" && r.items[i+1].meaning != "each" && r.items[i+1].meaning != "per" {
			kept = append(kept, i)
		}
	}
	*qs = kept
}

// stickAsked reads "how many 16 footers of base": the size right after "how many" is a stick's.
func (r *reader) stickAsked(q *Question, qs *[]int) {
	for k, i := range *qs {
		t := r.items[i].sizes[0]
		if i == 0 || k > 0 || len(r.items[i].sizes) != 1 || t.class != tLength || t.meas.Len < 4*foot || !(r.items[i-1].meaning == "howmany" || i > 1 && r.items[i-2].meaning == "howmany") {
			continue
		}
		q.Given = append(q.Given, given(term.StickLength, term.Len(t.meas.Len)))
		*qs = (*qs)[1:]
		return
	}
}

// doors reads "two doors of 80 cm", "doors 30 and 36 in" and "3 doors": the widths of all of them, or their count.
func (r *reader) doors(q *Question, qs *[]int) {
	n := int64(0)
	var taken []int
	var wide term.Lens
	for _, i := range *qs {
		t := r.items[i].sizes[0]
		switch {
		case len(r.items[i].sizes) > 1:
		case t.class == tNumber && t.num.Whole() && t.num.Num <= 12*t.num.Den && r.beforeDoor(i):
			n, taken = t.num.Num/t.num.Den, append(taken, i)
		case r.nearness(i, "stick long piece") > 5, r.nearness(i, "door doorway") < 4 && !r.eachDoor(taken, i) && (len(wide) == 0 || !r.listed(taken[len(taken)-1], i)):
		default:
			if s, ok := r.message.read(t, bareInch, r.lean); ok && s.Len >= 18*inch && s.Len <= 10*foot {
				wide, taken = append(wide, s.Len), append(taken, i)
			}
		}
	}
	switch {
	case n == 0 && len(wide) < 2 || len(wide) > 1 && n > 0 && int(n) != len(wide):
		return
	case len(wide) == 0:
		q.Given = append(q.Given, given(term.Doors, term.Count(n)))
	default:
		for len(wide) < int(n) {
			wide = append(wide, wide[0])
		}
		q.Given = append(q.Given, given(term.Doors, wide))
	}
	*qs = without(*qs, taken)
}

// beforeDoor says whether "doors" follows item i, or a size and "doors": "2 doors", "2 30in doors".
func (r *reader) beforeDoor(i int) bool {
	if i+2 < len(r.items) && r.items[i+1].quantity() {
		i++
	}
	return i+1 < len(r.items) && (r.items[i+1].meaning == "door" || r.items[i+1].meaning == "doorway")
}

// eachDoor says whether a size is of each of the doors counted right before it: "two doors, 30 inches each", "3 doors at 32 in".
func (r *reader) eachDoor(counted []int, i int) bool {
	if len(counted) == 0 {
		return false
	}
	for j := counted[len(counted)-1] + 2; j < i; j++ {
		if it := &r.items[j]; it.says() || it.quantity() || ends(it.mark) {
			return false
		}
	}
	return true
}

// lastSize reads "12x14 1/4" and "110ft 1/8" as a size and a small one after it, where the question needs both and no
// other size was said.
func (r *reader) lastSize(q *Question, qs *[]int, name term.Name) {
	if len(*qs) != 1 {
		return
	}
	it := &r.items[(*qs)[0]]
	t := &it.sizes[len(it.sizes)-1]
	space := strings.LastIndexByte(r.src[t.at:t.end], ' ')
	if space < 0 {
		return
	}
	head, k, err := length.Scan(r.src[t.at : t.at+space])
	small, n, err2 := length.Scan(r.src[t.at+space+1 : t.end])
	if err != nil || err2 != nil || k != space || t.at+space+1+n != t.end || small.Unit != length.Bare || small.Amount.Float() >= 1 {
		return
	}
	size, err := small.Amount.Of(inch)
	if err != nil {
		return
	}
	t.meas, t.num, t.end = head, head.Amount, t.at+space
	q.Given = append(q.Given, given(name, term.Len(size)))
}

// oneBox reads "what does a box weigh" as one box.
func (r *reader) oneBox(q *Question, qs []int) {
	for i := 1; i < len(r.items); i++ {
		if r.items[i].meaning != "box" || !isOne(r.items[i-1].word, []string{"a", "one", "each"}) || i > 1 && (r.items[i-2].quantity() || r.items[i-2].meaning == "area" || isOne(r.items[i-2].word, []string{"to", "in", "per", "for"})) {
			continue
		}
		for _, k := range qs {
			if r.message.countsGoods(k) && r.items[k+1].meaning == "box" {
				return
			}
		}
		q.Given = append(q.Given, given(term.Boxes, term.Count(1)))
		return
	}
}

// tests are the ways to measure moisture, by the word for each.
var tests = []struct{ meaning, test string }{
	{"rh", "rh"}, {"calcium", "calcium-chloride"}, {"carbide", "carbide"}, {"woodtest", "wood"}, {"probe", "rh"},
}

func (r *reader) testSaid() string {
	for _, t := range tests {
		if r.has(t.meaning) {
			return t.test
		}
	}
	switch {
	case r.has("wood") && (r.has("moisture", "test") || r.dampShare()):
		return "wood"
	case r.has("concrete") && r.dampShare():
		return "rh"
	}
	return ""
}

func (r *reader) moisture(q *Question, qs *[]int) {
	test := r.testSaid()
	for k, i := range *qs {
		t := r.items[i].sizes[0]
		v := reading(t, test)
		if v == nil || len(r.items[i].sizes) > 1 || r.items[i].vague {
			continue
		}
		if t.class == tMass && test == "" {
			test = "calcium-chloride"
		}
		q.Given = append(q.Given, given(term.Reading, v))
		*qs = append((*qs)[:k], (*qs)[k+1:]...)
		break
	}
	if test != "" {
		q.Given = append([]term.Given{given(term.Test, term.Word(test))}, q.Given...)
	}
}

// reading is a moisture reading: a percentage, or pounds for a calcium chloride test.
func reading(t token, test string) term.Value {
	switch {
	case t.class == tMass && t.unit == "lb", t.class == tNumber && test == "calcium-chloride":
		return term.Number{Rat: ratOf(t.num)}
	case t.class == tPercent, t.class == tNumber && test != "" && t.num.Float() <= 100:
		if n, err := scale(t.num, 1000); err == nil {
			return term.Percent(n)
		}
	}
	return nil
}

// subfloor is the material under the floor that is spoken of. One set aside, as in "or is that only for concrete", is not.
func (r *reader) subfloor() string {
	for _, what := range []string{"concrete", "wood"} {
		for i := range r.items {
			if r.items[i].meaning == what && !r.setAside(i) {
				return what
			}
		}
	}
	return ""
}

// setAside says whether "only", "just", "not" or the like stands a few words before item i, with no mark between.
func (r *reader) setAside(i int) bool {
	for j := i - 1; j >= 0 && j >= i-4 && r.items[j].word != ""; j-- {
		if isOne(r.items[j].word, []string{"only", "just", "not", "isnt", "except", "unlike"}) {
			return true
		}
	}
	return false
}

// lengthsLeft reads a list of offcuts: "40, 33, 28 1/2 and 22 in".
func (r *reader) lengthsLeft(q *Question, qs *[]int) {
	var run []int
	for _, i := range *qs {
		if len(run) > 0 && !r.listed(run[len(run)-1], i) {
			if len(run) > 1 {
				break
			}
			run = run[:0]
		}
		if len(r.items[i].sizes) == 1 && isSize(r.items[i].sizes[0]) {
			run = append(run, i)
		}
	}
	if len(run) < 2 {
		return
	}
	q.Given = append(q.Given, given(term.Leftover, r.list(run)))
	*qs = without(*qs, run)
}

// listed says whether only commas and "and" stand between two items.
func (r *reader) listed(a, b int) bool {
	for i := a + 1; i < b; i++ {
		if it := &r.items[i]; it.mark != "," && it.word != "and" && it.word != "n" && it.mark != "&" && it.mark != "+" {
			return false
		}
	}
	return true
}

// list reads the quantities of a list in the unit that one of them has.
func (r *reader) list(run []int) term.Lens {
	u := length.Inches
	for _, i := range run {
		if t := r.items[i].sizes[0]; t.class == tLength && t.meas.Form == length.Single {
			u = t.meas.Unit
		}
	}
	var out term.Lens
	for _, i := range run {
		t := r.items[i].sizes[0]
		if t.class == tNumber {
			withUnit(&t, u)
		}
		out = append(out, t.meas.Len)
	}
	return out
}

func without(qs, taken []int) []int {
	var out []int
	for _, q := range qs {
		used := false
		for _, t := range taken {
			used = used || t == q
		}
		if !used {
			out = append(out, q)
		}
	}
	return out
}

// stagger reads "min 250 between the joints, i got 265": a least and an offset.
func (r *reader) stagger(q *Question, qs *[]int) {
	if !r.has("least", "spec") || len(*qs) != 2 || r.has("offcut") {
		return
	}
	least, got := (*qs)[0], (*qs)[1]
	if r.nearness(got, "least spec") > r.nearness(least, "least spec") {
		least, got = got, least
	}
	a, ok1 := r.message.read(r.items[least].sizes[0], bareInch, r.lean)
	b, ok2 := r.message.read(r.items[got].sizes[0], bareInch, r.lean)
	if ok1 && ok2 {
		q.Given = append(q.Given, given(term.LeastStagger, term.Len(a.Len)), given(term.Offset, term.Len(b.Len)))
		*qs = nil
	}
}

// sameHeights reads two heights of which one is said to be the new floor's: "ours 13mm theirs 13mm".
func (r *reader) sameHeights(q *Question, qs *[]int) {
	if len(*qs) != 2 || r.items[(*qs)[0]].vague || r.items[(*qs)[1]].vague {
		return
	}
	own := r.ownHeight((*qs)[0], (*qs)[1])
	if own < 0 {
		own = r.fromTo((*qs)[0], (*qs)[1])
	}
	if own < 0 {
		return
	}
	other := (*qs)[0] + (*qs)[1] - own
	a, ok1 := r.message.read(r.items[own].sizes[0], bareThick, r.lean)
	b, ok2 := r.message.read(r.items[other].sizes[0], bareThick, r.lean)
	if ok1 && ok2 && a.Len > 0 {
		q.Given = append(q.Given, given(term.FloorHeight, term.Len(a.Len)), given(term.OtherHeight, term.Len(b.Len)))
		*qs = nil
	}
}

// twoWays asks which where two ways to place the sizes fit as well as each other.
func (r *reader) twoWays(q *Question, qs []int, slots []slot, p placing) Reading {
	out := r.askBack(q)
	for i := range qs {
		if p.slot[i] >= 0 {
			out.Problem.Missing = append(out.Problem.Missing, slots[p.slot[i]].name)
		}
	}
	out.Problem.Not = "which size is which"
	return out
}

// gapSaid takes the gap out of "is 1/4 inch enough of a gap on a 40 foot run": the one size that a gap can have, where it is judged.
func (r *reader) gapSaid(q *Question, qs *[]int) {
	for k, i := range *qs {
		if len(r.items[i].sizes) != 1 || r.items[i].vague || len(*qs) == 1 && !r.has("enough", "ok") {
			continue
		}
		if size, ok := r.message.read(r.items[i].sizes[0], bareSmall, r.lean); ok && size.Len > 0 && size.Len <= 3*inch/2 {
			q.Given = append(q.Given, given(term.Gap, term.Len(size.Len)))
			*qs = append((*qs)[:k:k], (*qs)[k+1:]...)
			return
		}
	}
}
