package grammar

import "lastrow/grammar/words"

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
		case it.near || it.meaning == words.Everyday:
			return false
		case it.says():
			said++
		}
		if personal[it.word] {
			return false
		}
	}
	return said > 0
}

// personal are words that speak to people, or of them.
var personal = map[string]bool{
	"you": true, "u": true, "ur": true, "your": true, "he": true, "she": true, "they": true, "them": true, "him": true, "her": true, "his": true, "me": true,
	"lol": true, "haha": true, "guys": true, "boss": true, "mate": true, "buddy": true, "said": true, "says": true, "was": true, "were": true, "who": true, "whos": true, "youre": true, "theyre": true,
}
