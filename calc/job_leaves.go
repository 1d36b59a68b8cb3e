package calc

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lastrow/calc/layout"
	"lastrow/calc/limit"
	"lastrow/calc/material"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// mostScraps is the number of a job's offcuts that are looked at, the longest ones.
const mostScraps = 30

// jobLeaves is what the job's own floor leaves: the offcuts of its layout, and the whole planks of its boxes. The closet
// asked about, where it is the job's own, is no part of that floor.
func (in *inputs) jobLeaves(p plank.Plank) (have []layout.Scrap, lines []string) {
	main := *in.job
	if _, said := in.said[term.Closet]; !said {
		main.Plan = without(main.Plan, in.ownCloset())
	}
	of := newInputs(&main, Question{Kind: term.AskPlan})
	l := of.laid()
	in.refused, in.missing = append(in.refused, of.refused...), append(in.missing, of.missing...)
	if l == nil {
		return nil, nil
	}
	for _, g := range of.used {
		in.use(g)
	}
	wholes, lines := in.wholesLeft(l)
	scraps := longestFirst(l.Scraps(in.lengthOr(term.LeastEnd, limit.LeastEnd.In(in.tape.System))))
	scraps = scraps[:min(len(scraps), mostScraps)]
	if len(scraps) > 0 {
		lines = append(lines, "the offcuts of its layout: "+in.lengths(scraps))
	}
	have = append(slices.Repeat([]layout.Scrap{{Len: p.Length, Left: true, Right: true}}, int(wholes)), scraps...)
	left := make(term.Lens, len(have))
	for i, s := range have {
		left[i] = s.Len
	}
	in.use(term.Given{Name: term.Leftover, Value: left, From: term.FromJob})
	return have, lines
}

// without leaves out the closet at a place, with what opens off it or stands in it.
func without(p room.Plan, at int) room.Plan {
	if at < 0 {
		return p
	}
	name := cmp.Or(p.Closets[at].What, "closet")
	p.Closets = slices.DeleteFunc(slices.Delete(slices.Clone(p.Closets), at, at+1), func(c room.Closet) bool { return c.Off == name })
	p.Doorways = slices.DeleteFunc(slices.Clone(p.Doorways), func(d room.Doorway) bool { return d.Off == name })
	p.Fixtures = slices.DeleteFunc(slices.Clone(p.Fixtures), func(f room.Fixture) bool { return f.In == name })
	return p
}

// wholesLeft is the whole planks left when the layout is laid: of the boxes bought, or of those that the floor would take.
func (in *inputs) wholesLeft(l *layout.Layout) (n int64, lines []string) {
	if !in.perBoxKnown() {
		return 0, []string{"nobody said how many planks a box holds: whole planks left are not counted"}
	}
	perBox, damaged := in.perBox(), in.tally(term.Damaged)
	bought, said := get[term.Count](in, term.Boxes)
	boxes := max(int64(bought), in.tally(term.Opened))
	if !said {
		spare := in.percentOr(term.Spare, percentOf(limit.Spare))
		boxes = max(boxes, material.Boxes(material.Planks(int64(l.Planks), spare), perBox))
		in.assume(term.Boxes, term.Count(boxes))
	}
	n = max(0, min(boxes*perBox-int64(l.Planks)-damaged, 10_000))
	return n, []string{fmt.Sprintf("%d boxes x %d - %d planks of the layout - %d damaged = %d whole planks left", boxes, perBox, l.Planks, damaged, n)}
}

// lengths shows the longest of the offcuts.
func (in *inputs) lengths(scraps []layout.Scrap) string {
	const most = 10
	var parts []string
	for _, s := range scraps[:min(len(scraps), most)] {
		parts = append(parts, in.text(s.Len))
	}
	if n := len(scraps) - most; n > 0 {
		parts = append(parts, fmt.Sprintf("%d shorter ones", n))
	}
	return strings.Join(parts, ", ")
}
