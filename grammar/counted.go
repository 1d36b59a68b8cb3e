package grammar

import (
	"strings"

	"lastrow/calc/term"
	"lastrow/grammar/words"
)

// countsPlanks says whether a bare whole number counts planks, or stands too far from any word for its size, so that it
// is no plank's width or thickness.
func (m *message) countsPlanks(q int, s *slot, near float64) bool {
	t := m.items[q].sizes[0]
	if t.class != tNumber || !t.num.Whole() || s.name != term.PlankThickness && (s.name != term.PlankWidth || !s.must) {
		return false
	}
	for j := q + 1; j < len(m.items) && j <= q+2; j++ {
		if it := &m.items[j]; it.meaning == "plank" {
			return strings.HasSuffix(it.word, "s") || t.num.Num == t.num.Den
		}
	}
	return near < 2.5 && s.spoken
}

// countsOther says whether a number counts other goods than those of the slot: "laid 3 boxes" is of no rows.
func (m *message) countsOther(q int, s *slot) bool {
	if s.dim != dCount || s.count == "per-box" {
		return false
	}
	if q > 0 && (m.items[q-1].word == "box" || m.items[q-1].word == "row" || m.items[q-1].word == "pack") && !wordIn(s.count, m.items[q-1].meaning) {
		return true // the number of a box, and of nothing in it
	}
	if q+1 >= len(m.items) {
		return false
	}
	switch next := m.items[q+1].meaning; next {
	case "box", "row", "roll", "stick", "bag", "tube", "door", "nail", "screw", "plank":
		return !wordIn(s.count, next)
	}
	return false
}

// costs says whether a bare number is what something costs: "12.50 each", "12 a stick".
func (m *message) costs(q int) bool {
	t := m.items[q].sizes[0]
	return t.class == tNumber && (m.has("price", "cost") || m.cents(t) && m.at(q) && m.has("trim", "stick", "underlay", "roll") || q+1 < len(m.items) && (m.cents(t) && m.items[q+1].meaning == "each" || m.items[q+1].word == "a" || m.items[q+1].word == "per"))
}

// countsStrangers says whether a bare whole number counts things of no trade of the bot's: "two sheets of ply", "three
// flights of stairs".
func (m *message) countsStrangers(q int) bool {
	t := m.items[q].sizes[0]
	if t.class != tNumber || !t.num.Whole() || len(m.items[q].sizes) > 1 || t.num.Float() > 30 || q+1 >= len(m.items) {
		return false
	}
	it := &m.items[q+1]
	return it.meaning == words.Everyday && strings.HasSuffix(it.word, "s") || it.meaning == "wood" && strings.HasSuffix(it.word, "s")
}

// countsGoods says whether a bare whole number counts goods by the word after it: 10 boxes, 3 rolls.
func (m *message) countsGoods(q int) bool {
	t := m.items[q].sizes[0]
	if t.class != tNumber || !t.num.Whole() || q > 1 && m.items[q-1].word == "is" && m.items[q-2].says() {
		return false
	}
	if q > 0 && m.items[q-1].meaning == "box" && !plural[m.items[q-1].word] {
		return true
	}
	if q+1 >= len(m.items) {
		return false
	}
	if m.telling && (m.items[q+1].word == "planks" || m.items[q+1].word == "boards") {
		return true
	}
	if q+2 < len(m.items) && m.items[q+2].meaning == "plank" && (isOne(m.items[q+1].meaning, []string{"spare", "leftover", "remaining", "more", "damaged"}) || isOne(m.items[q+1].word, []string{"full", "whole", "new", "good", "loose"})) {
		return true
	}
	switch m.items[q+1].meaning {
	case "door":
		return t.num.Num < 15*t.num.Den
	case "box", "row", "roll", "stick", "nail", "screw", "bag", "tube", "pallet", "hours", "day", "lastrow", "piece", "job", "closet", "wall", "corner", "stairs":
		return true
	}
	if next := &m.items[q+1]; next.meaning == "room" && strings.HasSuffix(next.word, "s") {
		return true
	}
	return m.items[q+1].word == "of" && q+2 < len(m.items) && (m.items[q+2].word == "them" || m.items[q+2].word == "us")
}

func (m *message) moneyFor(q int, s *slot) (v value, fit float64, ok bool) {
	t := m.items[q].sizes[0]
	v.item = q
	if len(m.items[q].sizes) != 1 {
		return v, 0, false
	}
	fit = 2
	switch {
	case s.must && m.nearness(q, s.cues) < 2.5:
		return v, 0, false
	case s.name == term.Price && m.byArea(q):
		return v, 0, false
	case t.class == tMoney:
	case s.paid && t.class == tNumber && m.perBox(q) && t.num.Float() >= 15 && !m.covers(q) && !m.has("piece"):
	case m.countsGoods(q) && !m.perBox(q):
		return v, 0, false
	case s.name == term.Price && m.byArea(q), s.name == term.Price && t.class == tNumber && m.areaSaid() != "" && !m.coverageSaid() && m.nearness(q, "price cost") == 0 && !(m.cents(t) && m.coveredBy(q)):
		return v, 0, false
	case t.class == tNumber && (m.cents(t) || m.nearness(q, "price cost") > 2) && m.nearness(q, s.cues) > 1.5:
		fit = 0.5
		if m.cents(t) {
			fit = 2
		}
	default:
		return v, 0, false
	}
	n, err := scale(t.num, 100)
	v.term = term.Money{Minor: n, Currency: t.unit}
	return v, fit, err == nil
}

// coverageSaid says whether an area was said to be a box's.
func (m *message) coverageSaid() bool {
	for i := range m.items {
		if m.items[i].quantity() && m.items[i].sizes[0].class == tArea && m.perBox(i) {
			return true
		}
	}
	return false
}

// coveredBy says whether another number than q is what a box covers.
func (m *message) coveredBy(q int) bool {
	for i := range m.items {
		if i != q && m.items[i].quantity() && m.covers(i) {
			return true
		}
	}
	return false
}

// cents says whether a number has two decimals, as amounts do.
func (m *message) cents(t token) bool {
	return t.end-t.at > 3 && (m.src[t.end-3] == '.')
}

// counts says whether a number counts what the slot counts: the word stands by it.
func (m *message) counts(q int, s *slot) bool {
	if s.count == "per-box" {
		return m.perBox(q) && !m.covers(q)
	}
	if s.name == term.Boxes && m.perBox(q) {
		return false
	}
	return m.nearness(q, s.count) >= 2 || m.ofThem(q) && m.has(strings.Fields(s.count)...)
}

// ofThem reads "16 of them".
func (m *message) ofThem(q int) bool {
	return q+2 < len(m.items) && m.items[q+1].word == "of" && (m.items[q+2].word == "them" || m.items[q+2].word == "those" || m.items[q+2].word == "these")
}

// byArea says whether a price is for a square foot or metre, which is no box.
func (m *message) byArea(q int) bool {
	for j := q + 1; j < len(m.items) && j <= q+3; j++ {
		if m.items[j].meaning == "area" {
			return true
		}
	}
	return false
}
