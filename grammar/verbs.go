package grammar

import "lastrow/grammar/words"

// opens are verbs that spoil a plank and open a box.
var opens = []string{"cracked", "broke", "broken", "split", "busted", "cracking"}

// doing are words after which "cut off" is what is done and no thing: "what height do the casings get cut off at".
var doing = []string{"get", "gets", "got", "be", "is", "are", "being", "to", "come", "comes"}

// verbs gives words that are a thing of the trade elsewhere the meaning of what is done here: "cracked box 5", "get cut
// off", "drop the spare to 7 percent", "pin it up".
func (m *message) verbs() {
	for i := range m.items {
		it := &m.items[i]
		switch {
		case isOne(it.word, opens) && m.ofBox(i):
			it.meaning = "opened"
		case it.meaning == "offcut" && it.word == "cut" && i > 0 && isOne(m.items[i-1].word, doing):
			it.meaning = "cut"
		case it.word == "drop" && it.meaning == "offcut" && m.begins(i) && i+1 < len(m.items) && isOne(m.items[i+1].word, []string{"the", "my", "our", "it", "that", "me"}):
			it.meaning = "make"
		case it.meaning == "laid" && it.word == "down" && i+2 < len(m.items) && m.items[i+1].word == "to" && m.items[i+2].quantity():
			it.meaning = words.Filler // "ripped down to 105 mm"
		case it.meaning == "laid" && (it.word == "is" || it.word == "are") && m.placeAhead(i):
			it.meaning = words.Filler
		case it.meaning == "nail" && it.word != "" && i > 0 && isOne(m.items[i-1].word, []string{"can", "to", "ill", "could"}):
			it.meaning = words.Filler
		}
	}
}

// ofBox says whether a verb's object is a box: nothing but articles and a number stand between.
func (m *message) ofBox(i int) bool {
	for j := i + 1; j < len(m.items) && j <= i+5; j++ {
		switch it := &m.items[j]; {
		case it.meaning == "box":
			return j+1 >= len(m.items) || m.items[j+1].word != "worth"
		case !it.quantity() && !isOne(it.word, []string{"a", "an", "the", "another", "my", "our", "open", "into", "new", "fresh", "on", "up"}):
			return false
		}
	}
	return false
}

// begins says whether an item is the first of its sentence that says anything.
func (m *message) begins(i int) bool {
	for j := i - 1; j >= 0; j-- {
		it := &m.items[j]
		switch {
		case it.class == tSep:
			return true
		case it.quantity() || it.says() && it.meaning != "ok" && it.meaning != "hello" && it.meaning != "can":
			return false
		}
	}
	return true
}

// placeAhead says whether a wall, a corner or a box follows "is in", so that it tells where and not that a thing is done.
func (m *message) placeAhead(i int) bool {
	for j := i + 2; j < len(m.items) && j <= i+4; j++ {
		if it := &m.items[j]; eightSides(it.meaning) != "" || it.meaning == "wall" || it.meaning == "corner" || it.meaning == "box" {
			return true
		}
	}
	return false
}
