package calc

import (
	"fmt"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/term"
)

func init() { handlers[term.AskRows] = rows }

// rows counts the rows across a floor and gives the widths of the first and the last.
func rows(in *inputs) (Result, error) {
	across, ok := in.across()
	if !ok {
		in.lack(term.Across, term.Room)
	}
	width := in.needLength(term.PlankWidth)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	gap := in.gap(across)
	first, _ := in.length(term.FirstRow)
	least := in.lengthOr(term.LeastRow, limit.LeastRow.In(in.tape.System))
	cover := across - 2*gap
	in.rowsFit(across, gap, width, first, cover)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	c := layout.CountRows(cover, width, first, least)
	return Result{Values: rowValues(c, width), Working: in.rowsWorking(across, gap, width, first, cover, c)}, nil
}

func (in *inputs) rowsFit(across, gap, width, first, cover length.Length) {
	switch {
	case across <= 0 || cover <= 0:
		in.refuse("a room %s across with a gap of %s at each wall leaves no floor", in.tape.Exact(across), in.tape.Exact(gap))
	case width > across:
		in.refuse("a plank %s wide does not fit a room %s across", in.tape.Exact(width), in.tape.Exact(across))
	case first > width:
		in.refuse("a first row of %s is wider than the plank, %s", in.tape.Exact(first), in.tape.Exact(width))
	}
}

func rowValues(c layout.Count, width length.Length) []term.Named {
	v := []term.Named{
		{Name: term.Rows, Value: term.Count(c.N)},
		{Name: term.FirstRowWidth, Value: term.Len(c.First)},
		{Name: term.LastRowWidth, Value: term.Len(c.Last)},
	}
	if c.Balanced > 0 {
		v = append(v, term.Named{Name: term.BalancedRowWidth, Value: term.Len(c.Balanced)})
	}
	return v
}

func (in *inputs) rowsWorking(across, gap, width, first, cover length.Length, c layout.Count) []string {
	t := in.text
	lines := []string{fmt.Sprintf("%s - 2 x %s gap = %s to cover", t(across), t(gap), t(cover))}
	rest, whole := cover, c.N-1
	if first > 0 {
		rest -= c.First
		lines = append(lines, fmt.Sprintf("%s - %s first row = %s", t(cover), t(c.First), t(rest)))
		whole--
	}
	if whole > 0 {
		used := length.Length(whole) * width
		lines = append(lines, fmt.Sprintf("%d whole rows x %s = %s", whole, t(width), t(used)),
			fmt.Sprintf("%s - %s = %s last row", t(rest), t(used), t(c.Last)))
	}
	if c.Balanced > 0 {
		lines = append(lines, fmt.Sprintf("(%s + %s) / 2 = %s for first and last alike", t(width), t(c.Last), t(c.Balanced)))
	}
	return lines
}
