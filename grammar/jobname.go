package grammar

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"lastrow/grammar/words"
)

// nameJob finds one of the user's jobs named in the message, and takes its words out of what is read.
func (m *message) nameJob(jobs []string) string {
	low := strings.ToLower(m.src)
	best, at := "", -1
	for _, j := range jobs {
		if len(j) <= len(best) || utf8.RuneCountInString(j) < 3 {
			continue
		}
		if i := wholeWord(low, strings.ToLower(j)); i >= 0 {
			best, at = j, i
		}
	}
	if at < 0 {
		return ""
	}
	for i := range m.items {
		if it := &m.items[i]; it.at >= at && it.end <= at+len(best) && it.word != "" {
			it.meaning = words.Filler
		}
	}
	return best
}

// wholeWord finds w in s where no letter or digit stands on either side.
func wholeWord(s, w string) int {
	for from := 0; ; {
		i := strings.Index(s[from:], w)
		if i < 0 {
			return -1
		}
		i += from
		before, _ := utf8.DecodeLastRuneInString(s[:i])
		after, _ := utf8.DecodeRuneInString(s[i+len(w):])
		if !alnum(before) && !alnum(after) {
			return i
		}
		from = i + len(w)
	}
}

func alnum(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }
