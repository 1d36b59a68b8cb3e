package calc

import (
	"fmt"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/subfloor"
	"lastrow/calc/term"
)

func init() { handlers[term.AskLeveler] = leveler }

// leveler gives the volume that fills a low place and the bags that hold it.
func leveler(in *inputs) (Result, error) {
	area := in.needArea()
	in.namesArea(area)
	depth := in.needLength(term.Depth)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	if depth > limit.LevelerMost.Inch {
		in.refuse("leveler %s deep is out of bounds: %s at most in one answer", in.tape.Exact(depth), in.tape.Exact(limit.LevelerMost.Inch))
	}
	shape := subfloor.Shape(in.wordOr(term.Shape, term.Word(subfloor.Flat),
		term.Word(subfloor.Slope), term.Word(subfloor.Bowl), term.Word(subfloor.Cone)))
	yield := in.yield()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	v := subfloor.Fill(area, depth, shape)
	bags := subfloor.Bags(v, yield)
	return Result{
		Values:  []term.Named{{Name: term.VolumeNeeded, Value: term.Volume{Volume: v}}, {Name: term.Bags, Value: term.Count(bags)}},
		Working: in.fillLines(area, depth, shape, v, yield, bags),
	}, nil
}

// namesArea lists the area of a place whose two sides were said.
func (in *inputs) namesArea(a length.Area) {
	if g, said := in.said[term.Room]; said && a.Sign() > 0 {
		in.use(term.Given{Name: term.FloorArea, Value: term.Area{Area: a}, From: g.From})
	}
}

func (in *inputs) yield() length.Volume {
	if v, ok := get[term.Volume](in, term.BagYield); ok {
		if v.Cmp(length.Volume{}) <= 0 {
			in.refuse("a bag that fills %s fills nothing", in.tape.Volume(v.Volume))
		}
		return v.Volume
	}
	y := subfloor.Yield(in.tape.System)
	in.assume(term.BagYield, term.Volume{Volume: y})
	return y
}

func (in *inputs) fillLines(area length.Area, depth length.Length, s subfloor.Shape, v, yield length.Volume, bags int64) []string {
	mean := map[subfloor.Shape]string{
		subfloor.Slope: " / 2 for an even slope", subfloor.Bowl: " / 2 for a bowl", subfloor.Cone: " / 3 for a cone",
	}[s]
	bag := "50 lb bag"
	if in.tape.System == length.Metric {
		bag = "25 kg bag"
	}
	return []string{
		fmt.Sprintf("%s x %s%s = %s", in.tape.Area(area), in.mark(depth), mean, in.tape.Volume(v)),
		fmt.Sprintf("%s / %s a bag = %s, so %d in whole bags", in.tape.Volume(v), in.tape.Volume(yield), v.Over(yield).FloatString(2), bags),
		fmt.Sprintf("a %s fills about that (common practice); the bag's own figure rules", bag),
	}
}
