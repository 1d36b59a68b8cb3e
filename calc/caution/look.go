package caution

import (
	"slices"
	"strings"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/subfloor"
	"lastrow/calc/term"
)

// asks says whether the question is of one of the kinds.
func (c Circumstance) asks(kinds ...term.Kind) bool { return slices.Contains(kinds, c.Question.Kind) }

// sets says whether the message made a statement of one of the kinds.
func (c Circumstance) sets(kinds ...term.Kind) bool {
	return slices.ContainsFunc(c.Set, func(k term.Kind) bool { return slices.Contains(kinds, k) })
}

// value gives a result, or nil.
func (c Circumstance) value(n term.Name) term.Value {
	for _, v := range c.Result.Values {
		if v.Name == n {
			return v.Value
		}
	}
	return nil
}

// given gives an input that was used, was said, or stands in the job; or nil.
func (c Circumstance) given(n term.Name) term.Value {
	for _, g := range slices.Concat(c.Result.Given, c.Question.Given) {
		if g.Name == n {
			return g.Value
		}
	}
	if c.Job != nil {
		return c.Job.Facts[n]
	}
	return nil
}

// lengthOf gives a length, or 0.
func lengthOf(v term.Value) length.Length {
	l, _ := v.(term.Len)
	return length.Length(l)
}

func count(v term.Value) int64 {
	n, _ := v.(term.Count)
	return int64(n)
}

// fails says whether the result has a limit that is not kept.
func (c Circumstance) fails() bool {
	p, ok := c.value(term.Passes).(term.Pass)
	return ok && !bool(p)
}

// short says whether a result or input is a length under a limit; nothing known is not short.
func short(v term.Value, least length.Length) bool {
	l := lengthOf(v)
	return l > 0 && l < least
}

func (c Circumstance) system() length.System {
	if c.Job == nil {
		return length.Imperial
	}
	return c.Job.Tape.System
}

// least is a limit that the user may have set, under the name of the input that sets it.
func (c Circumstance) least(n term.Name, l *limit.Limit) length.Length {
	if said := lengthOf(c.given(n)); said > 0 {
		return said
	}
	return l.In(c.system())
}

// breaks says whether the layout names a rule as broken.
func (c Circumstance) breaks(name string) bool {
	return c.Result.Layout != nil && slices.ContainsFunc(c.Result.Layout.Broken, func(b layout.Broken) bool { return b.Rule == name })
}

// anyPiece says whether some piece of the layout is such.
func (c Circumstance) anyPiece(such func(layout.Piece) bool) bool {
	if c.Result.Layout == nil {
		return false
	}
	for _, row := range c.Result.Layout.Rows {
		for _, run := range row.Runs {
			if slices.ContainsFunc(run.Pieces, such) {
				return true
			}
		}
	}
	return false
}

// anyCut says whether some cut of the layout is such.
func (c Circumstance) anyCut(such func(layout.Cut) bool) bool {
	return c.anyPiece(func(p layout.Piece) bool { return slices.ContainsFunc(p.Cuts, such) })
}

// ground is what the floor lies on, as far as it was said.
func (c Circumstance) ground() subfloor.Ground { return subfloor.GroundOf(c.subfloor()) }

func (c Circumstance) subfloor() string {
	w, _ := c.given(term.Subfloor).(term.Word)
	return strings.ToLower(string(w))
}

// longest is the longest side or run that the answer is about.
func (c Circumstance) longest() length.Length {
	most := max(lengthOf(c.given(term.Run)), lengthOf(c.given(term.Across)))
	if sides, ok := c.given(term.Room).(term.Lens); ok {
		most = max(most, slices.Max(append(sides, 0)))
	}
	if c.Job != nil && c.Job.Plan.Rect != nil {
		most = max(most, c.Job.Plan.Rect.EastWest, c.Job.Plan.Rect.NorthSouth)
	}
	if c.Result.Floor != nil {
		eastWest, northSouth := c.Result.Floor.Extent()
		most = max(most, eastWest, northSouth)
	}
	return most
}
