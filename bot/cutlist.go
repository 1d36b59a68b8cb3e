package bot

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"lastrow/bot/answer"
	"lastrow/calc"
	"lastrow/calc/layout"
	"lastrow/calc/length"
)

// attachCuts gives a cut list that is longer than a message as files: the text, and the cuts as comma-separated values.
func attachCuts(r Reply, result calc.Result) (Reply, error) {
	if result.Layout == nil || len(strings.Join(result.Working, "\n")) < answer.MaxText/2 {
		return r, nil
	}
	table, err := cutTable(result.Layout)
	r.Files = append(r.Files,
		File{Name: "cut-list.txt", Type: "text/plain; charset=utf-8", Alt: "the whole cut list", Data: []byte(strings.Join(result.Working, "\n") + "\n")},
		File{Name: "cut-list.csv", Type: "text/csv; charset=utf-8", Alt: "the whole cut list as a table, lengths in mm", Data: table})
	return r, err
}

// cutTable has a line for each cut, and one for each piece without.
func cutTable(l *layout.Layout) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	lines := [][]string{{"row", "piece", "plank", "offcut", "length", "cut", "edge", "near", "far", "left", "right", "bottom", "top"}}
	for _, row := range l.Rows {
		for _, run := range row.Runs {
			for _, p := range run.Pieces {
				lines = append(lines, pieceLines(p)...)
			}
		}
	}
	err := w.WriteAll(lines)
	return b.Bytes(), err
}

func pieceLines(p layout.Piece) [][]string {
	offcut := "no"
	if p.Offcut {
		offcut = "yes"
	}
	head := []string{strconv.Itoa(p.Row), strconv.Itoa(p.N), strconv.Itoa(p.Plank + 1), offcut, mm(p.Right - p.Left)}
	if len(p.Cuts) == 0 {
		return [][]string{append(head, "", "", "", "", "", "", "", "")}
	}
	var lines [][]string
	for _, c := range p.Cuts {
		cut := []string{c.What, c.Edge, mm(c.Near), mm(c.Far), mm(c.Left), mm(c.Right), mm(c.Bottom), mm(c.Top)}
		lines = append(lines, append(append([]string{}, head...), cut...))
	}
	return lines
}

func mm(l length.Length) string {
	return strings.TrimSuffix(length.Tape{System: length.Metric}.Exact(l), " mm")
}
