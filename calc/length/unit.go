package length

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Unit is the unit that a measure was written in.
type Unit int

// The units of length. Bare is a number without one.
const (
	Bare Unit = iota
	Inches
	Feet
	Yards
	Millimetres
	Centimetres
	Metres
)

var unitSize = [...]Length{0, Inch, Foot, Yard, Millimetre, Centimetre, Metre}

// Size is the length of one of the unit; 0 for Bare.
func (u Unit) Size() Length { return unitSize[u] }

// System is the system that the unit belongs to.
func (u Unit) System() System {
	if u >= Millimetres {
		return Metric
	}
	return Imperial
}

var unitWords = map[string]Unit{
	"in": Inches, "ins": Inches, "inch": Inches, "inches": Inches, "inchs": Inches,
	"ft": Feet, "foot": Feet, "feet": Feet, "fts": Feet, "foots": Feet, "footer": Feet, "footers": Feet, "lf": Feet, "lft": Feet,
	"yd": Yards, "yds": Yards, "yard": Yards, "yards": Yards,
	"mm": Millimetres, "mms": Millimetres, "millimetre": Millimetres, "millimetres": Millimetres,
	"millimeter": Millimetres, "millimeters": Millimetres, "mil": Millimetres, "mils": Millimetres,
	"cm": Centimetres, "cms": Centimetres, "centimetre": Centimetres, "centimetres": Centimetres,
	"centimeter": Centimetres, "centimeters": Centimetres,
	"m": Metres, "mtr": Metres, "mtrs": Metres, "metre": Metres, "metres": Metres, "meter": Metres, "meters": Metres, "lm": Metres,
	"㎜": Millimetres, "㎝": Centimetres,
}

var (
	inchMarks = []string{`"`, "”", "“", "″", "ʺ", "〃", "＂", "''", "’’", "′′", "´´", "‘‘"}
	footMarks = []string{"'", "’", "‘", "′", "´", "`", "ʹ", "ʼ", "＇"}
)

// articles follow the preposition "in", not the unit: "8 in a box".
var articles = []string{"a", "an", "the", "my", "our", "your", "his", "her", "their", "this", "that", "each", "every", "one", "all", "total", "it", "there", "here"}

// unit reads a unit at the start of s: a mark or a word. A unit of area (ft2, m²) is none.
func unit(s string) (Unit, int) {
	if n := anyOf(s, inchMarks...); n > 0 {
		return Inches, n
	}
	if n := anyOf(s, footMarks...); n > 0 {
		return Feet, n
	}
	word := letters(s)
	u, ok := unitWords[strings.ToLower(word)]
	n := len(word)
	if !ok || anyOf(s[n:], "²", "2", "^", "³", "3") > 0 && u != Metres {
		return Bare, 0
	}
	if u == Metres && (anyOf(s[n:], "²", "³", "^") > 0 || square(s[n:])) {
		return Bare, 0
	}
	if strings.HasPrefix(s[n:], ".") && len(word) <= 3 && !digitAt(s[n+1:]) {
		n++
	}
	return u, n
}

// square says whether "2" alone follows an m: m2 is an area, m45 the second half of 3m45.
func square(s string) bool {
	return anyOf(s, "2", "3") > 0 && !digitAt(s[1:])
}

func digitAt(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return digit(r) >= 0
}

func letters(s string) string {
	for i, r := range s {
		if !unicode.IsLetter(r) && r != '㎜' && r != '㎝' {
			return s[:i]
		}
	}
	return s
}

// unitAfter reads a unit at the start of s or after spaces; n counts the spaces too.
func unitAfter(s string) (Unit, int) {
	spaces := len(s) - len(strings.TrimLeft(s, " \t-"))
	if dashed := strings.TrimLeft(s, " \t"); strings.HasPrefix(dashed, "-") && spaces > 1 { // only "12-inch", never "12 - in"
		return Bare, 0
	}
	rest := s[spaces:]
	u, n := unit(rest)
	if n == 0 || spaces > 3 || spaces > 0 && preposition(rest, n) {
		return Bare, 0
	}
	if spaces > 0 && anyOf(rest, footMarks...) > 0 && opensQuote(rest) {
		return Bare, 0
	}
	return u, spaces + n
}

// preposition says whether the n bytes read as "in" are the preposition: an article follows.
func preposition(s string, n int) bool {
	if !strings.EqualFold(s[:n], "in") {
		return false
	}
	next := strings.TrimLeft(s[n:], " ")
	if len(next) == len(s[n:]) {
		return false
	}
	word := strings.ToLower(letters(next))
	for _, a := range articles {
		if word == a {
			return true
		}
	}
	return false
}

// opensQuote says whether a mark set off by a space opens a quotation: a letter follows it.
func opensQuote(s string) bool {
	_, n := utf8.DecodeRuneInString(s)
	r, _ := utf8.DecodeRuneInString(s[n:])
	return unicode.IsLetter(r)
}
