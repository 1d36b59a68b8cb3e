package calc

import (
	"fmt"
	"strings"

	"lastrow/calc/height"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/term"
)

func init() { handlers[term.AskTransition] = transition }

// transition gives the step between the new floor and its neighbour, and the strip that bridges it.
func transition(in *inputs) (Result, error) {
	up := in.buildUp(term.FloorHeight)
	edge := in.edge()
	other := in.otherHeight()
	in.check(height.CheckOther(other))
	if err := in.err(); err != nil {
		return Result{}, err
	}
	c := height.Bridge(up-other, edge)
	return Result{
		Values: []term.Named{
			{Name: term.Step, Value: term.Len(c.Step)},
			{Name: term.Profile, Value: term.Word(c.Profile)},
			{Name: term.Bevel, Value: term.Len(c.Bevel)},
		},
		Working: append(in.layerLines(up), in.stepLines(c, up, other)...),
	}, nil
}

// buildUp gives how much the new floor raises the walking surface: as said in one figure, or as plank and underlay.
// Others are names that would do in place of the two.
func (in *inputs) buildUp(others ...term.Name) length.Length {
	_, said := in.said[term.FloorHeight]
	_, plank := in.said[term.PlankThickness]
	if said || in.has(term.FloorHeight) && !plank {
		h, _ := in.length(term.FloorHeight)
		in.check(height.CheckBuildUp(h))
		return h
	}
	l := height.Layers{Plank: length.Length(need[term.Len](in, term.PlankThickness, others...))}
	l.Underlay = length.Length(need[term.Len](in, term.UnderlayThickness, others...))
	if in.has(term.PlankThickness) && in.has(term.UnderlayThickness) {
		in.check(l.Check()...)
	}
	return l.BuildUp()
}

// check refuses each error there is.
func (in *inputs) check(errs ...error) {
	for _, err := range errs {
		if err != nil {
			in.refuse("%v", err)
		}
	}
}

// otherHeight is the neighbour's height over the same subfloor. A bare slab stands at none.
func (in *inputs) otherHeight() length.Length {
	if w, ok := in.peek(term.OtherFloor); ok && !in.has(term.OtherHeight) && names(w.Value, "slab", "concrete", "subfloor", "bare") {
		in.assume(term.OtherHeight, term.Len(0))
		return 0
	}
	return length.Length(need[term.Len](in, term.OtherHeight))
}

func (in *inputs) edge() height.Edge {
	if !in.has(term.OtherFloor) {
		return height.Hard
	}
	w, _ := get[term.Word](in, term.OtherFloor)
	switch {
	case names(w, "carpet", "rug"):
		return height.Soft
	case names(w, "slid", "track"):
		return height.Track
	}
	return height.Hard
}

// names says whether any of the parts stands in a word.
func names(v term.Value, parts ...string) bool {
	w, ok := v.(term.Word)
	for _, p := range parts {
		if ok && strings.Contains(strings.ToLower(string(w)), p) {
			return true
		}
	}
	return false
}

// told shows a length exactly, as far as a thousandth of a millimetre.
func (in *inputs) told(l length.Length) string {
	if l%length.SixtyFourth == 0 && in.tape.System == length.Imperial {
		return in.tape.Exact(l)
	}
	return length.Tape{System: length.Metric, Parts: 1000}.Text(l)
}

// mark is told, with what an inch tape shows of it where it shows none of it exactly: small lengths to 1/64 in, for 10 mm
// and 3/8 in are not to look alike.
func (in *inputs) mark(l length.Length) string {
	shown := in.told(l)
	if in.tape.System == length.Metric || l%length.SixtyFourth == 0 {
		return shown
	}
	tape := in.tape
	if l < 2*length.Inch && l > -2*length.Inch {
		tape.Parts = 64
	}
	return shown + " (about " + tape.Text(l) + ")"
}

// layerLines shows what the build-up is made of, where it was not said in one figure.
func (in *inputs) layerLines(up length.Length) []string {
	for _, g := range in.used {
		if g.Name == term.FloorHeight {
			return nil
		}
	}
	plank, _ := in.length(term.PlankThickness)
	underlay, _ := in.length(term.UnderlayThickness)
	return []string{fmt.Sprintf("%s plank + %s underlay, as it is under load = %s", in.told(plank), in.told(underlay), in.mark(up))}
}

func (in *inputs) stepLines(c height.Crossing, up, other length.Length) []string {
	lines := []string{fmt.Sprintf("%s new floor - %s other floor = %s step", in.told(up), in.told(other), in.mark(c.Step))}
	rise := in.told(max(c.Step, -c.Step))
	switch {
	case c.Profile == height.Ramp:
		lines = append(lines, fmt.Sprintf("over 1/2 in: ramp, 12 x %s = %s run (%s)", rise, in.mark(c.Bevel), limit.RampSlope.Source))
	case c.Bevel > 0:
		lines = append(lines, fmt.Sprintf("over 1/4 in: bevel 1:2, 2 x %s = %s run (%s); or 1/4 in upright and a bevel of %s", rise, in.mark(c.Bevel), limit.BevelSlope.Source, in.mark(c.Mixed)))
	default:
		lines = append(lines, fmt.Sprintf("up to 1/4 in may stay upright (%s)", limit.StepVertical.Source))
	}
	if bevel, ok := height.OldThreshold(max(c.Step, -c.Step)); ok && c.Profile == height.Ramp {
		lines = append(lines, fmt.Sprintf("a threshold that was there before may stay up to 3/4 in, with %s of bevel at each side (%s)", in.mark(bevel), limit.ThresholdOld.Source))
	}
	if c.Profile == height.Ramp {
		return lines
	}
	return append(lines, fmt.Sprintf("%s: which strip goes where is common practice", c.Profile))
}
