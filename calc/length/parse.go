package length

import (
	"fmt"
	"strings"
)

// ParseError says where a text stops being a length.
type ParseError struct {
	Text string
	At   int // byte offset of what was not read
	Why  string
}

func (e *ParseError) Error() string {
	return fmt.Sprintf("%s at %d in %q; a length reads like 11ft 4in, 7 5/8 or 3450mm", e.Why, e.At, e.Text)
}

// Parse reads one length and nothing else, in any of the forms that people type: 11ft 4in, 11' 4 1/2", 11-4, 12'6,
// 7 5/8, 7⅝, 3.45 m, 3m45. A bare number is inches.
func Parse(text string) (Length, error) {
	trimmed := strings.TrimSpace(text)
	start := strings.Index(text, trimmed)
	m, n, err := Scan(trimmed)
	switch {
	case err != nil:
		return 0, &ParseError{text, start + n, err.Error()}
	case n == 0:
		return 0, &ParseError{text, start, "no length begins"}
	case n < len(trimmed):
		return 0, &ParseError{text, start + n, fmt.Sprintf("%.20q is no part of a length", trimmed[n:])}
	case m.Unit == Bare && m.Form == Single:
		l, err := m.Amount.Of(Inch)
		if err != nil {
			return 0, &ParseError{text, start, err.Error()}
		}
		return l, nil
	}
	return m.Len, nil
}
