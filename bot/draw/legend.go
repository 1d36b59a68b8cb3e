package draw

import (
	"fmt"
	"slices"
	"strings"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
	"lastrow/calc/length"
)

// mostNotes and mostSizes are the numbers of notes and of lengths under a plan; the rest are told by row.
const (
	mostNotes = 12
	mostSizes = 24
)

// legend writes under the plan what its tones mean, how to begin, and what had no room on it.
func (p *plan) legend() {
	p.swatches()
	p.write(p.title.unitNote()+" North is up.", plainText, false)
	for _, s := range p.facts() {
		p.write(s, plainText, false)
	}
	if len(p.sizes) > 0 {
		p.write("Lengths besides: "+strings.Join(p.sizes[:min(len(p.sizes), mostSizes)], "; ")+".", plainText, false)
	}
	if more := len(p.sizes) - mostSizes; more > 0 {
		p.write(fmt.Sprintf("%d more lengths: see the rows.", more), plainText, true)
	}
	p.notes = append(p.notes, p.traps()...)
	shown := p.notes[:min(len(p.notes), mostNotes)]
	for _, s := range shown {
		p.write(s, plainText, false)
	}
	if more := len(p.notes) - len(shown); more > 0 {
		p.write(fmt.Sprintf("%d more notes: see the rows.", more), plainText, true)
	}
}

type swatch struct {
	tone    sheet.Tone
	texture sheet.Texture
	text    string
}

// swatches shows the tones that are used, with their meaning.
func (p *plan) swatches() {
	kinds := []swatch{
		{sheet.Whole, sheet.Plain, "whole plank"},
		{sheet.Cut, sheet.Rising, "cut from a new plank"},
		{sheet.Spare, sheet.Falling, "cut from an offcut"},
		{sheet.Cut, sheet.Crossed, "! can't be tilted in"},
	}
	used := map[int]bool{}
	p.each(func(piece *layout.Piece) {
		t, texture := look(piece)
		for i, k := range kinds {
			if k.texture == texture && (k.tone == t || texture == sheet.Crossed) {
				used[i] = true
			}
		}
	})
	var shown []swatch
	for i, k := range kinds {
		if used[i] {
			shown = append(shown, k)
		}
	}
	p.key(shown)
}

// key draws swatches in a line, broken where the sheet ends.
func (p *page) key(shown []swatch) {
	const side = 40
	x := margin
	for _, k := range shown {
		w, h := sheet.Measure(k.text, plainText, false)
		if x+side+12+w > p.W-margin && x > margin {
			x = margin
			p.skip(h + 14)
		}
		b := sheet.Box{X0: x, Y0: p.pen, X1: x + side, Y1: p.pen + h}
		p.Add(sheet.Fill{Rings: [][]sheet.Point{b.Corners()}, Tone: k.tone, Texture: k.texture})
		p.Add(sheet.Outline(b.Corners(), middleLine, sheet.Solid)...)
		p.Add(sheet.Text{At: sheet.Point{X: b.X1 + 10, Y: p.pen}, Size: plainText, S: k.text})
		x = b.X1 + 10 + w + 32
	}
	p.skip(plainText*17/16 + 16)
}

// facts are sentences on rows, gaps and where to begin.
func (p *plan) facts() []string {
	l, t := p.layout, p.title.Tape
	first, last := &l.Rows[0], &l.Rows[len(l.Rows)-1]
	facts := []string{
		fmt.Sprintf("Row 1: %s, at the %s. Row %d: %s. Longest run %s.",
			p.widthText(first), l.Start(), last.N, p.widthText(last), t.Room(longest(l))),
		fmt.Sprintf("Start at the %s, black corner; lay from %s to %s, and count pieces so.", l.Start(), l.From, l.To),
	}
	if p.run == layout.Diagonal {
		facts[1] = fmt.Sprintf("Start at the %s, arrow; lay from %s to %s, and count pieces so.", l.Start(), l.From, l.To)
	}
	if p.rowPx < detailPx {
		facts = append(facts, "The lengths of cut pieces are on the sheets of rows.")
	}
	facts = append(facts, p.gaps())
	if s := p.hidden(); s != "" {
		facts = append(facts, s)
	}
	return facts
}

func longest(l *layout.Layout) length.Length {
	var most length.Length
	for _, row := range l.Rows {
		for _, run := range row.Runs {
			most = max(most, run.Right-run.Left)
		}
	}
	return most
}

// gaps says the gap at each wall, one where they are alike.
func (p *plan) gaps() string {
	var order []length.Length
	at := map[length.Length][]string{}
	for _, e := range p.floor.Edges {
		if !slices.Contains(order, e.Gap) {
			order = append(order, e.Gap)
		}
		if !slices.Contains(at[e.Gap], e.Wall) {
			at[e.Gap] = append(at[e.Gap], e.Wall)
		}
	}
	if len(order) == 1 {
		return "Gap " + p.title.Tape.Text(order[0]) + " at every edge."
	}
	slices.SortStableFunc(order, func(a, b length.Length) int { return len(at[a]) - len(at[b]) })
	var parts []string
	for _, gap := range order[:len(order)-1] {
		parts = append(parts, p.gapText(gap)+" at "+strings.Join(at[gap], ", "))
	}
	return "Gap: " + strings.Join(parts, "; ") + "; " + p.gapText(order[len(order)-1]) + " elsewhere."
}

func (p *plan) gapText(gap length.Length) string {
	if gap == 0 {
		return "tight"
	}
	return p.title.Tape.Text(gap)
}

func (p *plan) hidden() string {
	var walls []string
	for _, e := range p.floor.Edges {
		if e.Hidden && !slices.Contains(walls, e.Wall) {
			walls = append(walls, e.Wall)
		}
	}
	if len(walls) == 0 {
		return ""
	}
	return "Out of sight: " + strings.Join(walls, ", ") + " wall."
}
