package grammar

import (
	"lastrow/calc/term"
	"lastrow/grammar/words"
)

// wholly says whether a message in a group, not addressed to the bot, is plainly a question or a statement of its kind:
// every word is known, none is of another matter, and nobody is spoken to.
func (r *reader) wholly() bool {
	if !r.ctx.Shared || r.mention || len(r.unknown) > 0 {
		return false
	}
	said := 0
	for i := range r.items {
		it := &r.items[i]
		switch {
		case it.class == tClock || it.class == tTime || it.class == tOther && it.mark != "x" && it.mark != "&" && it.mark != "/":
			return false
		case it.near || it.meaning == words.Everyday && !r.asksAnyone(i):
			return false
		case it.says():
			said++
		}
		if personal[it.word] && !r.weAre(i) && !r.asksAnyone(i) || it.meaning == "last" && !r.lastOf(i) {
			return false
		}
	}
	return said > 0
}

// lastOf says whether the "last" at item i is of a joint or a piece, and no time.
func (m *message) lastOf(i int) bool {
	return i+1 < len(m.items) && isOne(m.items[i+1].meaning, []string{"joint", "piece", "row", "offcut", "cut"})
}

// weAre says whether "were" at item i is "we're": nobody stands before it.
func (m *message) weAre(i int) bool {
	return m.items[i].word == "were" && (i == 0 || m.items[i-1].mark != "" || isOne(m.items[i-1].word, []string{"and", "so", "ok", "now"}))
}

// asksAnyone says whether item i is the "anyone" of "anyone know how many packs for 3.6m x 3m", which asks with a size.
func (r *reader) asksAnyone(i int) bool {
	return isOne(r.items[i].word, []string{"anyone", "anybody", "someone"}) && i+1 < len(r.items) && isOne(r.items[i+1].word, []string{"know", "knows", "got", "have", "work"}) && (len(r.quantities()) > 0 || r.guess().p >= certain && r.guess().kind != none && r.items[i+1].word == "know")
}

// strangers counts the words that are of other matters or known to no vocabulary.
func (m *message) strangers() (n int) {
	for i := range m.items {
		if it := &m.items[i]; it.word != "" && (it.meaning == "" || it.meaning == words.Everyday) {
			n++
		}
	}
	return n
}

// personal are words that speak to people, or of them.
var personal = map[string]bool{
	"you": true, "u": true, "ur": true, "your": true, "he": true, "she": true, "they": true, "them": true, "him": true, "her": true, "his": true, "me": true,
	"tomorrow": true, "tonight": true, "yesterday": true, "later": true, "morning": true, "afternoon": true, "evening": true, "any": true, "everyone": true, "someone": true, "anyone": true,
	"lol": true, "haha": true, "guys": true, "boss": true, "mate": true, "buddy": true, "said": true, "says": true, "was": true, "were": true, "who": true, "whos": true, "youre": true, "theyre": true,
}

// sized are the kinds that people ask one another about anything; in a group they are the bot's only with a size.
var onlySized = map[term.Kind]bool{
	term.AskFlatness: true, term.AskSquare: true, term.AskDoor: true, term.AskWeight: true, term.AskHours: true, term.AskCost: true, term.AskCaulk: true, term.AskScrews: true, term.AskNails: true,
	term.AskMiter: true, term.AskTaper: true, term.AskHeadroom: true, term.AskLeveler: true, term.AskTrim: true, term.AskStagger: true, term.AskMoisture: true, term.AskLongRun: true,
	term.AskLeftover: true, term.AskRow: true, term.AskPiece: true, term.AskTrimCover: true, term.AskMeasure: true,
}

// tellable are the statements that a group makes in passing to nobody but the bot.
var tellable = map[term.Kind]bool{
	term.SetRoom: true, term.SetWalls: true, term.SetCloset: true, term.SetOpening: true, term.SetDoorway: true, term.SetFixture: true, term.SetPlank: true, term.SetUnderlay: true, term.SetGap: true, term.SetDirection: true,
	term.SetStart: true, term.SetFirstRow: true, term.SetLeastEnd: true, term.SetLeastStagger: true, term.SetLeastRow: true, term.SetSpare: true, term.SetLaid: true, term.SetOpened: true, term.SetDamaged: true,
}

// plainly says whether what was read of a group's message is beyond doubt meant for the bot.
func (r *reader) plainly(out Reading) bool {
	for _, s := range out.Statements {
		if !tellable[s.Kind()] {
			return false
		}
	}
	q := out.Question
	switch {
	case q == nil:
		return len(out.Statements) > 0
	case commands[q.Kind]:
		return false
	case q.Kind == term.AskTrim && r.has("howmany") && r.has("stick") && r.has("room"):
		return true
	case onlySized[q.Kind]:
		return len(q.Given) > 0 && (q.Kind != term.AskRow || r.asked())
	case q.Kind == term.AskPlan:
		return r.has("show") || r.hasWord("layout", "diagram", "drawing")
	case q.Kind == term.AskStart:
		return r.has("wall", "row", "firstrow", "room", "floor") || r.hasWord("side")
	case q.Kind == term.AskStatus:
		return r.has("row", "box", "plank")
	case q.Kind == term.AskBoxes:
		return r.asked()
	case q.Kind == term.AskGap:
		return len(q.Given) > 0 || r.has("leave", "expansion", "around")
	}
	return true
}

// asked says whether the message has a question mark or a word that questions begin with.
func (r *reader) asked() bool {
	return r.marked() || r.whWord() || r.has("howmany", "howmuch", "show") || r.hasAskPair()
}
