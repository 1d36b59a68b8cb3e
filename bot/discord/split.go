package discord

import (
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"lastrow/bot"
)

type file = bot.File

// What one message may hold.
const (
	mostText  = 2000     // UTF-16 units, which are at least as many as characters
	mostFile  = 10 << 20 // bytes of a file
	mostFiles = 10
	mostAll   = 24 << 20 // bytes of a whole request, with some to spare
	mostAlt   = 1024
	mostParts = 3 // messages in place of a long one; a longer text is attached
)

// part is what goes into one message.
type part struct {
	text  string
	files []file
}

// parts shares a reply out over messages: the files go with the last, and a text too long for a few of them is a file.
func parts(text string, files []file) []part {
	files, left := fitting(files)
	if left {
		text += "\n" + tooLarge
	}
	texts := split(text, mostText)
	if len(texts) > mostParts {
		whole := file{Name: "reply.txt", Type: "text/plain; charset=utf-8", Alt: "The whole reply as text", Data: []byte(text)}
		return []part{{texts[0], append([]file{whole}, files[:min(len(files), mostFiles-1)]...)}}
	}
	ps := make([]part, len(texts))
	for i, t := range texts {
		ps[i].text = t
	}
	ps[len(ps)-1].files = files
	return ps
}

// fitting are the files that Discord takes, and whether any was left out.
func fitting(files []file) (fit []file, left bool) {
	sum := 0
	for _, f := range files {
		if len(f.Data) > mostFile || sum+len(f.Data) > mostAll || len(fit) == mostFiles {
			left = true
			continue
		}
		sum += len(f.Data)
		fit = append(fit, f)
	}
	return fit, left
}

// split cuts a text into pieces of at most so many units, at the end of a line or else of a word where there is one in the
// second half. At least one piece results.
func split(text string, most int) []string {
	var pieces []string
	for {
		n := prefix(text, most)
		if n == len(text) {
			return append(pieces, text)
		}
		cut := n
		if i := strings.LastIndexByte(text[:n], '\n'); i > n/2 {
			cut = i
		} else if i := strings.LastIndexByte(text[:n], ' '); i > n/2 {
			cut = i
		}
		pieces = append(pieces, text[:cut])
		text = strings.TrimLeft(text[cut:], " \n")
	}
}

// prefix is the length in bytes of the longest beginning of a text that has at most so many UTF-16 units.
func prefix(text string, most int) int {
	units := 0
	for i, r := range text {
		units += max(utf16.RuneLen(r), 1)
		if units > most {
			return i
		}
	}
	return len(text)
}

// short is a text cut to at most so many characters.
func short(text string, most int) string {
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return string([]rune(text)[:most-1]) + "…"
}
