package grammar

import (
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// areaRate gives the unit of area that an amount is for: "2.49 a sq ft". Such a number is no size.
func (m *message) areaRate(q int) (unit string, ok bool) {
	rate, at := false, q+1
	for ; at < len(m.items) && at <= q+3; at++ {
		it := &m.items[at]
		if it.meaning == "area" {
			break
		}
		if rate = it.word == "a" || it.word == "per" || it.word == "the" || it.word == "each" || it.mark == "/" || rate && it.word == "each"; !rate {
			return "", false
		}
	}
	if !rate || at >= len(m.items) || m.items[at].meaning != "area" {
		return "", false
	}
	for j := at; j < len(m.items) && j <= at+1; j++ {
		if u, known := squares[m.items[j].word]; known {
			return u, true
		}
		if u, n := squareUnit(m.items[j].word); n > 0 {
			return u, true
		}
	}
	return "", false
}

// pricedByArea reads a price for so much floor, "the laminate is 2.49 a square foot", as that of a box, where the job
// knows what a box covers; else it asks.
func (r *reader) pricedByArea() (Reading, bool) {
	qs := r.quantities()
	if len(qs) != 1 || r.ctx.Group || r.marked() || r.whWord() || r.has("underlay", "trim", "roll", "stick") {
		return Reading{}, false
	}
	t := r.items[qs[0]].sizes[0]
	unit, ok := r.areaRate(qs[0])
	if !ok || t.class != tMoney && t.class != tNumber || len(r.items[qs[0]].sizes) > 1 || r.items[qs[0]].vague {
		return Reading{}, false
	}
	box, known := r.boxCovers()
	if !known {
		return Reading{Problem: &Problem{Outcome: "ask-back", Kind: term.SetPrice, Read: r.gist(), Example: "20 sq ft a box", Missing: []term.Name{term.BoxCoverage}, Setting: term.SetPlank}}, true
	}
	cents := new(big.Rat).Mul(ratOf(t.num), box.Over(areaUnits[unit]))
	amount := length.Up(cents.Sub(cents.Mul(cents, big.NewRat(100, 1)), big.NewRat(1, 2)))
	return Reading{Statements: []Statement{Price{Cents(amount), lower(t.unit)}}}, amount > 0
}

// boxCovers is the floor that a box of the job's planks covers.
func (r *reader) boxCovers() (a length.Area, ok bool) {
	var p Plank
	for _, s := range r.ctx.Statements {
		v, plank := s.(Plank)
		if !plank {
			continue
		}
		if v.Width != nil {
			p.Width = v.Width
		}
		if v.Length != nil {
			p.Length = v.Length
		}
		if v.PerBox != nil || v.BoxArea != nil {
			p.PerBox, p.BoxArea = v.PerBox, v.BoxArea
		}
	}
	switch {
	case p.BoxArea != nil:
		return p.BoxArea.Area(), true
	case p.Width != nil && p.Length != nil && p.PerBox != nil:
		return length.Number{Num: int64(*p.PerBox), Den: 1}.OfArea(p.Width.Len.Times(p.Length.Len)), true
	}
	return length.Area{}, false
}
