package grammar

import "lastrow/calc/length"

// hours are words of things that have their time of day: "supply house closes at 4".
var hours = []string{
	"closes", "close", "closed", "closing", "opens", "shut", "shuts", "shutting", "leaves", "leaving", "arrives", "arriving", "coming", "comes", "here", "there", "home", "lunch", "meet", "meeting",
	"picking", "knock", "knocking", "quit", "quitting", "delivery", "appointment", "gone", "outta", "onsite", "site", "back", "tomorrow", "today", "tonight", "truck", "driver", "inspector",
}

// housed are words of what has its year: "a 1955 house".
var housed = []string{"house", "home", "built", "building", "place", "apartment", "condo", "cottage", "bungalow", "era", "property", "since"}

// asides makes marks of the numbers that measure nothing of the floor: the hour that a shop closes, the year of a house.
func (m *message) asides() {
	for i := range m.items {
		it := &m.items[i]
		if len(it.sizes) != 1 || it.sizes[0].class != tNumber || !it.sizes[0].num.Whole() || it.sizes[0].neg || m.decimal(it.sizes[0]) {
			continue
		}
		n := it.sizes[0].num.Num / it.sizes[0].num.Den
		switch {
		case n >= 1 && n <= 12 && m.hourAt(i):
			*it = item{class: tClock, mark: "hour", at: it.at, end: it.end}
		case n >= 1850 && n <= 2040 && m.yearAt(i):
			m.year = n
			*it = item{class: tTime, mark: "year", at: it.at, end: it.end}
		}
	}
}

// hourAt says whether "at" or "by" stands before a number, and a thing with its hours not far before that.
func (m *message) hourAt(i int) bool {
	if i == 0 || !isOne(m.items[i-1].word, []string{"at", "by", "til", "till", "until", "before", "around"}) || i+1 < len(m.items) && m.items[i+1].says() {
		return false
	}
	for j := i - 2; j >= 0 && j >= i-4; j-- {
		switch it := &m.items[j]; {
		case isOne(it.word, hours):
			return true
		case it.quantity() || it.mark != "" || it.says():
			return false
		}
	}
	return false
}

func (m *message) yearAt(i int) bool {
	for j := max(0, i-3); j < len(m.items) && j <= i+2; j++ {
		if isOne(m.items[j].word, housed) {
			return true
		}
	}
	return false
}

// each are words after one size that make it both sides of a room: "fourteen foot each way", "12 ft square".
func (m *message) eachWay() {
	if !m.hasMeaning("room", "hall", "closet", "wet") || m.hasMeaning("diagonal", "outof", "345", "post", "hearth", "pipe") {
		return
	}
	for i := 0; i+1 < len(m.items); i++ {
		it := &m.items[i]
		if len(it.sizes) != 1 || it.sizes[0].class != tLength || it.sizes[0].meas.Len < 3*length.Foot {
			continue
		}
		next := &m.items[i+1]
		way := i+2 < len(m.items) && isOne(next.word, []string{"each", "both", "either", "every"}) && isOne(m.items[i+2].word, []string{"way", "ways", "side", "direction"})
		if !way && next.word != "square" {
			continue
		}
		it.sizes = append(it.sizes[:1:1], it.sizes[0])
		for j := range m.items {
			if m.items[j].meaning == "square" {
				m.items[j].meaning = "-"
			}
		}
	}
}
