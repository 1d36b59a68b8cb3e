package grammar

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// spoken writes the number words of a message as digits, so that one reader of digits reads both: "eleven foot
// four" becomes "11 foot 4", "seven and five eighths" "7 5/8", "half an inch" "1/2 inch". Other text stays as it is.
func spoken(text string) string {
	if !strings.ContainsFunc(text, unicode.IsLetter) {
		return text
	}
	p := cutWords(text)
	var b strings.Builder
	b.Grow(len(text))
	for i := 0; i < len(p); {
		if s, n := p.number(i); n > 0 {
			b.WriteString(s)
			i += n
			continue
		}
		b.WriteString(p[i].text)
		i++
	}
	return retold(b.String())
}

// piece is a word, or what stands between two words.
type piece struct {
	text, low string
	word      bool
}

type pieces []piece

func cutWords(text string) pieces {
	p := make(pieces, 0, len(text)/3+1)
	start, word := 0, false
	cut := func(end int) {
		if end > start {
			p = append(p, newPiece(text[start:end], word))
		}
		start = end
	}
	for i, r := range text {
		if letter := unicode.IsLetter(r); letter != word {
			cut(i)
			word = letter
		}
	}
	cut(len(text))
	return p
}

func newPiece(s string, word bool) piece {
	if word {
		return piece{s, strings.ToLower(s), true}
	}
	return piece{s, s, false}
}

// at gives the word n words after piece i where only a space or a hyphen parts them, else "".
func (p pieces) at(i, n int) string {
	for ; n > 0; n-- {
		if i+2 >= len(p) || !joins(p[i+1].text) {
			return ""
		}
		i += 2
	}
	if i >= len(p) || !p[i].word {
		return ""
	}
	return p[i].low
}

func joins(s string) bool { return s == " " || s == "-" || s == "  " }

var ones = map[string]int64{
	"zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
	"eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17,
	"eighteen": 18, "nineteen": 19,
}

var tens = map[string]int64{
	"twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90,
}

var parts = map[string]int64{
	"half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4, "eighth": 8, "eighths": 8, "eigths": 8, "eights": 8,
	"sixteenth": 16, "sixteenths": 16, "seconds": 32,
}

var ordinals = map[string]int64{
	"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9,
	"tenth": 10, "eleventh": 11, "twelfth": 12, "thirteenth": 13, "fourteenth": 14, "fifteenth": 15, "sixteenth": 16,
	"seventeenth": 17, "eighteenth": 18, "nineteenth": 19, "twentieth": 20,
}

// lengthWords may follow a number word that is no number elsewhere: "one foot", "a quarter inch".
var lengthWords = map[string]bool{
	"inch": true, "inches": true, "in": true, "foot": true, "feet": true, "ft": true, "metre": true, "metres": true, "meter": true, "meters": true, "m": true,
	"mil": true, "mm": true, "cm": true, "yard": true, "yards": true, "millimetre": true, "millimeter": true, "millimetres": true, "millimeters": true,
	"centimetre": true, "centimeter": true,
}

// number reads a number in words that begins at piece i: its digits and the pieces that it takes.
func (p pieces) number(i int) (string, int) {
	if !p[i].word || i > 0 && glued(p[i-1].text) {
		return p.afterDigits(i)
	}
	if s, n := p.set(i); n > 0 {
		return s, n
	}
	if s, n := p.ordinalRow(i); n > 0 {
		return s, n
	}
	if num, den, n := p.part(i); n > 0 {
		return p.ofAn(fmt.Sprintf("%d/%d", num, den), i, n)
	}
	text, v, n := p.whole(i)
	if n == 0 {
		return p.anInch(i)
	}
	if p.plainOne(i, n, v) {
		return "", 0
	}
	if p.at(i+n-1, 1) == "and" {
		if num, den, m := p.tail(i + n + 3); m > 0 {
			return p.ofAn(fmt.Sprintf("%s %d/%d", text, num, den), i, n+3+m)
		}
	}
	return text, n
}

// glued says whether a word after s is no word of its own: an apostrophe or a mention stands before it.
func glued(s string) bool {
	return strings.HasSuffix(s, "@") || strings.HasSuffix(s, "'") && len(s) == 1 || strings.HasSuffix(s, "’") && len(s) == 3
}

// afterDigits reads "1 and a half" and "4 and five eighths": digits, then a part in words.
func (p pieces) afterDigits(i int) (string, int) {
	s := p[i].text
	trimmed := strings.TrimRight(s, " ")
	if trimmed == "" || trimmed == s || trimmed[len(trimmed)-1] < '0' || trimmed[len(trimmed)-1] > '9' || i+1 >= len(p) {
		return "", 0
	}
	if p[i+1].low == "and" && p.at(i+1, 1) != "" {
		if num, den, m := p.tail(i + 3); m > 0 {
			return p.ofAn(fmt.Sprintf("%s %d/%d", trimmed, num, den), i, 3+m)
		}
	}
	return "", 0
}

// tail reads the part after "and": "a half", "five eighths".
func (p pieces) tail(i int) (num, den int64, n int) {
	if i >= len(p) {
		return 0, 0, 0
	}
	return p.part(i)
}

// set reads "a dozen", "half a dozen", "a couple of".
func (p pieces) set(i int) (string, int) {
	w := p[i].low
	switch {
	case w == "half" && p.at(i, 1) == "a" && p.at(i, 2) == "dozen":
		return "6", 5
	case w == "a" && p.at(i, 1) == "dozen":
		return "12", 3
	case w == "two" && p.at(i, 1) == "by" && p.at(i, 2) == "four" && !lengthWords[p.at(i, 3)] && i > 1 && lengthWords[p[i-2].low]:
		return "timber", 5
	case w == "dozen":
		return "12", 1
	case w == "couple" && p.at(i, 1) == "of":
		return "2", 3
	case (w == "a" || w == "the") && p.at(i, 1) == "couple" && p.at(i, 2) == "of":
		return "2", 5
	case w == "a" && p.at(i, 1) == "couple":
		return "2", 3
	}
	return "", 0
}

var ordinalBox = map[string]bool{"box": true, "pack": true, "carton": true, "packet": true}

// pieceOfRow says whether a word is of a piece, in a message about a row.
func (p pieces) pieceOfRow(what string) bool {
	if what != "piece" && what != "board" && what != "plank" {
		return false
	}
	for _, w := range p {
		if w.low == "row" {
			return true
		}
	}
	return false
}

// ordinalRow reads "seventh row" as "row 7" and "fourth box" as "box 4"; "first row" and "last row" have a meaning of
// their own.
func (p pieces) ordinalRow(i int) (string, int) {
	v, ok := ordinals[p[i].low]
	what := p.at(i, 1)
	if !ok || v < 2 || what != "row" && !ordinalBox[what] && !p.pieceOfRow(what) {
		return "", 0
	}
	return what + " " + strconv.FormatInt(v, 10), 3
}

// part reads "five eighths", "a quarter", "half", "one sixteenth", "half an" and the like.
func (p pieces) part(i int) (num, den int64, n int) {
	w := p[i].low
	if d, ok := parts[w]; ok && p.bare(i, w) {
		return 1, d, 1
	}
	num, lead := ones[w], 1
	if w == "a" || w == "an" {
		num = 1
	} else if num == 0 {
		return 0, 0, 0
	}
	word := p.at(i, lead)
	d := parts[word]
	switch {
	case d == 0 && (word == "thirty" && startsWith(p.at(i, 2), "second")):
		return num, 32, 5
	case d == 0 && (word == "sixty" && startsWith(p.at(i, 2), "fourth")):
		return num, 64, 5
	case d == 0, num >= d, d == 32, word == "eights" && num == 0:
		return 0, 0, 0
	case num > 1 && !strings.HasSuffix(word, "s") && d != 2 && d != 4:
		return 0, 0, 0
	case p.at(i, 2) == "round", num == 1 && p.at(i, 2) == "of" && !lengthWords[skipAn(p, i, 3)] && !p.sized(i+4):
		return 0, 0, 0
	}
	return num, d, 3
}

func startsWith(s, prefix string) bool { return strings.HasPrefix(s, prefix) }

func skipAn(p pieces, i, n int) string {
	if w := p.at(i, n); w != "a" && w != "an" {
		return w
	}
	return p.at(i, n+1)
}

// bare says whether a part stands as an amount by itself: "half inch", "quarter inch", "an eighth", not "quarter round".
func (p pieces) bare(i int, w string) bool {
	switch w {
	case "half", "quarter", "eighth", "sixteenth", "third":
		next := skipAn(p, i, 1)
		if next == "of" {
			next = skipAn(p, i, 2)
			if w != "half" && p.sized(i+2) {
				return true
			}
		}
		return lengthWords[next]
	}
	return false
}

// sized says whether a number follows the word at piece i: in digits or in words.
func (p pieces) sized(i int) bool {
	if i+1 < len(p) && strings.HasPrefix(p[i+1].text, " ") && len(p[i+1].text) > 1 && p[i+1].text[1] >= '0' && p[i+1].text[1] <= '9' {
		return true
	}
	return p.at(i, 1) != "" && p.hasCardinal(i+2)
}

// ofAn adds a part's text, and skips "of an" and "an" before the unit that follows.
func (p pieces) ofAn(text string, i, n int) (string, int) {
	last := i + n - 1
	k := 1
	if p.at(last, k) == "of" {
		k++
	}
	if w := p.at(last, k); w == "a" || w == "an" {
		k++
	}
	if k > 1 && lengthWords[p.at(last, k)] {
		n += 2 * (k - 1)
	}
	return text, n
}

// cardinal reads "eleven", "forty two", "twelve hundred", "one hundred and five".
func (p pieces) cardinal(i int) (v int64, n int) {
	for i < len(p) && p[i].word {
		w := p[i].low
		o, isOne := ones[w]
		t, isTen := tens[w]
		switch {
		case isOne && v >= 1000 && v%1000 == 0 && o > 0 && o < 10 && p.at(i, 1) == "hundred":
			v, i, n = v+100*o, i+2, n+3
		case isTen && (n == 0 || v >= 100 && v%100 == 0):
			v, n = v+t, n+1
		case isOne && (n == 0 || v%100 >= 20 && v%10 == 0 && o < 10 && o > 0 || v >= 100 && v%100 == 0):
			v, n = v+o, n+1
		case w == "hundred" && v < 100:
			v, n = max(v, 1)*100, n+1
		case w == "thousand" && v < 1000:
			v, n = max(v, 1)*1000, n+1
		default:
			if n > 0 {
				n--
			}
			return v, n
		}
		if i+2 >= len(p) || !joins(p[i+1].text) {
			return v, n
		}
		step := 2
		if v >= 100 && v%100 == 0 && p.at(i, 1) == "and" && p.hasCardinal(i+4) {
			step = 4
		}
		i, n = i+step, n+step-1
	}
	return v, max(0, n-1)
}

func (p pieces) hasCardinal(i int) bool {
	if i >= len(p) || !p[i].word {
		return false
	}
	_, one := ones[p[i].low]
	_, ten := tens[p[i].low]
	return (one || ten) && parts[p.at(i, 1)] == 0
}

// plainOne says whether a number word is none: "one" as a pronoun, "four" for "for".
func (p pieces) plainOne(i, n int, v int64) bool {
	next := p.at(i+n-1, 1)
	switch p[i].low {
	case "one":
		return n == 1 && !(lengthWords[next] || next == "row" || next == "box" || next == "pack" || next == "plank" || next == "board" || next == "more" || next == "and" || next == "point")
	case "four":
		return n == 1 && (next == "a" || next == "the" || next == "my" || next == "an" || next == "this")
	case "two":
		return next == "by" && p.at(i, 2) == "four" && n == 1 && !lengthWords[p.at(i, 3)]
	}
	return false
}

// anInch reads "an inch", "an inch and a half", "a foot".
func (p pieces) anInch(i int) (string, int) {
	w := p[i].low
	unit := p.at(i, 1)
	if s, n := p.everyFoot(i, w, unit); n > 0 {
		return s, n
	}
	if w != "a" && w != "an" || !lengthWords[unit] || len(unit) < 4 {
		return "", 0
	}
	if i > 1 && p[i-2].word && asRate(p[i-2].low) {
		return "", 0
	}
	if p.at(i, 2) == "and" {
		if num, den, m := p.tail(i + 6); m > 0 {
			return fmt.Sprintf("1 %d/%d %s", num, den, unit), 6 + m
		}
	}
	if w == "a" && unit != "foot" && unit != "metre" && unit != "meter" {
		return "", 0
	}
	return "1 " + unit, 3
}

// everyFoot reads "every foot" as "every 1 foot", and "inch and a quarter" with nothing before it.
func (p pieces) everyFoot(i int, w, unit string) (string, int) {
	if (w == "every" || w == "each") && (unit == "foot" || unit == "metre" || unit == "meter" || unit == "inch") {
		return "every 1 " + unit, 3
	}
	if w != "inch" && w != "foot" || unit != "and" || i > 0 && p[i-1].text != ", " && strings.ContainsAny(p[i-1].text, "0123456789") || i > 1 && (isNumberWord(p[i-2].low) || asRate(p[i-2].low)) {
		return "", 0
	}
	if num, den, m := p.tail(i + 4); m > 0 {
		return fmt.Sprintf("1 %d/%d %s", num, den, w), 4 + m
	}
	return "", 0
}

func isNumberWord(w string) bool {
	_, one := ones[w]
	_, ten := tens[w]
	return one || ten || parts[w] > 0 || w == "a" || w == "an" || w == "hundred"
}

func asRate(w string) bool { return w == "square" || w == "per" || w == "sq" || w == "of" }
