package grammar

import (
	"fmt"
	"unicode"
	"unicode/utf8"
)

// Longest is the most bytes of a message that are read: room for a walk along ten thousand walls.
const Longest = 120_000

// screen refuses text that shows other than what it says: control and bidirectional characters, invisible tag
// digits, strokes laid over letters, superscripts. It gives the reason, or "".
func screen(text string) string {
	if !utf8.ValidString(text) {
		return "bytes that are no text"
	}
	if len(text) > Longest {
		return fmt.Sprintf("more than %d characters", Longest)
	}
	var before rune
	for _, r := range text {
		if why := hostile(r, before); why != "" {
			return why
		}
		before = r
	}
	return ""
}

func hostile(r, before rune) string {
	switch {
	case r < utf8.RuneSelf:
		if r == 0x7f || r < ' ' && r != '\n' && r != '\r' && r != '\t' {
			return "a control character"
		}
	case r >= 0xe0000 && r <= 0xe007f:
		return "an invisible tag character"
	case unicode.Is(unicode.Bidi_Control, r):
		return "a character that turns the writing round"
	case unicode.Is(unicode.Mn, r) && overlay(r):
		return "a stroke laid over a letter"
	case r == '\u2028' || r == '\u2029' || unicode.Is(unicode.Cc, r):
		return "a control character"
	case raised(r) && !(r == '²' || r == '³') || (r == '²' || r == '³') && !unicode.IsLetter(before):
		return "a raised or lowered digit"
	}
	return ""
}

func overlay(r rune) bool {
	return r >= 0x334 && r <= 0x338 || r == 0x20d2 || r == 0x20d3 || r == 0x20e0
}

func raised(r rune) bool {
	return r == '¹' || r == '²' || r == '³' || r >= 0x2070 && r <= 0x2089
}

// plainSpace makes a space of every kind of space: phones put ones that don't break between a number and its unit.
func plainSpace(r rune) rune {
	if unicode.Is(unicode.Zs, r) {
		return ' '
	}
	return r
}
