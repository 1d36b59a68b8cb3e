// Package limit holds every figure that an answer is judged by: its value, its unit, its source, how sure it is, and
// whether a user may put another in its place.
//
// Each limit is one variable, so that a misspelt one does not compile, and All lists them. Figures of the code
// bodies are kept in the unit that the body prints as governing; a soft metric label (13 mm for 1/2 in) is not used.
package limit

import (
	"math/big"
	"strings"

	"lastrow/calc/length"
)

// Sure is how well a figure is attested.
type Sure string

// The grades of sureness.
const (
	Published Sure = "published"       // a standard, a code or a trade body prints it
	Practice  Sure = "common practice" // no published source states it
	Memory    Sure = "from memory"     // attributed to a source whose text was not at hand
)

// Limit is one figure. A length is in Inch and Metric, which differ only where the trade rounds them apart; any other
// figure is num/den of the Unit.
type Limit struct {
	ID     string
	What   string
	Inch   length.Length
	Metric length.Length
	num    int64
	den    int64
	Unit   string
	Source string // body, number, edition, clause
	Sure   Sure
}

var all []*Limit

// All lists every limit, in the order of their source files. The rows are shared; don't change them.
func All() []*Limit { return all }

// Find gives the limit of an ID.
func Find(id string) (*Limit, bool) {
	for _, l := range all {
		if l.ID == id {
			return l, true
		}
	}
	return nil, false
}

// In gives a length for jobs of a system.
func (l *Limit) In(s length.System) length.Length {
	if s == length.Metric {
		return l.Metric
	}
	return l.Inch
}

// Overridable says whether a user may put another figure in its place for a job: one that no published text stands behind.
func (l *Limit) Overridable() bool { return l.Sure != Published }

// IsLength says whether the figure is a length.
func (l *Limit) IsLength() bool { return l.den == 0 }

// Text shows the figure on a tape: "3/8 in", "75 % RH".
func (l *Limit) Text(t length.Tape) string {
	if l.IsLength() {
		return t.Exact(l.In(t.System))
	}
	return decimal(l.Rat()) + " " + l.Unit
}

// Rat gives a figure that is no length, exactly. It is nil for a length.
func (l *Limit) Rat() *big.Rat {
	if l.IsLength() {
		return nil
	}
	return big.NewRat(l.num, l.den)
}

// decimal shows q to four places, without the zeros that end it.
func decimal(q *big.Rat) string {
	if q.IsInt() {
		return q.Num().String()
	}
	return strings.TrimRight(q.FloatString(4), "0")
}

// Why shows the figure with what stands behind it.
func (l *Limit) Why(t length.Tape) string {
	return l.What + ": " + l.Text(t) + " (" + l.Source + "; " + string(l.Sure) + ")"
}

// both is a length that is the same figure on either tape.
func both(id, what string, v length.Length, source string, sure Sure) *Limit {
	return row(Limit{ID: id, What: what, Inch: v, Metric: v, Source: source, Sure: sure})
}

// each is a length that the trade rounds apart: so much on an inch job, so much on a metric one.
func each(id, what string, inch, metric length.Length, source string, sure Sure) *Limit {
	return row(Limit{ID: id, What: what, Inch: inch, Metric: metric, Source: source, Sure: sure})
}

// amount is a figure that is no length: num/den of the unit.
func amount(id, what string, num, den int64, unit, source string, sure Sure) *Limit {
	return row(Limit{ID: id, What: what, num: num, den: den, Unit: unit, Source: source, Sure: sure})
}

func row(l Limit) *Limit {
	all = append(all, &l)
	return &l
}
