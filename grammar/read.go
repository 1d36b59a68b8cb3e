package grammar

import (
	"slices"
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
	"lastrow/grammar/words"
)

// reader is one message being read.
type reader struct {
	*message
	ctx     Context
	lean    leaning
	guessed *guess // once taken
}

// Read understands one message in its context. It never fails: what it can't make out is the reading's Problem.
func Read(text string, ctx Context) Reading {
	r, m := read(text, ctx)
	if m != nil {
		r.Signs = m.signs()
		l := m.lean(Context{})
		r.System, r.Measured = l.system, l.sure
	}
	if ctx.Group && (r.Problem != nil || r.Follow != "" || r.Courtesy) {
		return Reading{Silent: true}
	}
	return r
}

func read(text string, ctx Context) (Reading, *message) {
	if why := screen(text); why != "" {
		return problem("refused", "", "", "it has "+why, "room 11ft 4in x 12ft 6in"), nil
	}
	text = strings.TrimSpace(strings.Map(plainSpace, text))
	if text == "" {
		return problem("unclear", "", "", "it is empty", "last row for an 11ft 4in room, plank 7 5/8"), nil
	}
	if r, ok := readCanonical(text); ok && !ctx.Group {
		return r, nil
	}
	if r, ok := readNamed(text, ctx); ok {
		return r, nil
	}
	m := understand(text, ctx.Jobs)
	r := &reader{message: m, ctx: ctx, lean: m.lean(ctx)}
	return r.read(), m
}

func (r *reader) read() Reading {
	if r.bad != "" {
		return r.refused("", r.bad)
	}
	if w := r.strange(); w != "" {
		return r.refused("", w)
	}
	if r.ctx.Group && !r.wholly() {
		return Reading{Silent: true}
	}
	for _, try := range []func() (Reading, bool){r.courtesy, r.follow, r.alone, r.further, r.reshaped, r.correction, r.agreed(r.command), r.mixed, r.followed, r.agreed(r.sum), r.pending, r.floor, r.rerun, r.agreed(r.forbidden), r.shareForPrice, r.brokenBoxes, r.pricedByArea, r.agreed(r.question), r.agreed(r.statements), r.followUp, r.likelyTold} {
		if out, ok := try(); ok {
			if r.ctx.Group && !r.plainly(out) {
				return Reading{Silent: true}
			}
			return out
		}
	}
	return r.unclear()
}

func problem(outcome string, kind term.Kind, read, not, example string) Reading {
	return Reading{Problem: &Problem{Outcome: outcome, Kind: kind, Read: read, Not: not, Example: example}}
}

func (r *reader) refused(kind term.Kind, why string) Reading {
	return problem("refused", kind, r.gist(), why, example(kind))
}

// ask says that names are missing for a question that was understood.
func (r *reader) askBack(q *Question, missing ...term.Name) Reading {
	return Reading{Problem: &Problem{Outcome: "ask-back", Kind: q.Kind, Read: r.gist(), Not: "", Example: example(q.Kind), Missing: missing, Asked: q}}
}

// unclear says what was read, what was not, and what would work near to it.
func (r *reader) unclear() Reading {
	kind, _, _ := r.kind()
	return problem("unclear", "", r.gist(), r.notRead(), example(kind))
}

// notRead gives up to three words that say nothing to the bot.
func (r *reader) notRead() string {
	var out []string
	for i := range r.items {
		if it := &r.items[i]; it.word != "" && (it.meaning == "" || it.meaning == words.Everyday) && len(out) < 3 {
			out = append(out, it.word)
		}
	}
	return strings.Join(out, " ")
}

// gist is the sizes and the words of the trade in a message, in short.
func (r *reader) gist() string {
	var b strings.Builder
	for i := range r.items {
		it := &r.items[i]
		if b.Len() > 60 {
			break
		}
		if it.quantity() || it.says() && !it.near {
			if b.Len() > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(r.src[it.at:min(it.end, it.at+30)])
		}
	}
	return b.String()
}

// strange finds what no message about a floor holds: clock times for sizes, templates.
func (r *reader) strange() string {
	for i := range r.items {
		it := &r.items[i]
		if it.mark == "{" || it.mark == "}" {
			return "braces have no meaning here"
		}
		if it.class == tClock && i+1 < len(r.items) && r.items[i+1].mark == "x" {
			return r.src[it.at:it.end] + " is written like a time"
		}
		for _, t := range it.sizes {
			if t.neg {
				return "a size under nothing, -" + t.text
			}
		}
	}
	return ""
}

// kind gives the kind of question that the words speak for, its score, and the score of the next.
func (r *reader) kind() (best term.Kind, top, next float64) {
	for _, a := range asks {
		s := r.byWords(a.kind) + r.likeness(a.kind)
		if s > top {
			best, top, next = a.kind, s, top
		} else if s > next {
			next = s
		}
	}
	if top < 4 && len(r.seq) == 1 && r.has("show") {
		return term.AskPlan, 4, top
	}
	return best, top, next
}

// question reads a message that asks.
func (r *reader) question() (Reading, bool) {
	if !r.asks() {
		return Reading{}, false
	}
	kind, top, _ := r.kind()
	if top < 4 || kind == term.AskUndo && len(r.quantities()) > 0 && !r.undoLeads() || r.unreadPart() || top < 7 && r.likelyTells() || r.ofLast(kind) && r.byWords(kind) < 4 {
		return Reading{}, false
	}
	return r.ask(kind), true
}

func (r *reader) ask(kind term.Kind) Reading {
	if kind == term.AskBoxes && r.underWay() {
		kind = term.AskStatus
	}
	q := r.inherit(&Question{Kind: kind, Job: r.job})
	qs := r.quantities()
	if out, ok := r.newShape(q); ok {
		return out
	}
	special := r.special(q, &qs)
	if special != "" {
		return r.refused(kind, special)
	}
	slots := r.slotsFor(kind)
	r.placedFor(kind)
	p, tie := r.place(qs, slots, r.lean)
	if tie {
		return r.twoWays(q, qs, slots, p)
	}
	if i := r.stray(kind, qs, slots, p); i >= 0 {
		return r.noPlace(q, i)
	}
	return r.filled(q, qs, slots, p)
}

// slotsFor gives what a kind takes: no way round a room whose sides were said, and
// a roll of the second pair of sizes where a room is the first.
func (r *reader) slotsFor(kind term.Kind) []slot {
	slots := takes[kind]
	switch {
	case r.builtUp(kind):
		return append(slices.DeleteFunc(slices.Clone(slots), func(s slot) bool { return s.name == term.PlankThickness || s.name == term.UnderlayThickness }), sFloorH)
	case kind == term.AskTrim && r.pairs() > 0:
		return slices.DeleteFunc(slices.Clone(slots), func(s slot) bool { return s.name == term.Perimeter })
	case kind == term.AskUnderlay && (r.pairs() > 1 || r.areaSaid() != ""):
		slots = slices.DeleteFunc(slices.Clone(slots), func(s slot) bool { return s.name == term.Room && r.areaSaid() != "" })
		for i := range slots {
			slots[i].must = slots[i].must && slots[i].name != "roll"
		}
	}
	return slots
}

// inherit lets a question that points back ("and what does that lot weigh") rest on the sizes of the one before.
func (r *reader) inherit(q *Question) *Question {
	if r.ctx.Last == nil || r.ctx.Group || q.Job != r.ctx.Last.Job || !r.opensFollow() && !r.hasWord("that", "those", "lot") {
		return q
	}
	for _, g := range carried(r.ctx.Last).Given {
		for _, s := range takes[q.Kind] {
			if s.name == g.Name {
				q.Given = append(q.Given, g)
			}
		}
	}
	return q
}

// filled gives the question its values; a quantity said to be more or less is asked for.
func (r *reader) filled(q *Question, qs []int, slots []slot, p placing) Reading {
	var vague []term.Name
	for i := range qs {
		if len(p.slot) == 0 || p.slot[i] < 0 {
			if (len(slots) > 1 || q.Kind == term.AskMoisture) && !r.inPassing(qs[i]) && (r.chance(qs[i], nowhere) < r.enough(qs[i]) || r.relative(qs[i]) || r.partOf(qs[i])) {
				return r.noPlace(q, qs[i])
			}
			continue
		}
		s := &slots[p.slot[i]]
		if r.overrides(qs[i], s) {
			return r.noPlace(q, qs[i])
		}
		if r.items[qs[i]].vague || r.doubtfulGap(s.name, p.value[i]) {
			vague = append(vague, s.name)
			continue
		}
		for _, g := range r.givens(s, p.value[i]) {
			if saidTwice(q.Given, g.Name) {
				return r.noPlace(q, qs[i])
			}
			q.Given = renew(q.Given, g)
		}
	}
	q.Given = r.along(q.Kind, boarded(q.Given))
	if w := r.impossible(q.Given); w != "" {
		return r.refused(q.Kind, w)
	}
	if len(vague) > 0 {
		return r.askBack(q, vague...)
	}
	if r.needsDiagonal(q) {
		return r.askBack(q, term.Diagonal)
	}
	return Reading{Statements: r.progress(qs), Question: q}
}

// saidTwice says whether the message gave a name before.
func saidTwice(gs []term.Given, n term.Name) bool {
	for _, g := range gs {
		if g.Name == n && g.From == term.Message {
			return true
		}
	}
	return false
}

// inPassing says whether a quantity that found no place changes no answer: a count of boxes had or bought, a pack's count
// that the question has no use for, a time.
func (r *reader) inPassing(i int) bool {
	t := r.items[i].sizes[0]
	if t.class == tTime {
		return true
	}
	if t.class != tNumber || len(r.items[i].sizes) > 1 {
		return false
	}
	return t.num.Num == t.num.Den || r.saidOfGoods(i) || r.message.countsStrangers(i) || r.message.perBox(i) || r.message.countsGoods(i) && i+1 < len(r.items) && r.items[i+1].meaning != "door"
}

// saidOfGoods says whether a bare number was said before of goods: "20 boxes ... is 20 enough".
func (r *reader) saidOfGoods(i int) bool {
	return slices.ContainsFunc(r.quantities(), func(j int) bool {
		return j < i && r.items[j].sizes[0].num == r.items[i].sizes[0].num && r.message.countsGoods(j)
	})
}

// progress is what a question says of the work done: "laid 6 rows, will it do?".
func (r *reader) progress(qs []int) []Statement {
	p := placed{by: map[term.Name]value{}}
	for _, s := range settings {
		if s.name != term.Laid && s.name != term.Opened && s.name != term.Damaged {
			continue
		}
		for _, q := range qs {
			if v, _, ok := r.valueFor(q, &s, r.lean); ok && r.nearness(q, string(s.name)) >= 4.5 && !r.items[q].vague {
				p.by[s.name] = v
			}
		}
	}
	return r.more(p.build(), p)
}

// noPlace says which size the question has no place for.
func (r *reader) noPlace(q *Question, i int) Reading {
	out := r.unclear()
	out.Problem.Not = r.src[r.items[i].at:r.items[i].end]
	out.Problem.Kind, out.Problem.Example = q.Kind, example(q.Kind)
	return out
}

// givens lists a slot's value under the names it has: a plank's sizes under three.
func (r *reader) givens(s *slot, v value) []term.Given {
	switch s.name {
	case "plank":
		names := []term.Name{term.PlankWidth, term.PlankLength, term.PlankThickness}
		var out []term.Given
		for i, size := range v.sizes {
			out = append(out, given(names[i], term.Len(size.Len)))
		}
		return out
	case "spare-planks":
		return []term.Given{given(term.Spare, v.term)}
	case "sides":
		return []term.Given{given(term.SideA, term.Len(v.sizes[0].Len)), given(term.SideB, term.Len(v.sizes[1].Len))}
	case "roll":
		a, b := v.sizes[0].Len, v.sizes[1].Len
		if a > b {
			a, b = b, a
		}
		return []term.Given{given(term.RollWidth, term.Len(a)), given(term.RollLength, term.Len(b))}
	}
	return []term.Given{given(s.name, v.term)}
}

// impossible names a value that no floor has.
func (r *reader) impossible(gs []term.Given) string {
	for _, g := range gs {
		switch v := g.Value.(type) {
		case term.Len:
			if w := outside(g.Name, length.Length(v)); w != "" {
				return w
			}
		case term.Lens:
			for _, l := range v {
				if w := outside(g.Name, l); w != "" {
					return w
				}
			}
		case term.Percent:
			if v < 0 {
				return string(g.Name) + " can't be under nothing"
			}
		}
	}
	return ""
}

func outside(n term.Name, l length.Length) string {
	tape := length.Tape{}
	switch {
	case l > 1000*length.Metre:
		return string(n) + " of " + tape.Exact(l) + " is longer than any floor"
	case l == 0 && n != term.Gap && n != term.Kerf && n != term.Offcut && n != term.DoorGap && n != term.OtherHeight && n != term.PreviousJoint && n != term.Dip:
		return string(n) + " of nothing is no size"
	case n == term.Gap && l > 6*length.Inch:
		return "a gap of " + tape.Exact(l) + " is wider than any gap"
	case n == term.PlankWidth && l > 4*length.Foot:
		return "a plank " + tape.Exact(l) + " wide is no plank"
	}
	return ""
}

// asks says whether the message asks anything.
func (r *reader) asks() bool {
	if r.marked() || r.whWord() || r.has("how", "howmany", "howmuch", "howwide", "howlong", "howheavy", "howdeep", "what", "where", "work") {
		return true
	}
	if it := &r.items[0]; it.meaning == "row" && r.onlyNamed() && (len(r.seq) == 2 || len(r.seq) == 4 && r.seq[2].is == "piece") && r.seq[1].is == "#n" {
		return true
	}
	if r.has("least") {
		return false
	}
	if r.likelyAsks() {
		return true
	}
	if r.pricesGoods() {
		return false
	}
	if !r.found() {
		for i := range terse {
			if terse[i].in(r.seq) {
				return true
			}
		}
	}
	if r.endsOK() || r.endsTag() || !r.ctx.Group && len(r.ctx.Statements) == 0 && r.dipOver() && !r.found() {
		return true
	}
	if r.gapOfRun() || r.forOpening() {
		return true
	}
	for _, f := range r.firsts {
		if r.opensAsk(f) {
			return true
		}
	}
	return r.hasAskPair()
}

// pricesGoods says whether the message tells what a thing costs: "the boxes cost 38.99 each".
func (r *reader) pricesGoods() bool {
	if r.items[0].meaning == "cost" || r.items[0].meaning == "price" && r.has("job", "room", "floor") {
		return false
	}
	if r.onePriced() {
		return true
	}
	for i := range priced {
		if priced[i].in(r.seq) {
			return len(r.quantities()) == 1
		}
	}
	return false
}

var priced = compile([]cue{{1, "box cost #"}, {1, "plank cost #"}, {1, "cost # ~ box|each|per"}, {1, "cost|price|box ~ #m"}})

// whWord says whether one of the words that questions begin with was said.
func (r *reader) whWord() bool {
	return r.hasWord("how", "hows", "what", "whats", "where", "wheres", "why") || r.whenAsks() || r.whichAsks()
}

// whenAsks says whether "when" asks: it begins a sentence, as in "when can I lay", and not in "broke when I dropped it".
func (r *reader) whenAsks() bool {
	for _, f := range r.firsts {
		for i := f; i < len(r.items) && i <= f+2; i++ {
			if r.items[i].meaning == "when" {
				return true
			}
		}
	}
	return false
}

// whichAsks says whether "which" asks, and is not the "which is" that goes on about something.
func (r *reader) whichAsks() bool {
	for i := range r.items {
		if r.items[i].word == "which" && !(i > 0 && r.items[i-1].says() && i+1 < len(r.items) && (r.items[i+1].word == "is" || r.items[i+1].word == "are" || r.items[i+1].word == "has")) {
			return true
		}
	}
	return false
}

// requests says whether the message asks for something to be set, as a statement does: "can you make the gap 3/8".
func (r *reader) requests() bool {
	return r.has("make", "record", "switch") || r.hasWord("put", "set", "change", "add", "mark", "figure", "allow", "carry", "bump", "update", "please", "pls", "log", "use", "want", "like")
}

// forOpening says whether the message begins with goods and "for": "screws for a 6 ft track".
func (r *reader) forOpening() bool {
	for i := 0; i+1 < len(r.items) && i < 4; i++ {
		if w := r.items[i].word; w == "for" || r.items[0].word == "rows" && isOne(w, []string{"in", "with", "using", "at"}) {
			return i > 0 && r.items[i-1].says()
		}
		if r.items[i].mark != "" || r.items[i].quantity() {
			return false
		}
	}
	return false
}

var askOpeners = map[string]bool{
	"is": true, "are": true, "am": true, "does": true, "do": true, "did": true, "will": true, "can": true, "could": true, "should": true, "would": true,
	"has": true, "have": true, "may": true, "need": true, "any": true, "was": true, "isnt": true, "wont": true, "aint": true, "got": true,
}

// opensAsk says whether a sentence begins as questions do, after a greeting.
func (r *reader) opensAsk(f int) bool {
	for ; f < len(r.items) && f >= 0; f++ {
		it := &r.items[f]
		switch {
		case it.word == "" && !it.quantity(), it.meaning == "hello", it.meaning == "thanks", it.meaning == "sorry" && it.word == "sorry", it.word == "so", it.word == "and", it.word == "ok", it.word == "hey", it.word == "also", it.word == "but", it.word == "then":
			continue
		case it.word == "need" || it.word == "have" || it.word == "got" || it.word == "any":
			return it.word == "any"
		}
		return askOpeners[it.word] && !(it.word == "did" && f+1 < len(r.items) && (r.items[f+1].quantity() || r.items[f+1].meaning == "another"))
	}
	return false
}

// pairs of words that ask wherever they stand.
var askPairs = [][2]string{
	{"do", "i"}, {"do", "we"}, {"can", "i"}, {"can", "we"}, {"can", "you"}, {"should", "i"}, {"should", "we"}, {"am", "i"}, {"are", "we"}, {"is", "it"}, {"is", "that"}, {"is", "this"}, {"will", "it"}, {"will", "the"},
	{"will", "i"}, {"will", "my"}, {"will", "that"}, {"does", "it"}, {"does", "that"}, {"does", "the"}, {"do", "they"}, {"is", "my"}, {"is", "the"}, {"let", "it"}, {"are", "they"}, {"need", "to"}, {"do", "u"}, {"is", "there"}, {"will", "we"}, {"can", "u"}, {"would", "it"}, {"do", "you"}, {"will", "they"}, {"will", "this"}, {"could", "you"}, {"send", "cuts"}, {"can", "my"}, {"can", "the"}, {"can", "they"}, {"are", "my"}, {"is", "our"}, {"can", "our"}, {"we", "good"}, {"good", "to"}, {"ok", "to"}, {"i", "good"}, {"is", "he"}, {"we", "ok"}, {"i", "ok"}, {"this", "ok"}, {"that", "ok"}, {"it", "ok"}, {"good", "enough"}, {"price", "it"}, {"or", "not"}, {"or", "nah"}, {"or", "no"}, {"y", "n"}, {"my", "guys"}, {"can", "crew"}, {"can", "guys"}, {"am", "we"}, {"we", "clear"}, {"clear", "to"},
	{"have", "we"}, {"have", "i"}, {"have", "they"}, {"has", "he"}, {"did", "we"}, {"did", "i"}, {"did", "you"}, {"did", "they"},
}

func (r *reader) hasAskPair() bool {
	for i := 0; i+1 < len(r.items); i++ {
		for _, p := range askPairs {
			if r.items[i].word == p[0] && r.items[i+1].word == p[1] && (i == 0 || !subject(r.items[i-1].word)) {
				return true
			}
		}
	}
	return false
}

// subject says whether a verb after the word tells and does not ask: "what we do is".
func subject(w string) bool { return w == "i" || w == "we" || w == "they" || w == "you" || w == "to" }
