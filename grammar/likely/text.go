package likely

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// steps is how many steps of a weight make one: weights are kept in hundredths.
const steps = 100

// String writes a model: its labels on the first line, then a line for each feature: the feature, a tab, and for each
// label that it speaks for or against the label's number and the weight in hundredths.
func (m *Model) String() string {
	var b strings.Builder
	b.WriteString(strings.Join(m.labels, " ") + "\n")
	for _, f := range slices.Sorted(maps.Keys(m.weights)) {
		b.WriteString(f + "\t")
		for i, w := range m.weights[f] {
			if i > 0 {
				b.WriteByte(' ')
			}
			fmt.Fprintf(&b, "%d:%.0f", w.label, w.w*steps)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// Parse reads what String wrote. Lines that are none of a model's are left out.
func Parse(text string) *Model {
	head, rest, _ := strings.Cut(text, "\n")
	m := of(strings.Fields(head))
	for line := range strings.Lines(rest) {
		if f, ws, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "\t"); ok {
			m.weights[f] = m.parse(ws)
		}
	}
	return m
}

func (m *Model) parse(text string) []weight {
	out := make([]weight, 0, strings.Count(text, " ")+1)
	for part := range strings.SplitSeq(text, " ") {
		label, w, _ := strings.Cut(part, ":")
		k, err := strconv.Atoi(label)
		v, err2 := strconv.Atoi(w)
		if err == nil && err2 == nil && k >= 0 && k < len(m.labels) {
			out = append(out, weight{int32(k), float32(v) / steps})
		}
	}
	return out
}
