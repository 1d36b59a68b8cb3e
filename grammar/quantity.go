package grammar

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"lastrow/calc/length"
	"lastrow/grammar/words"
)

// quantity reads a number and its unit where one stands, and says whether it did.
func (s *scanner) quantity(r rune) bool {
	rest := s.src[s.at:]
	if r == '$' || r == '£' || r == '€' {
		return s.money(rest, r)
	}
	if r != '.' && !unicode.IsDigit(r) && !isGlyph(r) || s.inWord() {
		return false
	}
	if n := clock(rest); n > 0 {
		s.emit(tClock, rest[:n], n)
		return true
	}
	m, n, err := length.Scan(rest)
	if err != nil {
		s.bad = err.Error()
		return true
	}
	if n == 0 {
		return false
	}
	if m.Form == length.Single && m.Unit == length.Bare && s.other(m, n, rest) {
		return true
	}
	if u, ok := squares[unitWord(rest[:n])]; ok && m.Form == length.Single && strings.HasPrefix(rest[n:], " squared") {
		t := s.number(tArea, m, n+len(" squared"))
		t.unit = u
		return true
	}
	m, n = s.unglue(m, n, rest)
	class := tLength
	if suffix := ordinal(rest[n:]); suffix > 0 && m.Form == length.Single && m.Amount.Whole() {
		if n == 1 && rest[0] == '1' {
			s.emit(tWord, "first", n+suffix)
			return true
		}
		t := s.number(tNumber, m, n+suffix)
		t.nth = suffix == 2
		return true
	}
	if m.Unit == length.Bare && m.Form == length.Single {
		class = tNumber
	}
	s.number(class, m, n)
	return true
}

// unitWord gives the letters at the end of a size.
func unitWord(s string) string {
	i := len(s)
	for i > 0 && unicode.IsLetter(rune(s[i-1])) {
		i--
	}
	return strings.ToLower(s[i:])
}

// ordinal gives the bytes of "th" and the like.
func ordinal(s string) int {
	w := leading(s)
	if w == "s" {
		return 1
	}
	if w == "st" || w == "nd" || w == "rd" || w == "th" {
		return len(w)
	}
	return 0
}

func isGlyph(r rune) bool { return r >= '¼' && r <= '¾' || r >= '⅐' && r <= '⅞' }

// inWord says whether a letter stands right before, so that the digits belong to a name: B12.
func (s *scanner) inWord() bool {
	if len(s.toks) == 0 {
		return false
	}
	last := s.toks[len(s.toks)-1]
	return last.end == s.at && (last.class == tWord || last.class == tOther && last.text == "#")
}

// number emits a quantity; a minus set against it and away from what is before it makes it negative.
func (s *scanner) number(class lexerType, m length.Measure, n int) *token {
	neg := false
	if k := len(s.toks); k > 0 && s.toks[k-1].text == "-" && s.toks[k-1].end == s.at && s.toks[k-1].spaced && (k == 1 || s.toks[k-2].class == tWord || s.toks[k-2].class == tSep || s.toks[k-2].class == tBy) {
		s.toks, neg = s.toks[:k-1], true
	}
	t := s.emit(class, strings.ToLower(s.src[s.at:s.at+n]), n)
	t.meas, t.num, t.neg = m, m.Amount, neg
	return t
}

// unglue gives back the bare second number of "11 ft 4" where what follows shows that it counts something else.
func (s *scanner) unglue(m length.Measure, n int, rest string) (length.Measure, int) {
	next := strings.TrimLeft(rest[n:], " ")
	word := strings.ToLower(leading(next))
	if m.Head == 0 {
		if k := s.secondHead(m, n, rest, word); k > 0 {
			if head, took, err := length.Scan(rest[:k]); err == nil && took == k {
				return head, k
			}
		}
		return uncomma(m, n, rest, s.raw)
	}
	if ownSize[words.English.Word(word)] {
		m.Form, m.Len = length.Single, m.HeadLen
		return m, m.Head
	}
	other := countWords[word] && !spokenOf(next[len(word):]) || word == "to" && rated(next[2:])
	if m.Head > 0 && rest[m.Head] != ' ' && other {
		return m, n
	}
	if otherUnit(next) > 0 || other || s.areaAhead(next) {
		m.Form, m.Len, n = length.Single, m.HeadLen, m.Head
	}
	return m, n
}

// rated says whether "to" begins a rate: "8 to a box".
func rated(after string) bool {
	w := strings.ToLower(leading(strings.TrimLeft(after, " ")))
	return w == "a" || w == "the" || w == "each" || w == "box" || w == "every"
}

// spokenOf says whether what was just named is told of in what follows: "one foot eleven planks are 4 ft" counts no planks.
func spokenOf(rest string) bool {
	return strings.HasPrefix(rest, " are ") || strings.HasPrefix(rest, " is ")
}

// ownSize are the meanings of what has a small size of its own right before it: "75 ft 3/16 bead".
var ownSize = map[string]bool{"thick": true, "gap": true, "bead": true, "kerf": true, "spacing": true, "fillet": true, "underlay": true, "trim": true}

// secondHead gives the end of the first size where the second belongs to the word after: "9 m 8mm bead" is two sizes, and
// "10x12 3/8 thick" is three. It is 0 elsewhere.
func (s *scanner) secondHead(m length.Measure, n int, rest, word string) int {
	own := words.English.Word(word)
	if !ownSize[own] && own != "deep" {
		return 0
	}
	space := strings.IndexByte(rest[:n], ' ')
	switch {
	case space < 0:
		return 0
	case m.Form == length.Pair && m.Unit == length.Metres && ownSize[own]:
		if rest[space-1] >= '0' && rest[space-1] <= '9' {
			if k := strings.IndexByte(rest[space+1:n], ' '); k > 0 {
				return space + 1 + k
			}
			return 0
		}
		return space
	case m.Form == length.Single && m.Unit == length.Bare && !m.Amount.Whole() && m.Amount.Num > 4*m.Amount.Den && len(s.toks) > 0:
		if last := s.toks[len(s.toks)-1].text; last == "x" || last == "by" {
			return space
		}
	}
	return 0
}

// uncomma parts "4ft, 1/2 inch deep" again where the word after shows that the second size is another thing's. In
// canonical text a comma always parts.
func uncomma(m length.Measure, n int, rest string, canonical bool) (length.Measure, int) {
	comma := strings.Index(rest[:n], ", ")
	if m.Form != length.Pair || comma < 0 {
		return m, n
	}
	next := words.English.Word(strings.ToLower(leading(strings.TrimLeft(rest[n:], " "))))
	if canonical {
		next = "gap"
	}
	switch next {
	case "deep", "thick", "gap", "plank", "underlay", "trim", "dip", "spacing", "bead", "kerf", "apart":
		if head, k, err := length.Scan(rest[:comma]); err == nil && k == comma {
			return head, k
		}
	}
	return m, n
}

func (s *scanner) areaAhead(next string) bool { u, n := squareUnit(next); return n > 0 && u != "" }

// countWords show that the number before them counts, and is no second half of a length.
var countWords = map[string]bool{
	"per": true, "planks": true, "boards": true, "boxes": true, "packs": true, "rows": true, "pieces": true, "percent": true, "pcs": true, "screws": true, "doors": true, "rolls": true,
}

func leading(s string) string {
	for i, r := range s {
		if !unicode.IsLetter(r) {
			return s[:i]
		}
	}
	return s
}

// other reads a number with a unit that is none of length.
func (s *scanner) other(m length.Measure, n int, rest string) bool {
	after := rest[n:]
	gap := len(after) - len(strings.TrimLeft(after, " -"))
	if gap > 2 || strings.HasPrefix(after, " - ") {
		return false
	}
	next := after[gap:]
	if u, k := squareUnit(next); k > 0 {
		t := s.number(tArea, m, n+gap+k)
		t.unit = u
		return true
	}
	if u, k := cubicUnit(next); k > 0 {
		t := s.number(tVolume, m, n+gap+k)
		t.unit = u
		return true
	}
	if anyPrefix(next, "%", "％", "°", "º") > 0 {
		class := tPercent
		if next[0] != '%' && !strings.HasPrefix(next, "％") {
			class = tAngle
		}
		s.number(class, m, n+gap+anyPrefix(next, "%", "％", "°", "º"))
		return true
	}
	word := strings.ToLower(leading(next))
	u, ok := otherUnits[word]
	if ok && u.unit == "min" && goodsWord(next[len(word):]) {
		return false
	}
	if !ok || u.class == tClock && (!m.Amount.Whole() || m.Amount.Num > 12) {
		return false
	}
	t := s.number(u.class, m, n+gap+len(word))
	t.unit = u.unit
	return true
}

// goodsWord says whether a word of the trade follows, so that "min" is the least and no time: "300 min stagger".
func goodsWord(s string) bool {
	switch words.English.Word(strings.ToLower(leading(strings.TrimLeft(s, " ")))) {
	case "stagger", "joint", "gap", "row", "piece", "end", "spacing":
		return true
	}
	return false
}

func otherUnit(next string) int {
	if n := anyPrefix(next, "%", "°"); n > 0 {
		return n
	}
	if word := strings.ToLower(leading(next)); otherUnits[word].unit != "" && otherUnits[word].class != tClock {
		return len(word)
	}
	return 0
}

func anyPrefix(s string, marks ...string) int {
	for _, m := range marks {
		if strings.HasPrefix(s, m) {
			return len(m)
		}
	}
	return 0
}

type lexerType = lexer.TokenType

var otherUnits = map[string]struct {
	class lexerType
	unit  string
}{
	"percent": {tPercent, "%"}, "pct": {tPercent, "%"}, "procent": {tPercent, "%"},
	"degrees": {tAngle, "deg"}, "degree": {tAngle, "deg"}, "deg": {tAngle, "deg"}, "degs": {tAngle, "deg"},
	"dollars": {tMoney, "USD"}, "dollar": {tMoney, "USD"}, "bucks": {tMoney, "USD"}, "usd": {tMoney, "USD"}, "quid": {tMoney, "GBP"}, "gbp": {tMoney, "GBP"},
	"euros": {tMoney, "EUR"}, "euro": {tMoney, "EUR"}, "eur": {tMoney, "EUR"}, "cad": {tMoney, "CAD"}, "aud": {tMoney, "AUD"},
	"lb": {tMass, "lb"}, "lbs": {tMass, "lb"}, "kg": {tMass, "kg"}, "kilos": {tMass, "kg"}, "pounds": {tMass, "lb"}, "pound": {tMass, "lb"},
	"minutes": {tTime, "min"}, "minute": {tTime, "min"}, "min": {tTime, "min"}, "mins": {tTime, "min"}, "hours": {tTime, "h"}, "hour": {tTime, "h"}, "hrs": {tTime, "h"}, "hr": {tTime, "h"},
	"days": {tTime, "d"}, "day": {tTime, "d"}, "weeks": {tTime, "w"}, "week": {tTime, "w"}, "months": {tTime, "mo"}, "month": {tTime, "mo"},
	"years": {tTime, "y"}, "year": {tTime, "y"}, "yrs": {tTime, "y"}, "am": {tClock, "am"}, "pm": {tClock, "pm"}, "oclock": {tClock, "h"},
	"litres": {tVolume, "litres"}, "liters": {tVolume, "litres"}, "litre": {tVolume, "litres"}, "liter": {tVolume, "litres"},
	"gallons": {tVolume, "gallons"}, "gallon": {tVolume, "gallons"}, "gal": {tVolume, "gallons"},
	"miles": {tOther, "mi"}, "mile": {tOther, "mi"}, "km": {tOther, "km"},
}

// squareUnit reads a unit of area at the start of s.
func squareUnit(s string) (string, int) {
	low := strings.ToLower(s[:min(len(s), 24)])
	n := anyPrefix(low, "square", "sq.", "sq")
	if n > 0 {
		more := len(low[n:]) - len(strings.TrimLeft(low[n:], " ."))
		word := leading(low[n+more:])
		if u, ok := squares[word]; ok {
			n += more + len(word)
			if strings.HasPrefix(low[n:], ".") && len(word) < 3 && !strings.HasPrefix(strings.TrimLeft(low[n+1:], " "), "\n") && n+1 < len(low) && !sentenceAhead(s[n+1:]) {
				n++
			}
			return u, n
		}
	}
	word := leading(low)
	switch word {
	case "sqft", "sqfeet", "sf", "sft":
		return "sq ft", len(word)
	case "sqm", "sqmt", "sm", "msq":
		return "sq m", len(word)
	case "sqyd", "sqyds":
		return "sq yd", len(word)
	}
	if u, ok := squares[word]; ok && len(word) <= 2 {
		if k := anyPrefix(low[len(word):], "²", "^2", "2"); k > 0 && !digitAt(low[len(word)+k:]) {
			return u, len(word) + k
		}
	}
	return "", 0
}

// sentenceAhead says whether a capital begins what follows a full stop, so that the stop ends a sentence and no "sq. ft."
func sentenceAhead(s string) bool {
	r, _ := utf8.DecodeRuneInString(strings.TrimLeft(s, " "))
	return unicode.IsUpper(r)
}

var squares = map[string]string{
	"ft": "sq ft", "foot": "sq ft", "feet": "sq ft", "footage": "sq ft", "f": "sq ft", "m": "sq m", "metre": "sq m", "metres": "sq m", "meter": "sq m", "meters": "sq m",
	"mtr": "sq m", "mtrs": "sq m", "in": "sq in", "inch": "sq in", "inches": "sq in", "yd": "sq yd", "yds": "sq yd", "yard": "sq yd", "yards": "sq yd",
}

// cubicUnit reads a unit of volume at the start of s.
func cubicUnit(s string) (string, int) {
	low := strings.ToLower(s[:min(len(s), 24)])
	if n := anyPrefix(low, "cubic ", "cu. ", "cu "); n > 0 {
		word := leading(low[n:])
		if u, ok := squares[word]; ok {
			return "cu" + u[2:], n + len(word)
		}
	}
	word := leading(low)
	if u, ok := squares[word]; ok && len(word) <= 2 {
		if k := anyPrefix(low[len(word):], "³", "^3", "3"); k > 0 && !digitAt(low[len(word)+k:]) {
			return "cu" + u[2:], len(word) + k
		}
	}
	return "", 0
}

func digitAt(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsDigit(r)
}

// clock reads 11:04, which is a time and no length.
func clock(s string) int {
	i := 0
	for i < len(s) && s[i] >= '0' && s[i] <= '9' {
		i++
	}
	if i == 0 || i > 2 || i+2 >= len(s) || s[i] != ':' || !digitAt(s[i+1:]) || !digitAt(s[i+2:]) {
		return 0
	}
	return i + 3
}

var currencies = map[rune]string{'$': "USD", '£': "GBP", '€': "EUR"}

func (s *scanner) money(rest string, r rune) bool {
	size := utf8.RuneLen(r)
	lead := len(rest[size:]) - len(strings.TrimLeft(rest[size:], " "))
	m, n, err := length.Scan(rest[size+lead:])
	if err != nil || n == 0 || m.Form != length.Single {
		return false
	}
	if m.Unit != length.Bare {
		n = numberLen(rest[size+lead:])
	}
	t := s.emit(tMoney, rest[:size+lead+n], size+lead+n)
	t.num, t.unit = m.Amount, currencies[r]
	return true
}

// numberLen is the bytes of the digits and marks of a number.
func numberLen(s string) int {
	n := 0
	for n < len(s) && (s[n] >= '0' && s[n] <= '9' || s[n] == '.' && digitAt(s[n+1:])) {
		n++
	}
	return n
}
