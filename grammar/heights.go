package grammar

import (
	"slices"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// bySizes is what the sizes of a message speak for a kind of question, besides its words.
func (r *reader) bySizes(kind term.Kind) float64 {
	switch {
	case kind == term.AskFlatness && r.dipOver():
		if r.has("dip", "flat") {
			return 8
		}
		return 4
	case kind == term.AskMoisture && r.dampShare():
		return 4
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
	over := false
	for i := a + 1; i < b; i++ {
		switch it := &r.items[i]; {
		case slices.Contains(spans, it.word):
			over = true
		case !isOne(it.word, []string{"a", "the", "low", "high", "out", "off", "my", "our"}) && it.meaning != "dip":
			return false
		}
	}
	return over && b <= a+5
}

// dampShare finds a percentage on wood or concrete, which is how damp it is.
func (r *reader) dampShare() bool {
	return r.has("wood", "concrete") && !r.has("box", "spare", "shopping") && slices.ContainsFunc(r.quantities(), func(i int) bool { return r.items[i].sizes[0].class == tPercent })
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
	if it := &r.items[i]; it.meaning != "ok" && it.word != "pass" && it.word != "right" || i > 0 && isOne(r.items[i-1].word, []string{"all", "is", "was", "looks", "are", "its", "not"}) {
		return false
	}
	kind, top, _ := r.kind()
	return top >= 4 && judged[kind]
}

// judged are the kinds of question that end in yes or no.
var judged = map[term.Kind]bool{
	term.AskMoisture: true, term.AskFlatness: true, term.AskHeadroom: true, term.AskDoor: true, term.AskSquare: true, term.AskStagger: true, term.AskLongRun: true, term.AskTrimCover: true, term.AskTransition: true,
}

// triangle puts the longest of three lengths at the diagonal: no side of a room is longer.
func (r *reader) triangle(q *Question, qs *[]int) {
	var at []int
	var long []length.Length
	for _, i := range *qs {
		for _, t := range r.items[i].sizes {
			size, ok := r.message.read(t, bareRoom, r.lean3(*qs))
			if !ok || r.items[i].vague {
				return
			}
			at, long = append(at, i), append(long, size.Len)
		}
	}
	if len(at) != 3 || len(*qs) == 2 && len(r.items[(*qs)[0]].sizes) == 1 && len(r.items[(*qs)[1]].sizes) == 1 {
		return
	}
	k := 0
	for i, l := range long {
		if l > long[k] {
			k = i
		}
	}
	if long[k] < 2*foot {
		return
	}
	names := []term.Name{term.SideA, term.SideB}
	for i, l := range long {
		if i == k {
			q.Given = set(q.Given, given(term.Diagonal, term.Len(l)))
			continue
		}
		q.Given = set(q.Given, given(names[0], term.Len(l)))
		names = names[1:]
	}
	*qs = nil
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
	if !r.hasWord("ours", "mine") && !r.has("ours") {
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
				if isOne(r.items[i].word, owners) {
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
	return isOne(r.items[i].word, owners) || isOne(r.items[i].meaning, others)
}

// fromTo gives the new floor's height in "from 14 mm down to 5 mm vinyl": the one with no other floor's name by it.
func (r *reader) fromTo(a, b int) int {
	if !r.hasWord("from", "down", "up") || r.has("plank", "underlay") {
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
