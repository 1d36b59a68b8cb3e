package grammar

import (
	"slices"

	"lastrow/calc/term"
)

// newShape asks how big a floor is that is said to be of a shape and has no sizes: "how many boxes for an L shaped room"
// is of no rectangle that the job knows.
func (r *reader) newShape(q *Question) (Reading, bool) {
	if len(r.quantities()) > 0 || !r.shaped() || r.shapeKnown() {
		return Reading{}, false
	}
	name, ok := asShape[q.Kind]
	if !ok {
		return Reading{}, false
	}
	return r.askBack(q, name), true
}

// asShape is what a kind asks of a floor of some shape.
var asShape = map[term.Kind]term.Name{
	term.AskBoxes: term.FloorArea, term.AskCost: term.FloorArea, term.AskHours: term.FloorArea, term.AskWeight: term.FloorArea, term.AskUnderlay: term.FloorArea,
	term.AskTrim: term.Perimeter,
}

// shaped says whether a letter's shape is spoken of: "L shaped", "a T-shape".
func (r *reader) shaped() bool {
	for i := 0; i+1 < len(r.items); i++ {
		if isOne(r.items[i].word, []string{"l", "t", "u", "z", "odd", "funny", "weird"}) && isOne(r.items[i+1].word, []string{"shape", "shaped"}) {
			return true
		}
	}
	return false
}

// shapeKnown says whether the job's floor is no plain rectangle.
func (r *reader) shapeKnown() bool {
	return slices.ContainsFunc(r.ctx.Statements, func(s Statement) bool {
		switch v := s.(type) {
		case Walls, Closet:
			return true
		case Room:
			return len(v.CutOuts) > 0
		}
		return false
	})
}

// doubtfulGap says whether a bare number read as a gap is none that anyone leaves: 3 in, or 2.
func (r *reader) doubtfulGap(name term.Name, v value) bool {
	if name != term.Gap || len(v.sizes) != 1 || v.item < 0 {
		return false
	}
	return r.items[v.item].sizes[0].class == tNumber && v.sizes[0].Len > 3*inch/2
}

// underWay says whether "are we good on boxes" is asked of a floor that is being laid: what is there is then judged.
func (r *reader) underWay() bool {
	return r.has("enough") && len(r.quantities()) == 0 && slices.ContainsFunc(r.ctx.Statements, func(s Statement) bool {
		switch s.(type) {
		case Laid, Opened:
			return true
		}
		return false
	})
}
