package grammar

import (
	_ "embed"
	"slices"

	"lastrow/calc/term"
	"lastrow/grammar/likely"
)

//go:embed likely/kinds.txt
var kindWeights string

// kindModel guesses at kinds. It is learnt from testdata/phrasebook and testdata/phrases; guess_test.go learns it anew.
var kindModel = likely.Parse(kindWeights)

// The probabilities from which a guess at a kind is heeded.
const (
	doubts  = 0.7  // what rules read as another kind is not taken for granted
	sure    = 0.8  // it makes a question of what has no word of asking
	surest  = 0.9  // it outweighs rules that speak for another kind
	certain = 0.97 // by more
)

// none is the kind of what is not said to the bot.
const none term.Kind = "none"

// guess is the kind of a message by its likeness to messages of known kind, and how likely that is, from 0 to 1.
type guess struct {
	kind term.Kind
	p    float64
}

// guess takes a guess at a message's kind, once.
func (r *reader) guess() guess {
	if r.guessed == nil {
		best, _ := kindModel.Best(r.features())
		r.guessed = &guess{term.Kind(best.Label), best.P}
	}
	return *r.guessed
}

// likeness is what the guess adds to a kind's score, or takes from it. In a group the rules alone decide: there a
// message must be wholly a question.
func (r *reader) likeness(k term.Kind) float64 {
	g := r.guess()
	switch {
	case r.ctx.Group || g.kind == k && statementKinds[k] && r.requests():
		return 0
	case g.kind == k && g.p >= certain:
		return 9
	case g.kind == k && g.p >= surest:
		return 7
	case g.kind == k:
		return 5 * g.p
	case g.p >= surest && !commands[k] && !(statementKinds[g.kind] && r.asksOutright()):
		return -4
	}
	return 0
}

// sureOf says whether a message of one's own is of a kind beyond much doubt.
func (r *reader) sureOf(k term.Kind) bool {
	g := r.guess()
	return g.kind == k && g.p >= sure && !r.ctx.Group
}

// likelyAsks says whether a message is beyond much doubt a question, by its kind alone, and no word of putting right is in it.
func (r *reader) likelyAsks() bool {
	g := r.guess()
	return g.p >= sure && !statementKinds[g.kind] && g.kind != none && !r.has("sorry") && !r.found() && !r.unreadPart() && !r.ofLast(g.kind)
}

// ofLast says whether a kind is the last question's: a message that is only guessed to ask it goes on from that one.
func (r *reader) ofLast(k term.Kind) bool { return r.ctx.Last != nil && r.ctx.Last.Kind == k }

// byWords is what the words and sizes of a message speak for a kind, without a guess.
func (r *reader) byWords(k term.Kind) float64 { return score(askPatterns[k], r.seq) + r.bySizes(k) }

// unreadPart says whether a part of something, or a number not quite told, is said that no size came of: "quarter over
// ten", "in the mid seventies".
func (r *reader) unreadPart() bool {
	return slices.ContainsFunc(r.unknown, func(w string) bool {
		return isOne(w, []string{"quarter", "half", "third", "eighth", "sixteenth", "tens", "sixes", "sevens", "eights", "nines", "twelves", "sixteens", "teens", "twenties", "thirties", "forties", "fifties", "sixties", "seventies", "eighties", "nineties"})
	})
}

// enough is how likely a quantity must be said in passing to be left out: a bare number needs less than one with a unit.
func (r *reader) enough(q int) float64 {
	if r.items[q].sizes[0].class == tNumber && len(r.items[q].sizes) == 1 {
		return likelier
	}
	return surest
}

// stray finds a bare number that went to a place with no word for it, in a question whose kind is only guessed at; or -1.
func (r *reader) stray(k term.Kind, qs []int, slots []slot, p placing) int {
	if len(p.slot) == 0 || r.byWords(k) >= 4 {
		return -1
	}
	for i, q := range qs {
		if s := p.slot[i]; s >= 0 && r.items[q].sizes[0].class == tNumber && r.nearness(q, slots[s].cues) < 2.5 {
			return q
		}
	}
	return -1
}

// asksOutright says whether a word of asking stands in the message, which may tell something as well.
func (r *reader) asksOutright() bool {
	return r.whWord() || r.has("again", "show") || r.hasWord("give", "tell", "send")
}

// likelyTells says whether a message is hardly a question: its kind is one of statements alone, or none.
func (r *reader) likelyTells() bool {
	g := r.guess()
	if r.asksOutright() {
		return false
	}
	return g.p >= surest && (g.kind == none || statementKinds[g.kind] && askPatterns[g.kind] == nil)
}

// statementKinds are the kinds that change the job. A few are kinds of question too.
var statementKinds = map[term.Kind]bool{
	term.SetJob: true, term.SetRoom: true, term.SetWalls: true, term.SetCloset: true, term.SetDoorway: true, term.SetFixture: true, term.SetPlank: true, term.SetUnderlay: true,
	term.SetGap: true, term.SetDirection: true, term.SetStart: true, term.SetFirstRow: true, term.SetLeastEnd: true, term.SetLeastStagger: true, term.SetLeastRow: true, term.SetKerf: true,
	term.SetTrim: true, term.SetHeight: true, term.SetSubfloor: true, term.SetReading: true, term.SetPrice: true, term.SetSpare: true, term.SetLaid: true, term.SetOpened: true,
	term.SetDamaged: true, term.SetNote: true, term.SetHidden: true,
}
