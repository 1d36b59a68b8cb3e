package length

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Form is how a measure was written.
type Form int

// The forms.
const (
	Single Form = iota // one number, with its unit or bare: 7 5/8, 3.45 m
	Pair               // feet and inches, or metres and centimetres: 11ft 4in, 3m45
	Dashed             // feet-inches by a dash: 11-4; as likely a span, so the reader decides
)

// Measure is a length as it was written.
type Measure struct {
	Amount Number // as written, in Unit; of a Pair or a Dashed the first number
	Unit   Unit   // Bare where none was written
	Form   Form
	Len    Length // 0 for a bare Single
	// Head, where not 0, is where the measure ends without its bare second number: "11 ft" of "11 ft 4". HeadLen is the length up to there.
	Head    int
	HeadLen Length
}

// Scan reads the measure at the start of s and the bytes that it takes; n is 0 where none stands there.
// A number too large or malformed (1e30, 5/0) is an error.
func Scan(s string) (m Measure, n int, err error) {
	v, n, err := mixed(s)
	if err != nil || n == 0 {
		return m, n, err
	}
	m.Amount = v
	u, un := unitAfter(s[n:])
	if un == 0 {
		return dashed(m, s, n)
	}
	m.Unit = u
	if m.Len, err = v.Of(u.Size()); err != nil {
		return m, n + un, err
	}
	return pair(m, s, n+un)
}

// mixed reads a number with its fraction: 7, 7.625, 5/8, 7 5/8, 7-5/8, 7⅝, 7 and 5/8.
func mixed(s string) (v Number, n int, err error) {
	if f, n, err := fraction(s); n > 0 || err != nil {
		return f, n, err
	}
	v, n, err = decimal(s)
	if err != nil || n == 0 || !v.Whole() || v.Num > 1e9 {
		return v, n, err
	}
	f, fn, err := fractionAfter(s[n:])
	if err != nil || fn == 0 || f.Num >= f.Den {
		return v, n, err
	}
	return v.plus(f), n + fn, nil
}

// fractionAfter reads a fraction that follows a whole number, with what joins them.
func fractionAfter(s string) (f Number, n int, err error) {
	join := len(s) - len(strings.TrimLeft(s, " "))
	if join > 1 {
		return f, 0, nil
	}
	if join == 0 {
		join = dash(s)
	} else if j := anyOf(s, " and ", " & ", " + "); j > 0 && !strings.HasPrefix(s, " + ") {
		join = j
	}
	f, n, err = fraction(s[join:])
	if err != nil || n == 0 {
		return f, 0, err
	}
	if r, _ := utf8.DecodeRuneInString(s[join:]); join == 0 && digit(r) >= 0 {
		return f, 0, nil
	}
	return f, join + n, nil
}

func dash(s string) int { return anyOf(s, "-", "‐", "‑", "‒", "–", "−") }

// dashed reads "11-4" or "9-8 1/2" as feet and inches where the second number is under 12 and no other unit follows.
func dashed(m Measure, s string, n int) (Measure, int, error) {
	d := dash(s[n:])
	if d == 0 || !m.Amount.Whole() || !digitAt(s[n+d:]) {
		return m, n, nil
	}
	in, k, err := mixed(s[n+d:])
	if err != nil || k == 0 || in.Num >= 12*in.Den || m.Amount.Num > 9999 {
		return m, n, err
	}
	end := n + d + k
	u, un := unitAfter(s[end:])
	if un > 0 && u != Inches || dash(s[end:]) > 0 && digitAt(s[end+1:]) || areaFollows(s[end:]) {
		return m, n, nil
	}
	feet, _ := m.Amount.Of(Foot)
	inches, _ := in.Of(Inch)
	m.Form, m.Len = Dashed, feet+inches
	if u == Inches {
		m.Form, m.Unit = Pair, Feet
	}
	return m, end + un, nil
}

// pair reads the second number of feet and inches or of metres and centimetres, if one follows.
func pair(m Measure, s string, n int) (Measure, int, error) {
	if m.Unit != Feet && m.Unit != Metres || !m.Amount.Whole() {
		return m, n, nil
	}
	gap := joint(s[n:])
	v, k, err := mixed(s[n+gap:])
	if err != nil || k == 0 {
		return m, n, nil
	}
	end := n + gap + k
	u, un := unitAfter(s[end:])
	if areaFollows(s[end+un:]) || un == 0 && areaFollows(s[end:]) {
		return m, n, nil
	}
	if m.Unit == Feet {
		return feetInches(m, s, n, end, v, u, un)
	}
	return metresMore(m, s, n, end, v, u, un)
}

// joint gives the bytes that may stand between the two numbers of a pair: a space, a dash, "and", a comma.
func joint(s string) int {
	if n := anyOf(s, " and ", ", ", " & ", " - "); n > 0 {
		return n
	}
	if n := dash(s); n > 0 {
		return n
	}
	n := len(s) - len(strings.TrimLeft(s, " "))
	return min(n, 2)
}

func feetInches(m Measure, s string, n, end int, in Number, u Unit, un int) (Measure, int, error) {
	inches, err := in.Of(Inch)
	if err != nil || inches >= Foot || un > 0 && u != Inches {
		return m, n, nil
	}
	spoken := anyOf(s[n:], " and ", ", ", " & ", " - ") > 0
	if un == 0 && (spoken || wordGlued(s[end:])) {
		return m, n, nil
	}
	whole := m
	whole.Form, whole.Len = Pair, m.Len+inches
	if un == 0 {
		whole.Head, whole.HeadLen = n, m.Len
	}
	return whole, end + un, nil
}

func metresMore(m Measure, s string, n, end int, v Number, u Unit, un int) (Measure, int, error) {
	if un == 0 {
		return metresBare(m, s, n, end, v)
	}
	more, err := v.Of(u.Size())
	spoken := anyOf(s[n:], " and ", ", ", " & ", " - ") > 0 // "2 m and 8 mm deep" is two lengths, "2 m and 45 cm" one
	if err != nil || u != Centimetres && (u != Millimetres || spoken) || more >= Metre {
		return m, n, nil
	}
	m.Form, m.Len = Pair, m.Len+more
	return m, end + un, nil
}

// metresBare reads 3m45 and 3m450: what follows the m are its decimals.
func metresBare(m Measure, s string, n, end int, v Number) (Measure, int, error) {
	_, count, k := digits(s[n:])
	if k == 0 && strings.HasPrefix(s[n:], " ") {
		if _, count, k = digits(s[n+1:]); count != 2 {
			return m, n, nil
		}
		k++
	}
	if k == 0 || count > 3 || !v.Whole() || n+k != end || wordGlued(s[end:]) {
		return m, n, nil
	}
	scale := [...]Length{Metre, Metre / 10, Centimetre, Millimetre}[count]
	whole := m
	whole.Form, whole.Len = Pair, m.Len+Length(v.Num)*scale
	whole.Head, whole.HeadLen = n, m.Len
	return whole, end, nil
}

// wordGlued says whether a letter or a digit follows at once, so that the number is part of a word.
func wordGlued(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsLetter(r) || digit(r) >= 0 || strings.HasPrefix(s, "%")
}

// areaFollows says whether a unit of area follows.
func areaFollows(s string) bool {
	s = strings.ToLower(strings.TrimLeft(s, " "))
	w := letters(s)
	switch w {
	case "sqft", "sqm", "sf":
		return true
	case "sq", "square":
		u, _ := unit(strings.TrimLeft(s[len(w):], " ."))
		return u != Bare
	case "ft", "m", "in", "mm", "cm":
		return anyOf(s[len(w):], "²", "^2") > 0 || square(s[len(w):])
	}
	return false
}
