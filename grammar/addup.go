package grammar

import (
	"slices"

	"lastrow/calc/length"
	"lastrow/calc/measure"
	"lastrow/calc/term"
)

// summed are the kinds of question that want the area of all the floors said.
var summed = map[term.Kind]bool{term.AskBoxes: true, term.AskCost: true, term.AskHours: true, term.AskWeight: true}

// mostFloors is the most sizes of a message that are looked at as floors.
const mostFloors = 40

// addUp makes one area of several that are said: "132, 118 and 155 square feet", "a 3'6 x 19 hall on top of the 12 x 16
// living room". A count of rooms before them must be theirs.
func (r *reader) addUp(q *Question, qs *[]int) {
	if !summed[q.Kind] || len(*qs) > mostFloors || r.has("instead", "not", "minus", "leave", "missing") || r.hasWord("or", "vs", "versus", "minus", "less", "except", "skip", "without", "counting", "excluding") {
		return
	}
	parts, total := r.floorParts(*qs)
	if len(parts) == 1 && r.timesEach(q, qs, parts[0], total) {
		return
	}
	if len(parts) < 2 || r.sameFloor(parts) || q.Kind != term.AskHours && r.maybeBox(parts) {
		return
	}
	var counts []int
	for _, i := range *qs {
		if n, ok := r.roomCount(i); ok {
			if n != len(parts) && !(n < len(parts) && r.has("room") && r.has("hall", "closet", "wet")) {
				return
			}
			counts = append(counts, i)
		}
	}
	q.Given = append(q.Given, given(term.FloorArea, term.Area{Area: total}), given(term.Expression, term.Expr{Expr: r.sumOf(parts)}))
	*qs = without(*qs, append(parts, counts...))
}

// sumOf is the sum of the floors as it is shown: "12 ft x 10 ft + 9 ft x 8 ft".
func (r *reader) sumOf(parts []int) measure.Expr {
	var sum measure.Expr
	unit := orFeet(r.areaSaid())
	for _, i := range slices.Backward(parts) {
		var e measure.Expr = measure.Of(r.items[i].sizes[0].num, measure.Unit(unit))
		if v, _, ok := r.valueFor(i, &sRoom, r.lean); ok {
			a, b := v.sizes[0], v.sizes[1]
			e = measure.Binary{Op: measure.Mul, X: measure.Len{Len: a.Len, System: a.System}, Y: measure.Len{Len: b.Len, System: b.System}}
		} else if t := r.items[i].sizes[0]; t.class == tArea {
			e = measure.Of(t.num, measure.Unit(t.unit))
		}
		if sum == nil {
			sum = e
			continue
		}
		sum = measure.Binary{Op: measure.Add, X: sum, Y: e}
	}
	return sum
}

// floorParts are the quantities that are each the area of a floor, and their sum.
func (r *reader) floorParts(qs []int) (parts []int, total length.Area) {
	for k := len(qs) - 1; k >= 0; k-- {
		a, ok := r.floorPart(qs, k, parts)
		if ok {
			parts, total = append(parts, qs[k]), total.Plus(a)
		}
	}
	return parts, total
}

// floorPart reads a quantity as the area of a floor: in square feet, or bare in a list before one that is, or as two sides.
func (r *reader) floorPart(qs []int, k int, parts []int) (length.Area, bool) {
	i := qs[k]
	it := &r.items[i]
	t := it.sizes[0]
	switch {
	case it.vague:
	case t.class == tArea && len(it.sizes) == 1:
		return flatOf(t).Area(), r.inEachFloor(i) || !r.perBox(i) && !r.boxOf(i) && r.nearness(i, "cover each per does") < 4
	case t.class == tNumber && len(it.sizes) == 1 && k+1 < len(qs) && len(parts) > 0 && parts[len(parts)-1] == qs[k+1] && i+1 < qs[k+1] && r.listed(i, qs[k+1]) && r.areaSaid() != "":
		next := &r.items[qs[k+1]]
		if len(next.sizes) > 1 {
			return length.Area{}, false
		}
		return Flat{t.num, r.areaSaid()}.Area(), true
	case len(it.sizes) == 2 && r.nearness(i, "plank roll") < 4:
		if _, fit, ok := r.valueFor(i, &sPlank, r.lean); ok && fit >= 3 && r.nearness(i, "room hall closet wet floor") < 4 {
			return length.Area{}, false
		}
		v, fit, ok := r.valueFor(i, &sRoom, r.lean)
		if !ok || fit < 0 || len(v.sizes) != 2 {
			return length.Area{}, false
		}
		return v.sizes[0].Len.Times(v.sizes[1].Len), min(v.sizes[0].Len, v.sizes[1].Len) >= 18*inch
	}
	return length.Area{}, false
}

// maybeBox says whether one of the areas may be what a box covers, where nothing else is said to be.
func (r *reader) maybeBox(parts []int) bool {
	if r.coverageSaid() {
		return false
	}
	for _, i := range parts {
		if t := r.items[i].sizes[0]; t.class == tArea && coverageFit(flatOf(t).Area()) > 0 {
			return true
		}
	}
	return false
}

// sameFloor says whether an area said is that of two sides said besides: "12 x 14, so 168 sq ft".
func (r *reader) sameFloor(parts []int) bool {
	for _, i := range parts {
		for _, j := range parts {
			a, b := r.items[i], r.items[j]
			if len(a.sizes) == 2 && len(b.sizes) == 1 {
				return true
			}
		}
	}
	return false
}

// roomCount reads "three" of "three bedrooms".
func (r *reader) roomCount(i int) (int, bool) {
	t := r.items[i].sizes[0]
	if t.class != tNumber || len(r.items[i].sizes) > 1 || !t.num.Whole() || i+1 >= len(r.items) || !isOne(r.items[i+1].meaning, []string{"room", "closet", "hall", "wet", "area", "floor"}) {
		return 0, false
	}
	return int(t.num.Num / t.num.Den), true
}

// timesEach takes a floor as often as it is said to be there: "3 units, 610 sq ft in each", "two bedrooms, each 11 by 13".
func (r *reader) timesEach(q *Question, qs *[]int, part int, one length.Area) bool {
	if !r.hasWord("each", "apiece", "identical", "same", "alike") {
		return false
	}
	for _, i := range *qs {
		n, ok := r.floorCount(i)
		if i == part || !ok || n < 2 || n > 100 {
			continue
		}
		var total length.Area
		for range n {
			total = total.Plus(one)
		}
		times := measure.Binary{Op: measure.Mul, X: r.sumOf([]int{part}), Y: measure.Num(length.Number{Num: int64(n), Den: 1})}
		q.Given = append(q.Given, given(term.FloorArea, term.Area{Area: total}), given(term.Expression, term.Expr{Expr: times}))
		*qs = without(*qs, []int{part, i})
		return true
	}
	return false
}

// inEachFloor says whether an area is that of each of several floors: "3 units, 610 sq ft in each".
func (r *reader) inEachFloor(i int) bool {
	return r.nearness(i, "cover box") < 4 && slices.ContainsFunc(r.quantities(), func(j int) bool {
		n, ok := r.floorCount(j)
		return ok && n > 1 && j < i
	})
}

// floorCount reads how many floors of a kind there are: "three bedrooms", "3 units".
func (r *reader) floorCount(i int) (int, bool) {
	if n, ok := r.roomCount(i); ok {
		return n, true
	}
	for j := i + 1; j < len(r.items) && j <= i+2; j++ {
		if isOne(r.items[j].word, []string{"units", "floors", "flats", "apartments", "apts", "suites", "levels", "storeys", "houses", "bedrooms", "rooms", "offices", "classrooms"}) {
			t := r.items[i].sizes[0]
			return int(t.num.Num / max(t.num.Den, 1)), t.class == tNumber && t.num.Whole() && len(r.items[i].sizes) == 1
		}
	}
	return 0, false
}
