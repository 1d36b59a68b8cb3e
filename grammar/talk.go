package grammar

import (
	"lastrow/calc/length"
	"lastrow/calc/term"
)

// courtesy is thanks or a greeting, and nothing else.
func (r *reader) courtesy() (Reading, bool) {
	polite := false
	for i := range r.items {
		it := &r.items[i]
		switch {
		case it.meaning == "thanks" || it.meaning == "hello":
			polite = true
		case it.quantity() || it.says() && it.meaning != "ok":
			return Reading{}, false
		}
	}
	return Reading{Courtesy: true}, polite && len(r.unknown) <= 2
}

// follow is "why", "again" or "show me" said of the last answer.
func (r *reader) follow() (Reading, bool) {
	if r.ctx.Last == nil && !r.has("why") || len(r.quantities()) > 0 || len(r.seq) > 3 {
		return Reading{}, false
	}
	_, top, _ := r.kind()
	switch {
	case top >= 4:
		return Reading{}, false
	case r.has("why") || r.hasWord("how") && len(r.seq) == 1 && r.hasWord("come", "that", "so"):
		return Reading{Follow: "why"}, true
	case r.has("again"):
		return Reading{Follow: "again"}, true
	case r.has("show") && len(r.seq) == 1:
		return Reading{Follow: "show"}, true
	}
	return Reading{}, false
}

// commands are the kinds that take no sizes and need no question mark.
var commands = map[term.Kind]bool{
	term.AskUndo: true, term.AskHistory: true, term.AskJobs: true, term.AskShare: true, term.AskUnshare: true, term.AskExport: true, term.AskForget: true, term.AskUnits: true, term.AskHelp: true,
}

func (r *reader) command() (Reading, bool) {
	if r.fromNowOn() {
		return Reading{Question: &Question{Kind: term.AskUnits, Given: r.system()}}, true
	}
	kind, top, next := r.kind()
	if kind == term.AskUnits && len(r.seq) > 1 && len(r.system()) == 0 && r.strangers() > 0 {
		return Reading{}, false
	}
	if !commands[kind] || top < 6 || top-next < 1 || len(r.quantities()) > 0 && kind != term.AskUndo {
		return Reading{}, false
	}
	if kind == term.AskUndo && len(r.quantities()) > 0 && !r.undoLeads() {
		return Reading{}, false
	}
	q := &Question{Kind: kind, Job: r.job}
	switch kind {
	case term.AskHelp:
		q.Given = r.topic()
	case term.AskUnits:
		q.Given = r.system()
	}
	return Reading{Question: q}, true
}

// fromNowOn says whether the message wants one system of units from now on: "gimme mm from here on".
func (r *reader) fromNowOn() bool {
	return len(r.quantities()) == 0 && len(r.system()) > 0 && len(r.unknown) <= 3 &&
		(r.hasWord("now", "here") && r.hasWord("from") && r.hasWord("on", "out") || r.hasWord("everything", "always")) && !r.has("start", "row", "box", "plank", "gap", "room")
}

// undoLeads says whether the word for taking back is of the message itself: "my day rate's 220 on top but ignore that" takes
// nothing back that was said before.
func (r *reader) undoLeads() bool {
	for i := range r.items {
		if it := &r.items[i]; it.meaning == "undo" {
			return i < 5 || it.word != "ignore"
		}
	}
	return false
}

// topic is the kind that help is asked on.
func (r *reader) topic() []term.Given {
	var rest []said
	for _, s := range r.seq {
		if s.is != "help" {
			rest = append(rest, s)
		}
	}
	for _, a := range asks {
		if r.hasWord(string(a.kind)) && a.kind != term.AskHelp {
			return word("topic", string(a.kind))
		}
	}
	m := &message{seq: rest}
	if kind, top, _ := (&reader{message: m}).kind(); top >= 4 && len(rest) > 0 && kind != term.AskHelp {
		return word("topic", string(kind))
	}
	return nil
}

func (r *reader) system() []term.Given {
	switch {
	case r.hasWord("metric", "mm", "millimetres", "millimeters", "metres", "meters", "cm"):
		return word("system", "metric")
	case r.hasWord("imperial", "inches", "feet", "inch"):
		return word("system", "imperial")
	}
	return nil
}

// pending takes the bare answer to a question back: "7 5/8".
func (r *reader) pending() (Reading, bool) {
	qs := r.quantities()
	if r.ctx.Setting != "" {
		return r.pendingSetting(qs)
	}
	p := r.ctx.Pending
	if p == nil || r.ctx.Group {
		return Reading{}, false
	}
	if kind, top, _ := r.kind(); top >= 4 && r.asks() && kind != p.Kind {
		return Reading{}, false
	}
	q := carried(p)
	missing := flat(r.ctx.Missing)
	if len(qs) == 0 {
		return r.pendingWord(q, missing)
	}
	return r.pendingSizes(q, missing, qs)
}

func (r *reader) pendingWord(q *Question, missing []term.Name) (Reading, bool) {
	for _, n := range missing {
		switch {
		case n == term.Subfloor && r.subfloor() != "":
			q.Given = set(q.Given, given(n, term.Word(r.subfloor())))
			return Reading{Question: q}, true
		case n == term.Test && r.testSaid() != "":
			q.Given = set(q.Given, given(n, term.Word(r.testSaid())))
			return Reading{Question: q}, true
		}
	}
	return Reading{}, false
}

// pendingSizes puts the sizes of an answer where they are missing. Bare numbers fill the needs in order.
func (r *reader) pendingSizes(q *Question, missing []term.Name, qs []int) (Reading, bool) {
	if q.Kind == term.AskMoisture {
		return r.damper(r.ctx.Pending)
	}
	var slots []slot
	for _, n := range missing {
		for _, s := range takes[q.Kind] {
			if s.name == n || s.name == "plank" && n == term.PlankWidth || s.name == "roll" && n == term.RollWidth {
				s.must, s.stacked = false, false
				slots = append(slots, s)
			}
		}
	}
	if r.has("thanks") && len(slots) == 0 || len(slots) == 0 {
		return Reading{}, false
	}
	if len(r.unknown) > 2 || r.ofOtherGoods(slots) {
		return Reading{}, false
	}
	r.placedFor(q.Kind)
	p, _ := r.place(qs, slots, r.lean)
	for i := range qs {
		if len(p.slot) == 0 || p.slot[i] < 0 {
			return Reading{}, false
		}
		if r.items[qs[i]].vague {
			return r.askBack(q, slots[p.slot[i]].name), true
		}
	}
	for i := range qs {
		for _, g := range r.givens(&slots[p.slot[i]], p.value[i]) {
			q.Given = set(q.Given, g)
		}
	}
	if w := r.impossible(q.Given); w != "" {
		return r.refused(q.Kind, w), true
	}
	return Reading{Question: q}, true
}

// goods are the things that a size is said of by name: "trim 1/2 inch" answers no question of the underlay.
var goods = []string{"trim", "underlay", "gap", "closet", "price", "kerf", "spare", "roll"}

// ofOtherGoods says whether the message names goods that none of the slots is about.
func (r *reader) ofOtherGoods(slots []slot) bool {
	for i := range r.items {
		m := r.items[i].meaning
		if !isOne(m, goods) {
			continue
		}
		about := false
		for _, s := range slots {
			about = about || wordIn(s.cues, m)
		}
		if !about {
			return true
		}
	}
	return false
}

// pendingSetting takes the bare answer to a statement's question back: what the gap is.
func (r *reader) pendingSetting(qs []int) (Reading, bool) {
	if len(qs) != 1 || r.asks() || r.ctx.Group || r.items[qs[0]].vague {
		return Reading{}, false
	}
	for _, s := range settings {
		if kindOf(s.name) != r.ctx.Setting {
			continue
		}
		s.must = false
		p, _ := r.place(qs, []slot{s}, r.lean)
		if len(p.slot) == 1 && p.slot[0] == 0 {
			out := placed{by: map[term.Name]value{s.name: p.value[0]}}.build()
			return Reading{Statements: out}, len(out) > 0
		}
	}
	return Reading{}, false
}

func flat(needs [][]term.Name) []term.Name {
	var out []term.Name
	for _, n := range needs {
		out = append(out, n...)
	}
	return out
}

// carried is a question whose inputs come from earlier in the conversation.
func carried(q *Question) *Question {
	c := &Question{Kind: q.Kind, Job: q.Job}
	for _, g := range q.Given {
		if g.From == term.Message {
			g.From = term.Earlier
		}
		if g.From == term.Earlier {
			c.Given = append(c.Given, g)
		}
	}
	return c
}

// set puts a value under its name in place of an earlier one.
func set(gs []term.Given, g term.Given) []term.Given {
	for i := range gs {
		if gs[i].Name == g.Name {
			gs[i] = g
			return gs
		}
	}
	return append(gs, g)
}

// instead are names of which a new one makes the other void.
var instead = [][]term.Name{
	{term.Across, term.Room, term.FloorArea, term.Expression}, {term.FloorHeight, term.PlankThickness}, {term.Run, term.Room}, {term.PlanksPerBox, term.BoxCoverage}, {term.Offcut, term.Joint},
}

// renew puts a value in and takes out what it makes void.
func renew(gs []term.Given, g term.Given) []term.Given {
	for _, group := range instead {
		if !named1(group, g.Name) {
			continue
		}
		kept := gs[:0:0]
		for _, h := range gs {
			if h.Name == g.Name || !named1(group, h.Name) {
				kept = append(kept, h)
			}
		}
		gs = kept
	}
	return set(gs, g)
}

func named1(group []term.Name, n term.Name) bool {
	for _, g := range group {
		if g == n {
			return true
		}
	}
	return false
}

// followed reads what begins as a follow-up does, before it is read by itself: "and to 5mm vinyl".
func (r *reader) followed() (Reading, bool) {
	if r.ctx.Last == nil || !r.opensFollow() {
		return Reading{}, false
	}
	if kind, top, _ := r.kind(); top >= 4 && kind != r.ctx.Last.Kind && !r.supposes() {
		return Reading{}, false
	}
	return r.followUp()
}

// supposes says whether the message gives a size with "if" and asks nothing by itself: "and if the gap is only 15mm".
func (r *reader) supposes() bool {
	return (r.hasWord("if", "suppose", "supposing", "imagine") || r.saysNow()) && !r.has("howmuch", "howmany", "howwide", "howlong", "which", "where", "when", "work")
}

// saysNow says whether the message begins with "say" or "now say", which supposes.
func (r *reader) saysNow() bool {
	for i := 0; i < len(r.items) && i < 3; i++ {
		switch r.items[i].word {
		case "say":
			return true
		case "now", "and", "so", "ok":
		default:
			return false
		}
	}
	return false
}

// opensFollow says whether a sentence begins with "and", "what about", "same", "for" and the like.
func (r *reader) opensFollow() bool {
	for _, f := range r.firsts {
		for ; f < len(r.items); f++ {
			it := &r.items[f]
			if it.meaning == "ok" || it.meaning == "hello" || it.meaning == "thanks" || it.mark != "" || it.word == "so" || it.word == "hmm" || it.word == "cool" || it.word == "great" || it.word == "right" {
				continue
			}
			switch it.word {
			case "and", "n", "or", "same", "if", "for", "at", "in", "using", "then", "but", "what", "how", "with", "instead", "now":
				next := ""
				if f+1 < len(r.items) {
					next = r.items[f+1].word
				}
				if it.word != "what" && it.word != "how" || next == "about" || next == "if" {
					return true
				}
			}
			break
		}
	}
	return false
}

// followUp asks the last question again with what the message changes: "and for 12 ft?", "what about the hall, 3 ft by 11".
func (r *reader) followUp() (Reading, bool) {
	last := r.ctx.Last
	if last == nil || r.ctx.Group || r.ctx.Pending != nil && !r.opensFollow() || len(r.unknown) > 2 {
		return Reading{}, false
	}
	qs := r.quantities()
	if r.has("same") && r.hasWord("metric", "mm", "imperial", "inches", "cm") {
		q := carried(last)
		q.Given = set(q.Given, r.system()[0])
		return Reading{Question: q}, true
	}
	if last.Kind == term.AskMoisture && len(qs) > 0 {
		return r.damper(last)
	}
	if out, ok := r.turnedRows(last); ok && len(qs) == 0 {
		return out, true
	}
	if len(qs) == 0 || len(takes[last.Kind]) == 0 || r.elsewhere(last.Kind) {
		return Reading{}, false
	}
	return r.again(last, qs)
}

// elsewhere says whether the words speak for another kind than the last and in no way for that one: no more of the same.
func (r *reader) elsewhere(last term.Kind) bool {
	kind, top, _ := r.kind()
	return top >= 2 && kind != last && score(askPatterns[last], r.seq) == 0 && !r.opensFollow()
}

// again fills a question that was asked before with the sizes of this message.
func (r *reader) again(last *Question, qs []int) (Reading, bool) {
	q := carried(last)
	slots := r.known(last)
	if len(qs) == 1 {
		for _, change := range []func(*Question, int) (Reading, bool){r.areaChanged, r.firstRowChanged} {
			if out, ok := change(last, qs[0]); ok {
				return out, true
			}
		}
	}
	if len(qs) == 1 && !r.items[qs[0]].vague {
		switch n, several := r.renews(last, qs[0]); {
		case n.slot != nil:
			return r.askedAnew(last, n.given), true
		case several:
			out := r.askBack(q, r.akinNames(last, qs[0])...)
			out.Problem.Not = "which size is which"
			return out, true
		}
	}
	r.placedFor(last.Kind)
	p, _ := r.place(qs, slots, r.leanOf(last))
	for i := range qs {
		if len(p.slot) == 0 || p.slot[i] < 0 {
			return Reading{}, false
		}
		s := &slots[p.slot[i]]
		if r.items[qs[i]].vague {
			return r.askBack(q, s.name), true
		}
		if s.dim == dLen && !hasName(last.Given, s.name) && r.nearness(qs[i], s.cues) < 1 && !onlyLength(last.Kind) {
			return Reading{}, false // nothing says that it is that
		}
		for _, g := range r.givens(s, p.value[i]) {
			q.Given = renew(q.Given, g)
		}
	}
	if w := r.impossible(q.Given); w != "" {
		return r.refused(q.Kind, w), true
	}
	return Reading{Question: q}, true
}

// onlyLength says whether a kind of question takes one length and no other.
func onlyLength(kind term.Kind) bool {
	n := 0
	for _, s := range takes[kind] {
		if s.dim == dLen {
			n++
		}
	}
	return n == 1
}

// known are the slots of a question, those given before first: a bare number is likely to renew one of them.
func (r *reader) known(last *Question) []slot {
	var first, rest []slot
	for _, s := range takes[last.Kind] {
		s.must = s.must && s.dim != dLen
		if s.name == term.FloorArea || s.name == term.BoxCoverage {
			s.loose = hasName(last.Given, s.name)
		}
		if hasName(last.Given, s.name) {
			first = append(first, s)
		} else {
			rest = append(rest, s)
		}
	}
	return append(first, rest...)
}

func hasName(gs []term.Given, n term.Name) bool {
	for _, g := range gs {
		if g.Name == n && g.From != term.FromJob && g.From != term.Default {
			return true
		}
	}
	return false
}

// leanOf is the system of the last question's sizes, where the message itself has none.
func (r *reader) leanOf(last *Question) leaning {
	if l := r.message.lean(Context{}); l.sure {
		return l
	}
	for _, g := range last.Given {
		if v, ok := g.Value.(term.Len); ok && g.From != term.Default {
			return leaning{roundIn(length.Length(v)), true}
		}
	}
	return r.lean
}
