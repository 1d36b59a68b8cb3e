package calc

import "fmt"

// some is a count of things: "1 strip", "3 strips". The plural adds an s, or es after an x.
func some(n int64, of string) string {
	switch {
	case n == 1:
		return "1 " + of
	case of[len(of)-1] == 'x':
		return fmt.Sprintf("%d %ses", n, of)
	}
	return fmt.Sprintf("%d %ss", n, of)
}
