package calc

import (
	"fmt"
	"math/big"
	"strings"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/material"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

func init() { handlers[term.AskHours] = hours }

// hours estimates the time to lay a floor: from its pieces and cuts where the job has a layout, else from its area.
func hours(in *inputs) (Result, error) {
	crew, _ := get[term.Count](in, term.Crew)
	if !in.has(term.Crew) {
		crew = 1
		in.assume(term.Crew, crew)
	}
	if crew < 1 || crew > 100 {
		in.refuse("a crew of %d is none", int64(crew))
		return Result{}, in.err()
	}
	if l := in.laidOut(); l != nil {
		return in.hoursByWork(workOf(l), int64(crew))
	}
	floor, ok := in.floorArea()
	if !ok {
		in.lack(term.FloorArea, term.Room, term.Job)
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	return in.hoursByArea(floor, int64(crew))
}

func (in *inputs) hoursByArea(floor length.Area, crew int64) (Result, error) {
	rate := in.rate()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	alone := floor.Over(rate)
	h, _ := new(big.Rat).Quo(alone, big.NewRat(crew, 1)).Float64()
	lines := []string{fmt.Sprintf("%s / %s an hour = %s hours for one", in.tape.Area(floor), in.tape.Area(rate), alone.FloatString(1))}
	return Result{
		Values:  []term.Named{{Name: term.HoursTaken, Value: term.Hours(h)}},
		Working: append(lines, crewLines(crew, h)...),
	}, nil
}

// crewLines says what several hands make of it, and what the estimate leaves out.
func crewLines(crew int64, h float64) []string {
	rest := "laying and cutting alone: preparing the subfloor takes about half as long again"
	if crew == 1 {
		return []string{rest}
	}
	return []string{fmt.Sprintf("/ %d people = %.1f hours", crew, h), rest}
}

// rate is the floor that one person lays in an hour.
func (in *inputs) rate() length.Area {
	if a, ok := get[term.Area](in, term.Rate); ok {
		if a.Cmp(length.SquareFoot) < 0 {
			in.refuse("%s an hour is no pace: 1 sq ft at least", in.tape.Area(a.Area))
		}
		return a.Area
	}
	unit, l := length.SquareFoot, limit.LabourRate
	if in.tape.System == length.Metric {
		unit, l = length.SquareMetre, limit.LabourRateMetric
	}
	a := length.Number{Num: l.Rat().Num().Int64(), Den: l.Rat().Denom().Int64()}.OfArea(unit)
	in.assume(term.Rate, term.Area{Area: a})
	return a
}

// laidOut gives the job's layout where the boxes question has one and no area, room or pace was said in its place.
func (in *inputs) laidOut() *layout.Layout {
	for _, n := range []term.Name{term.FloorArea, term.Room, term.Rate} {
		if _, said := in.said[n]; said {
			return nil
		}
	}
	boxes, ok := handlers[term.AskBoxes]
	if !ok {
		return nil
	}
	trial := newInputs(in.job, Question{Kind: term.AskBoxes})
	r, err := boxes(trial)
	if err != nil || r.Layout == nil {
		return nil
	}
	for _, g := range trial.used {
		in.use(g)
	}
	return r.Layout
}

// workOf counts what takes time in a layout.
func workOf(l *layout.Layout) material.Work {
	w := material.Work{Rows: int64(len(l.Rows))}
	for _, row := range l.Rows {
		for _, run := range row.Runs {
			w.Pieces += int64(len(run.Pieces))
			for _, p := range run.Pieces {
				for _, c := range p.Cuts {
					addCut(&w, c.What)
				}
			}
		}
	}
	if f := l.Request.Floor; f != nil {
		w.Doorways = int64(len(f.Plan.Doorways))
		w.Corners = cornersOf(f)
	}
	return w
}

// cornersOf counts the corners that trim is cut for.
func cornersOf(f *room.Floor) (n int64) {
	for _, p := range TrimOf(f) {
		if p.Left.Kind != material.AtCasing {
			n++
		}
	}
	return n
}

func addCut(w *material.Work, what string) {
	switch what {
	case "crosscut":
		w.Crosscuts++
	case "rip", "taper":
		w.Rips++
	case "notch", "hole", "angle":
		w.Notches++
	}
}

// paces are the names that a user sets minutes under.
var paces = []struct {
	name term.Name
	of   func(*material.Work) *int64
}{
	{"row-minutes", func(w *material.Work) *int64 { return &w.Rows }},
	{"piece-minutes", func(w *material.Work) *int64 { return &w.Pieces }},
	{"cut-minutes", func(w *material.Work) *int64 { return &w.Crosscuts }},
	{"rip-minutes", func(w *material.Work) *int64 { return &w.Rips }},
	{"notch-minutes", func(w *material.Work) *int64 { return &w.Notches }},
	{"doorway-minutes", func(w *material.Work) *int64 { return &w.Doorways }},
	{"corner-minutes", func(w *material.Work) *int64 { return &w.Corners }},
}

func (in *inputs) hoursByWork(w material.Work, crew int64) (Result, error) {
	pace := material.UsualPace
	var lines []string
	for _, p := range paces {
		if n := *p.of(&w); n > 0 {
			each := p.of(&pace)
			if said, ok := get[term.Count](in, p.name); ok {
				*each = int64(said)
			} else {
				in.assume(p.name, term.Count(*each))
			}
			lines = append(lines, fmt.Sprintf("%d x %d %s = %d", n, *each, spaced(p.name), n**each))
		}
	}
	alone := float64(w.Minutes(pace)) / 60
	h := alone / float64(crew)
	lines = append(lines, fmt.Sprintf("%d minutes = %.1f hours for one", w.Minutes(pace), alone))
	return Result{
		Values:  []term.Named{{Name: term.HoursTaken, Value: term.Hours(h)}},
		Working: append(lines, crewLines(crew, h)...),
	}, in.err()
}

// spaced is a name as words: "row minutes".
func spaced(n term.Name) string { return strings.ReplaceAll(string(n), "-", " ") }
