// Package words holds the vocabulary: which spelling stands for which meaning. It is data (english.txt) and a look-up
// that forgives slips of the thumb; another language is another file.
package words

import (
	_ "embed"
	"strings"
)

//go:embed english.txt
var english string

// The meanings that are none.
const (
	Filler   = "-" // says nothing here
	Everyday = "?" // known, and no word of the trade
)

// Book is a vocabulary.
type Book struct {
	single  map[string]string
	phrases map[string][]phrase // by first word
	near    map[string][]string // spellings by first letter, for near words
	parts   map[string]bool     // the words of phrases
	begins  map[string][]string // the same by first letter
}

type phrase struct {
	words   []string
	meaning string
}

// English is the vocabulary of English, North American and British.
var English = Parse(english)

// Parse reads a vocabulary: a line is a meaning, a colon and its spellings; one of several words stands in quotes.
func Parse(text string) *Book {
	b := &Book{single: map[string]string{}, phrases: map[string][]phrase{}, near: map[string][]string{}, parts: map[string]bool{}, begins: map[string][]string{}}
	for line := range strings.Lines(text) {
		meaning, spellings, ok := strings.Cut(strings.TrimSpace(line), ":")
		if !ok || strings.HasPrefix(line, "#") {
			continue
		}
		b.add(meaning, spellings)
	}
	return b
}

func (b *Book) add(meaning, spellings string) {
	for i, part := range strings.Split(spellings, `"`) {
		if i%2 == 1 {
			b.addPhrase(meaning, part)
			continue
		}
		for _, w := range strings.Fields(part) {
			b.addWord(meaning, w)
		}
	}
}

// exact are the meanings that change or give away what is kept: a slip of the thumb never means them.
var exact = map[string]bool{"undo": true, "forget": true, "export": true, "share": true, "unshare": true, "history": true}

func (b *Book) addWord(meaning, w string) {
	if _, taken := b.single[w]; taken || strings.HasSuffix(w, "_") {
		return
	}
	b.single[w] = meaning
	if meaning != Filler && len(w) >= 4 && !exact[meaning] {
		b.near[w[:1]] = append(b.near[w[:1]], w)
	}
}

func (b *Book) addPhrase(meaning, text string) {
	w := strings.Fields(strings.ReplaceAll(text, "-", " "))
	if len(w) == 1 {
		b.addWord(meaning, w[0])
		return
	}
	list := b.phrases[w[0]]
	at := 0
	for at < len(list) && len(list[at].words) >= len(w) {
		at++
	}
	list = append(list[:at:at], append([]phrase{{w, meaning}}, list[at:]...)...)
	b.phrases[w[0]] = list
	if exact[meaning] || meaning == Filler {
		return
	}
	for _, part := range w {
		if !b.parts[part] {
			b.parts[part] = true
			b.begins[part[:1]] = append(b.begins[part[:1]], part)
		}
	}
}

// Part gives the one word of the vocabulary's phrases that w is a slip of: one letter left out, put in, changed or swapped with
// the next. Words of fewer than four letters are never guessed at, and none is where two are as near.
func (b *Book) Part(w string) string {
	if len(w) < 4 || len(w) > 20 || b.single[w] != "" || b.parts[w] {
		return ""
	}
	found := ""
	for _, part := range b.begins[w[:1]] {
		if len(part) < 4 || Distance(w, part, 1) > 1 {
			continue
		}
		if found != "" {
			return ""
		}
		found = part
	}
	return found
}

// Phrase gives the meaning of the longest phrase that the words begin with, and how many of them it takes.
func (b *Book) Phrase(w []string) (meaning string, n int) {
	for _, p := range b.phrases[w[0]] {
		if len(p.words) <= len(w) && equal(p.words, w) {
			return p.meaning, len(p.words)
		}
	}
	return "", 0
}

func equal(p, w []string) bool {
	for i := range p {
		if p[i] != w[i] {
			return false
		}
	}
	return true
}

// Word gives the meaning of a word as spelt, or "".
func (b *Book) Word(w string) string { return b.single[w] }

// Near gives the meaning of the one spelling that w is a slip of: one edit for 4 or 5 letters, two for more, where no
// other meaning is as near. Shorter words are never guessed at.
func (b *Book) Near(w string) string {
	n := len(w)
	if n < 4 || n > 20 {
		return ""
	}
	limit := 1
	if n >= 6 {
		limit = 2
	}
	best, meaning := limit+1, ""
	firsts := [...]string{w[:1], w[1:2]}
	for _, first := range firsts[:1+different(firsts)] {
		for _, s := range b.near[first] {
			if len(s) < n-limit || len(s) > n+limit {
				continue
			}
			d := Distance(w, s, best)
			switch m := b.single[s]; {
			case d < best:
				best, meaning = d, m
			case d == best && d <= limit && m != meaning:
				meaning = ""
			}
		}
	}
	if meaning == Everyday {
		return ""
	}
	return meaning
}

func different(pair [2]string) int {
	if pair[0] == pair[1] {
		return 0
	}
	return 1
}

// Distance counts the edits (a letter left out, put in, changed, or two swapped) between a and b; it stops counting at most.
func Distance(a, b string, most int) int {
	if d := len(a) - len(b); d > most || -d > most {
		return most + 1
	}
	var rows [3][24]int
	if len(b) >= 24 {
		return most + 1
	}
	prev2, prev, cur := &rows[0], &rows[1], &rows[2]
	for j := 0; j <= len(b); j++ {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		cur[0] = i
		low := i
		for j := 1; j <= len(b); j++ {
			cur[j] = step(a, b, i, j, prev2, prev, cur)
			low = min(low, cur[j])
		}
		if low > most {
			return most + 1
		}
		prev2, prev, cur = prev, cur, prev2
	}
	return prev[len(b)]
}

func step(a, b string, i, j int, prev2, prev, cur *[24]int) int {
	same := 1
	if a[i-1] == b[j-1] {
		same = 0
	}
	d := min(prev[j]+1, cur[j-1]+1, prev[j-1]+same)
	if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
		d = min(d, prev2[j-2]+1)
	}
	return d
}
