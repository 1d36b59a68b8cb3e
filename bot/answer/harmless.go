package answer

import (
	"strings"
	"unicode"
)

// Harmless makes a text from outside safe to say back: no mention can ping anyone, no mark-up takes hold, nothing invisible stays.
func Harmless(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Mn, r), unicode.Is(unicode.Co, r), r == unicode.ReplacementChar:
			return -1
		case strings.ContainsRune("`*_~|<>\\", r):
			return -1
		}
		return r
	}, s)
	return strings.ReplaceAll(s, "@", "(at)")
}

// Short cuts a text to about n characters, at a character's edge.
func Short(s string, n int) string {
	rs := []rune(strings.TrimSpace(s))
	if len(rs) <= n {
		return string(rs)
	}
	return string(rs[:n]) + "..."
}
