package length

import (
	"errors"
	"math/bits"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Number is an exact positive number as it was written: a whole, a decimal or a fraction.
type Number struct{ Num, Den int64 }

var (
	errTooLong  = errors.New("number has too many digits")
	errTooLarge = errors.New("length is out of all bounds")
	errExponent = errors.New("number has an exponent, which no tape shows")
	errZeroDen  = errors.New("fraction has nothing under the line")
)

const maxDigits = 15

// Whole says whether the number has no fraction.
func (n Number) Whole() bool { return n.Den != 0 && n.Num%n.Den == 0 }

// Float gives the nearest float64.
func (n Number) Float() float64 { return float64(n.Num) / float64(n.Den) }

// Of gives n units, rounded half up to the nanometre.
func (n Number) Of(unit Length) (Length, error) {
	hi, lo := bits.Mul64(uint64(n.Num), uint64(unit))
	lo, carry := bits.Add64(lo, uint64(n.Den)/2, 0)
	hi += carry
	if hi >= uint64(n.Den) {
		return 0, errTooLarge
	}
	q, _ := bits.Div64(hi, lo, uint64(n.Den))
	if q > uint64(maxLength) {
		return 0, errTooLarge
	}
	return Length(q), nil
}

const maxLength = 1 << 60

func (n Number) plus(f Number) Number {
	return Number{n.Num*f.Den + f.Num*n.Den, n.Den * f.Den}
}

// digit gives the value of a decimal digit of any script, or -1. The ranges of unicode.Digit hold whole runs of ten.
func digit(r rune) int {
	if r < utf8.RuneSelf {
		if '0' <= r && r <= '9' {
			return int(r - '0')
		}
		return -1
	}
	if !unicode.IsDigit(r) {
		return -1
	}
	for _, x := range unicode.Digit.R16 {
		if rune(x.Lo) <= r && r <= rune(x.Hi) {
			return int(r-rune(x.Lo)) % 10
		}
	}
	for _, x := range unicode.Digit.R32 {
		if rune(x.Lo) <= r && r <= rune(x.Hi) {
			return int(r-rune(x.Lo)) % 10
		}
	}
	return -1
}

// digits reads a run of digits: its value, how many, and the bytes it takes.
func digits(s string) (v int64, count, n int) {
	for n < len(s) {
		r, size := utf8.DecodeRuneInString(s[n:])
		d := digit(r)
		if d < 0 {
			break
		}
		if count++; count <= maxDigits {
			v = v*10 + int64(d)
		}
		n += size
	}
	return v, count, n
}

var glyphs = map[rune]Number{
	'½': {1, 2}, '¼': {1, 4}, '¾': {3, 4}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
	'⅓': {1, 3}, '⅔': {2, 3}, '⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
	'⅐': {1, 7}, '⅑': {1, 9}, '⅒': {1, 10},
}

// fraction reads "5/8" or a fraction glyph at the start of s; n is 0 where none stands there.
func fraction(s string) (f Number, n int, err error) {
	r, size := utf8.DecodeRuneInString(s)
	if g, ok := glyphs[r]; ok {
		if next, _ := utf8.DecodeRuneInString(s[size:]); glyphs[next].Den != 0 || digit(next) >= 0 {
			return f, 0, errors.New("two fractions stand in a row")
		}
		return g, size, nil
	}
	top, tc, n := digits(s)
	slash := anyOf(s[n:], "/", "⁄", "∕", "／")
	if tc == 0 || slash == 0 {
		return f, 0, nil
	}
	bottom, bc, m := digits(s[n+slash:])
	if bc == 0 {
		return f, 0, nil
	}
	end := n + slash + m
	if anyOf(s[end:], "/", "⁄") > 0 { // a date
		return f, 0, nil
	}
	switch {
	case tc > 6 || bc > 6:
		return f, 0, errTooLong
	case bottom == 0:
		return f, 0, errZeroDen
	}
	return Number{top, bottom}, end, nil
}

// decimal reads "7", "7.625", ".5", "3,45" or "1,200" at the start of s. A comma before three digits parts thousands.
func decimal(s string) (v Number, n int, err error) {
	whole, wc, n := digits(s)
	v = Number{whole, 1}
	if wc > maxDigits {
		return v, n, errTooLong
	}
	mark := anyOf(s[n:], ".", ",", "·", "٫")
	part, pc, m := digits(s[n+mark:])
	if mark == 0 || pc == 0 || (wc == 0 && s[n] != '.') {
		if wc == 0 {
			return v, 0, nil
		}
		return v, n, exponent(s[n:])
	}
	end := n + mark + m
	if s[n] == ',' {
		if again, more := anyOf(s[end:], ","), s[end:]; pc == 3 || again > 0 {
			if _, c, _ := digits(more[again:]); again > 0 && c > 0 && (pc != 3 || c != 3) { // a list: 10,12,14
				return v, n, nil
			}
			if pc == 3 && !metres(more) {
				return thousands(s, whole)
			}
		}
	}
	if wc+pc > maxDigits || pc > 9 {
		return v, end, errTooLong
	}
	for range pc {
		v.Den *= 10
	}
	v.Num = whole*v.Den + part
	return v, end, exponent(s[end:])
}

// metres says whether a plain metre follows: then a comma before three digits is a decimal one.
func metres(s string) bool {
	s = strings.TrimLeft(s, " ")
	u, n := unit(s)
	return u == Metres && n > 0
}

func thousands(s string, whole int64) (v Number, n int, err error) {
	_, _, n = digits(s)
	for strings.HasPrefix(s[n:], ",") {
		part, pc, m := digits(s[n+1:])
		if pc != 3 {
			break
		}
		if whole > 1e12 {
			return v, n, errTooLong
		}
		whole, n = whole*1000+part, n+1+m
	}
	return Number{whole, 1}, n, nil
}

// exponent refuses 1e30, which would else read as 1 and a word.
func exponent(s string) error {
	if len(s) > 1 && (s[0] == 'e' || s[0] == 'E') {
		rest := strings.TrimLeft(s[1:], "+-")
		if _, c, _ := digits(rest); c > 0 {
			return errExponent
		}
	}
	return nil
}

// anyOf gives the bytes of the first of the marks that s starts with, or 0.
func anyOf(s string, marks ...string) int {
	for _, m := range marks {
		if strings.HasPrefix(s, m) {
			return len(m)
		}
	}
	return 0
}
