package grammar

// perBox says whether a number is so many, or so much, for each box: "8 per box", "eight to the box", "31.90 a box",
// "packs of 9".
func (m *message) perBox(q int) bool {
	rate := false
	for j := q + 1; j < len(m.items) && j <= q+5; j++ {
		it := &m.items[j]
		switch {
		case it.quantity() && len(it.sizes) > 1 && m.items[j-1].meaning == "plank":
			continue
		case it.quantity() || it.class == tSep:
			return m.boxOf(q)
		case it.meaning == "box":
			return rate && !plural[it.word]
		case it.word == "per" || it.word == "to" || it.word == "in" || it.word == "a" || it.word == "each" || it.word == "every" || it.mark == "/" || it.word == "the" && rate:
			rate = true
		case it.meaning != "plank" && it.word != "go" && it.word != "come" && it.meaning != "piece" && it.meaning != "area" && it.meaning != "cover":
			return false
		}
	}
	return m.boxOf(q)
}

var plural = map[string]bool{"boxes": true, "packs": true, "cartons": true, "cases": true, "packets": true}

// holds are the words between a box and what is in it.
var holds = map[string]bool{"has": true, "have": true, "of": true, "is": true, "are": true, "contains": true, "holds": true, "got": true, "with": true, "gives": true, "at": false, "a": true, "come": true, "in": true, "s": true}

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
