package grammar

import "lastrow/grammar/words"

// perBox says whether a number is so many, or so much, for each box: "8 per box", "eight to the box", "31.90 a box",
// "packs of 9".
func (m *message) perBox(q int) bool {
	if m.packOf(q) {
		return true
	}
	rate := false
	for j := q + 1; j < len(m.items) && j <= q+5; j++ {
		it := &m.items[j]
		switch {
		case it.quantity() && len(it.sizes) > 1 && m.items[j-1].meaning == "plank":
			continue
		case it.quantity() || it.class == tSep:
			return m.boxOf(q) || m.eachOf(q)
		case it.meaning == "box":
			return (rate || m.items[j-1].meaning == "piece" || m.items[j-1].meaning == "plank" || j == q+1 && m.items[q].class == tArea) && !plural[it.word]
		case it.word == "per" || it.word == "to" || it.word == "in" || it.word == "a" || it.meaning == "each" || it.word == "every" || it.mark == "/" || it.word == "the" && rate:
			rate = true
		case it.word == "it" && rate && j == q+2 && m.items[q].sizes[0].class == tNumber:
			return m.has("box")
		case it.meaning != "plank" && it.word != "go" && it.word != "come" && it.meaning != "piece" && it.meaning != "area" && it.meaning != "cover":
			return it.meaning != "" && it.meaning != words.Everyday && m.boxOf(q)
		}
	}
	return m.boxOf(q) || m.eachOf(q)
}

// eachOf reads "23.6 per" and "20 each" with no word after, where boxes were spoken of.
func (m *message) eachOf(q int) bool {
	return q+1 < len(m.items) && (m.items[q+1].word == "per" || m.items[q+1].meaning == "each") && m.has("box") && !m.has("roll", "stick", "door") &&
		(q+2 == len(m.items) || m.items[q+2].class == tSep)
}

// packOf reads "what does a box weigh, 8 planks 193 x 1380": a count of planks beside their sizes, where a box was spoken of.
func (m *message) packOf(q int) bool {
	return q+1 < len(m.items) && m.items[q+1].meaning == "plank" && m.items[q].sizes[0].class == tNumber && m.items[q].sizes[0].num.Whole() &&
		m.has("box") && m.pairs() > 0 && !m.has("leftover", "remaining", "damaged", "laid", "used")
}

// covers says whether a bare number is what a box covers and not how many planks are in it: "a carton does 20", or a
// number too large for planks in a message that speaks of an area and of no plank's sizes.
func (m *message) covers(q int) bool {
	t := m.items[q].sizes[0]
	if !m.perBox(q) && !m.at(q) || t.class != tNumber {
		return false
	}
	if m.nearness(q, "do cover") > 4 {
		return true
	}
	if m.areaSaid() == "" {
		return false
	}
	return !t.num.Whole() || m.perBox(q) && t.num.Float() >= 15 && !m.has("piece") && m.pairs() == 0
}

// pairs counts the sizes joined by "x".
func (m *message) pairs() (n int) {
	for i := range m.items {
		if len(m.items[i].sizes) > 1 {
			n++
		}
	}
	return n
}

var plural = map[string]bool{"boxes": true, "packs": true, "cartons": true, "cases": true, "packets": true}

// holds are the words between a box and what is in it.
var holds = map[string]bool{"has": true, "have": true, "of": true, "is": true, "are": true, "contains": true, "holds": true, "got": true, "with": true, "gives": true, "at": false, "a": true, "come": true, "in": true, "s": true, "says": true, "say": true, "reads": true}

// boxOf reads "boxes of 8", "a box has 8", "box covers 21.5".
func (m *message) boxOf(q int) bool {
	for j := q - 1; j >= 0 && j >= q-4; j-- {
		it := &m.items[j]
		switch {
		case it.quantity() || it.class == tSep:
			return false
		case it.meaning == "box":
			return j+1 < q && !(j > 0 && m.items[j-1].quantity())
		case !holds[it.word] && it.meaning != "cover" && it.meaning != "do" && it.meaning != "per" && it.meaning != "each" && it.mark == "":
			return false
		}
	}
	return false
}

// ofOneBox says whether the message is of one box: "what does a pack weigh". An area in it is the box's.
func (m *message) ofOneBox() bool {
	for i := 1; i < len(m.items); i++ {
		it, before := &m.items[i], &m.items[i-1]
		if it.meaning == "box" && !plural[it.word] && (isOne(before.word, []string{"one", "a", "each", "single"}) || before.quantity() && before.sizes[0].text == "1") {
			return len(m.quantities()) <= 3 && m.has("weigh", "howheavy")
		}
	}
	return false
}
