package grammar

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Turns of speech around a number that say the same as shorter ones: "60 linear feet", "5/8 of an inch", "41 dollars
// and 20 cents".
var turns = []struct {
	with []string // the turn holds one of these, which is quicker to see
	said *regexp.Regexp
	same string
}{
	{[]string{"lin", "running"}, regexp.MustCompile(`(?i)(\d)\s*(?:linear|lineal|running|lin\.?)\s+(f|m)`), "$1 $2"},
	{[]string{" of a"}, regexp.MustCompile(`(?i)(\d) of an? (inch|foot|metre|meter)\b`), "$1 $2"},
	{[]string{"foot one", "feet one", "ft one"}, regexp.MustCompile(`(?i)(\d ?(?:foot|feet|ft)) one( (?:by|x|and|long|wide|across|deep)\b|[,.?]|$)`), "$1 1$2"},
	{[]string{"even"}, regexp.MustCompile(`(?i)(\d(?: ?(?:foot|feet|ft|in|inch|inches|m|mm|cm|metres|meters))?) even\b`), "$1"},
	{[]string{"about", "roughly", "around", "approx"}, regexp.MustCompile(`(?i)(\d[^\s]*(?: (?:foot|feet|ft|in|m|metres|meters))? (?:by|x)) (?:about|roughly|around|approx(?:imately|\.)?) (\d[\d.]* ?(?:ft|foot|feet|m|metres|meters))\b`), "$1 $2"},
	{[]string{"half"}, regexp.MustCompile(`(?i)\b(\d+) and a half of\b`), "$1 1/2 of"},
	{[]string{"eighth"}, regexp.MustCompile(`(?i)\b(?:an )?eighth(?: of)? (pad|cork|foam|felt|underlay|underlayment|underpad|rubber|fibre)\b`), "1/8 in $1"},
	{[]string{"sixteenth"}, regexp.MustCompile(`(?i)\b(?:a )?sixteenth(?: of)? (pad|cork|foam|felt|underlay|underlayment|underpad|rubber|fibre)\b`), "1/16 in $1"},
	{[]string{"quarter"}, regexp.MustCompile(`(?i)\b(?:a )?quarter(?: of)? (pad|cork|foam|felt|underlay|underlayment|underpad|rubber|fibre)\b`), "1/4 in $1"},
	{[]string{" and "}, regexp.MustCompile(`\b(\d+) and (\d+/\d+)\b`), "$1 $2"},
	{[]string{"row"}, regexp.MustCompile(`(?i)\b([2-9]|\d\d+)(?:st|nd|rd|th) row\b`), "row $1"},
	{[]string{"piece", "board", "plank"}, regexp.MustCompile(`(?i)\b([2-9]|\d\d+)(?:st|nd|rd|th) (?:piece|board|plank)\b(.*\brow\b)`), "piece $1$2"},
	{[]string{"piece", "board", "plank"}, regexp.MustCompile(`(?i)(\brow\b.*)\b([2-9]|\d\d+)(?:st|nd|rd|th) (?:piece|board|plank)\b`), "${1}piece $2"},
	{[]string{"row"}, regexp.MustCompile(`(?i)\bpiece (\d+) (?:in|of|on|for) row\b`), "piece $1 of row"},
	{[]string{"1st", "first"}, regexp.MustCompile(`(?i)\b(?:first|1st) (?:piece|board|plank) (?:in|of|on|for) row\b`), "piece 1 of row"},
	{[]string{"1st", "first"}, regexp.MustCompile(`(?i)(\brow \d+,?) (?:first|1st) (?:piece|board|plank)\b`), "$1 piece 1"},
	{[]string{"2nd", "second"}, regexp.MustCompile(`(?i)\b(?:second|2nd) (?:piece|board|plank) (?:in|of|on|for) row\b`), "piece 2 of row"},
	{[]string{"3rd", "third"}, regexp.MustCompile(`(?i)\b(?:third|3rd) (?:piece|board|plank) (?:in|of|on|for) row\b`), "piece 3 of row"},
	{[]string{"dollar", "buck", "quid", "euro"}, regexp.MustCompile(`(?i)\b(\d+) (dollars?|bucks|quid|euros?)(?: and)? (\d\d)(?: cents| pence|p)?\b`), "$1.$3 $2"},
	{[]string{"pound"}, regexp.MustCompile(`(?i)\b(\d+) pounds?(?: and)? (\d\d)(?: pence|p)?\b( a| per| each)`), "$1.$2 quid$3"},
}

// numbered finds the one number word that spoken leaves, where it numbers a row.
var numbered = regexp.MustCompile(`(?i)\b(row|piece) one\b`)

// retold puts the turns in their short form.
func retold(text string) string {
	low := strings.ToLower(text)
	if strings.Contains(low, " one") {
		text = numbered.ReplaceAllString(text, "$1 1")
	}
	for _, t := range turns {
		if slices.ContainsFunc(t.with, func(w string) bool { return strings.Contains(low, w) }) {
			text = t.said.ReplaceAllString(text, t.same)
		}
	}
	return text
}

// boxWords are the spellings of a box that a price stands with.
var boxWords = map[string]bool{
	"box": true, "boxes": true, "pack": true, "packs": true, "carton": true, "cartons": true, "case": true, "cases": true, "packet": true, "packets": true,
	"roll": true, "rolls": true, "stick": true, "sticks": true, "length": true, "lengths": true, "each": true, "apiece": true,
}

// whole reads a cardinal, with "a hundred" for one hundred, and gives its digits: with decimals after "point", and as one
// number where two are said of an area or an amount: "four fifty square feet", "twenty nine fifty a box".
func (p pieces) whole(i int) (text string, v int64, n int) {
	if lead := p.at(i, 1); p[i].low == "a" && (lead == "hundred" || lead == "thousand") {
		v, n = p.cardinal(i + 2)
		n += 2
	} else {
		v, n = p.cardinal(i)
	}
	if n == 0 {
		return "", 0, 0
	}
	last := i + n - 1
	if d, m := p.point(last); m > 0 {
		return fmt.Sprintf("%d.%s", v, d), v, n + m
	}
	more, m := int64(0), 0
	if last+2 < len(p) && joins(p[last+1].text) {
		more, m = p.cardinal(last + 2)
	}
	switch {
	case m == 0 || more < 10 || more > 99 || v < 1 || v > 199:
	case v < 20 && areaWord(p.at(last+1+m, 1)), p.inMillimetres() && p.beside(i, last+1+m):
		return strconv.FormatInt(v*100+more, 10), v*100 + more, n + 1 + m
	case p.priced(i, last+1+m):
		return fmt.Sprintf("%d.%02d", v, more), v, n + 1 + m
	}
	return strconv.FormatInt(v, 10), v, n
}

func areaWord(w string) bool { return w == "square" || w == "sq" || w == "sqft" || w == "sf" }

// point reads the decimals after "point", one by one or as one number.
func (p pieces) point(last int) (digits string, n int) {
	if p.at(last, 1) != "point" {
		return "", 0
	}
	for k := 2; ; k++ {
		o, ok := ones[p.at(last, k)]
		if w := p.at(last, k); w == "oh" || w == "o" {
			o, ok = 0, true
		}
		if !ok || o > 9 {
			break
		}
		digits += strconv.FormatInt(o, 10)
		n = 2 * k
	}
	if n > 0 {
		return digits, n
	}
	if v, m := p.cardinal(last + 4); m > 0 && v < 100 {
		return strconv.FormatInt(v, 10), 3 + m
	}
	return "", 0
}

// priced says whether two numbers from piece i to the last are an amount: "a box" or "each" follows, or "at" stands
// before and the message is of boxes.
func (p pieces) priced(i, last int) bool {
	next := p.at(last, 1)
	if next == "each" || next == "apiece" || (next == "a" || next == "per" || next == "the") && boxWords[p.at(last, 2)] {
		return true
	}
	if i < 2 || !joins(p[i-1].text) || !payWords[p[i-2].low] || lengthWords[next] || areaWord(next) || next == "by" {
		return false
	}
	for _, w := range p {
		if boxWords[w.low] {
			return true
		}
	}
	return false
}

var payWords = map[string]bool{"at": true, "charging": true, "charge": true, "charges": true, "paying": true, "pay": true, "paid": true, "price": true, "priced": true, "cost": true, "costs": true}

// inMillimetres says whether a message measures in millimetres and in nothing larger: its numbers may be said in two
// halves, "twelve eighty five".
func (p pieces) inMillimetres() bool {
	mm := false
	for _, w := range p {
		switch w.low {
		case "mm", "mil", "mils", "millimeters", "millimetres", "millimeter", "millimetre":
			mm = true
		case "ft", "foot", "feet", "inch", "inches", "m", "metre", "metres", "meter", "meters", "dollars", "box":
			return false
		}
	}
	return mm
}

// beside says whether "by" or a millimetre stands at either end of a number.
func (p pieces) beside(i, last int) bool {
	next := p.at(last, 1)
	return next == "by" || next == "x" || strings.HasPrefix(next, "mil") || next == "mm" || i >= 2 && joins(p[i-1].text) && (p[i-2].low == "by" || p[i-2].low == "x")
}
