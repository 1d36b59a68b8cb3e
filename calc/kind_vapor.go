package calc

import (
	"fmt"
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/subfloor"
	"lastrow/calc/term"
)

func init() {
	handlers[term.AskVaporBarrier] = vaporBarrier
	handlers[term.AskAcclimate] = acclimate
}

// vaporBarrier says whether a vapor film goes under the floor, and how far its strips lap.
func vaporBarrier(in *inputs) (Result, error) {
	word := need[term.Word](in, term.Subfloor)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	ground := subfloor.GroundOf(string(word))
	needed, ok := subfloor.FilmNeeded(ground)
	if ground == subfloor.Unknown {
		in.lack(term.Subfloor)
		return Result{}, in.err()
	}
	if !ok {
		in.refuse("a subfloor of %q does not say whether a film is needed: name what lies under it too, as \"tile over concrete\" or \"vinyl over plywood\"", string(word))
		return Result{}, in.err()
	}
	r := Result{Values: []term.Named{{Name: term.Passes, Value: term.Pass(needed)}}}
	if !needed {
		r.Working = []string{"wood subfloors: no film under the floor, which would hold moisture in the wood; the crawl space below gets its own ground cover"}
		return r, nil
	}
	lap := subfloor.Lap(in.tape.System)
	r.Values = append(r.Values, term.Named{Name: term.Overlap, Value: term.Len(lap)})
	r.Working = []string{
		"slabs and screeds: a film over the whole floor, under an underlay that does not hold one itself",
		limit.FilmThick.Why(in.tape), limit.FilmLap.Why(in.tape),
	}
	return r, nil
}

// acclimate gives the hours that the closed boxes rest in the room.
func acclimate(in *inputs) (Result, error) {
	hours, _ := limit.Acclimate.Rat().Float64()
	air, floor := limit.AirWarm, limit.FloorWarm
	return Result{
		Values: []term.Named{{Name: term.HoursTaken, Value: term.Hours(hours)}},
		Working: []string{
			limit.Acclimate.Why(in.tape),
			fmt.Sprintf("the room at %s or warmer, its floor at %s or warmer, the air at %s or drier, from then on",
				in.warm(air), in.warm(floor), limit.AirDry.Text(in.tape)),
			"it is no clock: the boxes rest closed and flat until they match the room, and the flooring's own sheet rules",
		},
	}, nil
}

// warm shows a temperature on the job's scale, exactly.
func (in *inputs) warm(l *limit.Limit) string {
	if in.tape.System == length.Metric {
		return l.Text(in.tape)
	}
	f := new(big.Rat).Mul(l.Rat(), big.NewRat(9, 5))
	return decimal(f.Add(f, big.NewRat(32, 1))) + " °F"
}
