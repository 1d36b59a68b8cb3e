package calc

import (
	"fmt"

	"lastrow/calc/height"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/term"
)

func init() { handlers[term.AskHeadroom] = headroom }

// headroom gives what ceilings, window sills and stairs become over a raised floor, each under its own name, and
// whether they all keep their limits.
func headroom(in *inputs) (Result, error) {
	asked := in.headroomAsked()
	if len(asked) == 0 {
		in.lack(term.Ceiling, term.Sill, term.Riser)
	}
	up := in.buildUp()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	r, kept := Result{Working: in.layerLines(up)}, true
	for _, n := range asked {
		kept = measures[n](in, &r, up) && kept
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	r.Values = append(r.Values, term.Named{Name: term.Passes, Value: term.Pass(kept)})
	return r, nil
}

// measures holds one check a name. Each adds to the result and says whether its limits are kept.
var measures = map[term.Name]func(*inputs, *Result, length.Length) bool{
	term.Ceiling:   (*inputs).ceiling,
	term.Sill:      (*inputs).sill,
	term.Riser:     (*inputs).riser,
	term.Guard:     (*inputs).guard,
	term.Threshold: (*inputs).threshold,
}

// headroomAsked lists what was said; what the job knows counts only where nothing was said.
func (in *inputs) headroomAsked() []term.Name {
	var said, known []term.Name
	for _, n := range []term.Name{term.Ceiling, term.Sill, term.Riser, term.Guard, term.Threshold} {
		if _, ok := in.said[n]; ok {
			said = append(said, n)
		} else if in.has(n) {
			known = append(known, n)
		}
	}
	if len(said) > 0 {
		return said
	}
	return known
}

// between refuses a height that no dwelling has.
func (in *inputs) between(n term.Name, l, least, most length.Length) {
	if l < least || l > most {
		in.refuse("%s of %s is out of bounds: %s to %s", n, in.told(l), in.told(least), in.told(most))
	}
}

func (in *inputs) ceiling(r *Result, up length.Length) bool {
	was := in.needLength(term.Ceiling)
	in.between(term.Ceiling, was, 5*length.Foot, limit.CeilingMost.Inch)
	now := was - up
	kept := height.CeilingKept(now, false)
	r.Values = append(r.Values, term.Named{Name: term.Ceiling, Value: term.Len(now)})
	r.Working = append(r.Working, in.lessLine(was, up, now),
		limit.CeilingLeast.Why(in.tape), limit.CeilingBath.Why(in.tape))
	return kept
}

func (in *inputs) sill(r *Result, up length.Length) bool {
	was := in.needLength(term.Sill)
	in.between(term.Sill, was, limit.BuildUpMost.Inch, 8*length.Foot)
	now := was - up
	escape, fall := height.SillKept(now)
	r.Values = append(r.Values, term.Named{Name: term.Sill, Value: term.Len(now)})
	r.Working = append(r.Working, in.lessLine(was, up, now), limit.SillMost.Why(in.tape), limit.SillLeast.Why(in.tape))
	return escape && fall
}

func (in *inputs) guard(r *Result, up length.Length) bool {
	was := in.needLength(term.Guard)
	in.between(term.Guard, was, length.Foot, 6*length.Foot)
	r.Values = append(r.Values, term.Named{Name: term.Guard, Value: term.Len(was - up)})
	r.Working = append(r.Working, in.lessLine(was, up, was-up), limit.GuardLeast.Why(in.tape))
	return height.GuardKept(was, up)
}

// threshold takes the top of a threshold above the subfloor, and gives how far it stands over the new floor.
func (in *inputs) threshold(r *Result, up length.Length) bool {
	was := in.needLength(term.Threshold)
	in.between(term.Threshold, was, 1, 8*length.Inch)
	r.Values = append(r.Values, term.Named{Name: term.Threshold, Value: term.Len(was - up)})
	r.Working = append(r.Working, in.lessLine(was, up, was-up), limit.EgressDrop.Why(in.tape))
	return height.EgressKept(was - up)
}

func (in *inputs) lessLine(was, up, now length.Length) string {
	return fmt.Sprintf("%s - %s = %s", in.told(was), in.told(up), in.mark(now))
}

// riser takes one riser of a flight that is uniform, or all the risers of a flight, lowest first.
func (in *inputs) riser(r *Result, up length.Length) bool {
	flight := in.flight()
	landing := in.landing()
	if len(flight) == 0 || in.err() != nil {
		return false
	}
	after := height.Raise(flight, landing, up)
	changed := after[0]
	if landing == height.Upper {
		changed = after[len(after)-1]
	}
	high, spread := height.StairKept(after)
	r.Values = append(r.Values, term.Named{Name: term.Riser, Value: term.Len(changed)})
	r.Working = append(r.Working, in.riserLines(flight, after, landing, up)...)
	return high && spread
}

func (in *inputs) flight() []length.Length {
	var flight []length.Length
	if g, _ := in.peek(term.Riser); isLens(g.Value) {
		all, _ := get[term.Lens](in, term.Riser)
		flight = all
	} else {
		one := in.needLength(term.Riser)
		flight = []length.Length{one, one, one}
	}
	for _, l := range flight {
		in.between(term.Riser, l, limit.RiserLow.Inch, limit.RiserHigh.Inch)
	}
	if len(flight) < 2 {
		in.refuse("a flight has two risers at least")
	}
	return flight
}

func isLens(v term.Value) bool { _, ok := v.(term.Lens); return ok }

func (in *inputs) landing() height.Landing {
	w, ok := get[term.Word](in, term.Landing)
	switch {
	case !ok:
		in.assume(term.Landing, term.Word(height.Lower))
		return height.Lower
	case names(w, "up", "top"):
		return height.Upper
	case names(w, "low", "bottom", "foot", "down"):
		return height.Lower
	}
	in.refuse("landing can't be %q: it is lower or upper", string(w))
	return height.Lower
}

func (in *inputs) riserLines(flight, after []length.Length, at height.Landing, up length.Length) []string {
	was, now, sign, which := flight[0], after[0], "-", "first riser up from the raised floor"
	if at == height.Upper {
		was, now, sign, which = flight[len(flight)-1], after[len(after)-1], "+", "last riser up to the raised floor"
	}
	e := in.told
	lines := []string{fmt.Sprintf("%s: %s %s %s = %s", which, e(was), sign, e(up), in.mark(now))}
	lines = append(lines, fmt.Sprintf("largest less smallest in the flight = %s", in.mark(height.Spread(after))))
	return append(lines, limit.RiserSpread.Why(in.tape), limit.RiserMost.Why(in.tape))
}
