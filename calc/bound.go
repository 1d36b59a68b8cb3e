package calc

import (
	"fmt"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// Longest is the longest length that any question takes: a floor longer than a kilometre is a slip of the thumb.
const Longest = 1000 * length.Metre

// MostThings is the most rows, planks or boxes that any job counts.
const MostThings = 1_000_000

// span is the range of lengths that a thing of the trade has.
type span struct{ least, most length.Length }

// spans holds the names whose lengths lie closer than 0 to Longest.
var spans = map[term.Name]span{
	term.PlankWidth:  {10 * length.Millimetre, length.Metre},
	term.PlankLength: {50 * length.Millimetre, 6 * length.Metre},
	term.Kerf:        {0, length.Inch},
	term.Gap:         {0, 4 * length.Inch},
	term.RollWidth:   {50 * length.Millimetre, 10 * length.Metre},
	term.StickLength: {50 * length.Millimetre, 10 * length.Metre},
	term.Room:        {length.Inch, Longest},
	term.Closet:      {length.Inch, Longest},
	term.Walls:       {length.Millimetre, Longest},
	term.Across:      {length.Inch, Longest},
}

// Bound says why a value cannot stand under a name, or gives "".
func Bound(n term.Name, v term.Value, t length.Tape) string {
	switch v := v.(type) {
	case term.Len:
		return boundLength(n, length.Length(v), t)
	case term.Lens:
		for _, l := range v {
			if why := boundLength(n, l, t); why != "" {
				return why
			}
		}
	case term.Area:
		if v.Sign() <= 0 || v.Cmp(Longest.Times(Longest)) > 0 {
			return fmt.Sprintf("%s of %s is no floor's", n, t.Area(v.Area))
		}
	case term.Count:
		if v < least(n) || v > MostThings {
			return fmt.Sprintf("%s of %d is out of bounds: %d to %d", n, int64(v), least(n), MostThings)
		}
	case term.Percent:
		if v < 0 || n == term.Spare && v > 100_000 {
			return fmt.Sprintf("%s of %s is out of bounds: 0 to 100 %%", n, percent(v))
		}
	case term.Money:
		if v.Minor < 0 || v.Minor > 1e12 {
			return fmt.Sprintf("%s of %d is out of bounds", n, v.Minor/100)
		}
	}
	return ""
}

func least(n term.Name) term.Count {
	if n == term.PlanksPerBox {
		return 1
	}
	return 0
}

func boundLength(n term.Name, l length.Length, t length.Tape) string {
	s, ok := spans[n]
	if !ok {
		s = span{0, Longest}
	}
	if l >= s.least && l <= s.most {
		return ""
	}
	return fmt.Sprintf("%s of %s is out of bounds: %s to %s", n, t.Exact(l), t.Text(s.least), t.Room(s.most))
}
