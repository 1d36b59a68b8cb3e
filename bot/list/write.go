package list

import (
	"encoding/csv"
	"fmt"
	"strings"
	"unicode/utf8"
)

// Text is the list in columns, for lettering of one width. A piece is named by its row and its number in the row: 5.2 is
// the second piece of row 5.
func Text(lines []Line) string {
	rows := [][]string{{"piece", "length", "other cuts", "plank", "from", "rest"}}
	for _, l := range lines {
		rows = append(rows, []string{l.Name(), l.Long, l.Other(), fmt.Sprint(l.Plank), l.From, l.Rest})
	}
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, s := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(s))
		}
	}
	var b strings.Builder
	for _, row := range rows {
		line := ""
		for i, s := range row {
			line += s + strings.Repeat(" ", widths[i]-utf8.RuneCountInString(s)+2)
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}

// Name is a piece's name: its row and its number in the row.
func (l Line) Name() string { return fmt.Sprintf("%d.%d", l.Row, l.Piece) }

// Other are the cuts besides the length.
func (l Line) Other() string {
	s := ""
	for _, part := range []string{l.Rip, l.Angle, l.Notch} {
		if part != "" {
			s = also(s, part)
		}
	}
	if l.Lip != "" {
		s = also(s, "lip off the "+l.Lip)
	}
	return s
}

// CSV is the list with a heading (RFC 4180). The column length_mm has the length unrounded.
func CSV(lines []Line) (string, error) {
	var b strings.Builder
	w := csv.NewWriter(&b)
	rows := [][]string{{"row", "piece", "length", "rip", "angle", "notch", "lip off", "plank", "from", "rest", "length_mm"}}
	for _, l := range lines {
		rows = append(rows, []string{
			fmt.Sprint(l.Row), fmt.Sprint(l.Piece), l.Long, l.Rip, l.Angle, l.Notch, l.Lip,
			fmt.Sprint(l.Plank), l.From, l.Rest, fmt.Sprint(l.Length.MM()),
		})
	}
	err := w.WriteAll(rows)
	return b.String(), err
}
