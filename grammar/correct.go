package grammar

import (
	"lastrow/calc/length"
	"lastrow/calc/term"
)

// correction changes a size said before: "no make that 11-6", "sorry 9-11 not 9-10", "it's 13 ft 6 not 13 ft".
func (r *reader) correction() (Reading, bool) {
	if r.ctx.Group {
		return Reading{}, false
	}
	qs := r.feetAnd(r.quantities())
	if out, ok := r.instead(); ok {
		return out, true
	}
	if out, ok := r.retaken(qs); ok {
		return out, true
	}
	if len(qs) == 2 && r.notBetween(qs[0], qs[1]) {
		return r.notThat(qs[0], qs[1])
	}
	if len(qs) == 2 && r.has("not", "no", "sorry") && r.notBefore(qs[0]) && !r.asks() {
		return r.notThat(qs[1], qs[0])
	}
	if r.has("sorry", "no") && !r.asks() {
		if out, ok := r.amended(qs); ok {
			return out, true
		}
	}
	if len(qs) == 1 && r.has("sorry", "no") && !r.asks() && !r.namesSetting() {
		return r.putRight(qs[0])
	}
	if r.job == "" && r.has("damaged", "plank") && r.has("undo") {
		return Reading{}, false
	}
	return Reading{}, false
}

func (r *reader) namesSetting() bool {
	for _, n := range settings {
		if _, fit, ok := r.valueFor(r.quantities()[0], &n, r.lean); !ok || fit < 0 {
			continue
		}
		if r.ctx.Last != nil && hasName(r.ctx.Last.Given, n.name) && !r.has("make") {
			continue
		}
		if (n.must || n.count == "per-box") && len(r.quantities()) == 1 && r.nearness(r.quantities()[0], n.cues) > 3 && r.allows(n.name) {
			return true
		}
	}
	return false
}

// notBetween says whether "not" or "instead of" stands between two sizes.
func (r *reader) notBetween(a, b int) bool {
	for i := a + 1; i < b; i++ {
		if r.items[i].meaning == "not" || r.items[i].meaning == "instead" {
			return true
		}
	}
	return false
}

func (r *reader) notBefore(a int) bool {
	for i := a - 1; i >= 0 && i >= a-3; i-- {
		if r.items[i].meaning == "not" || r.items[i].word == "scratch" {
			return true
		}
	}
	return false
}

// feetAnd makes feet and inches of two bare numbers in a row that put something right: "oops, 14 6".
func (r *reader) feetAnd(qs []int) []int {
	if len(qs) != 2 || qs[1] != qs[0]+1 || !r.has("sorry", "no", "undo") || len(r.items[qs[0]].sizes) > 1 || len(r.items[qs[1]].sizes) > 1 {
		return qs
	}
	a, b := r.items[qs[0]].sizes[0], r.items[qs[1]].sizes[0]
	if !feetAndInches(a, b) || a.num.Num < 4*a.num.Den {
		return qs
	}
	r.items[qs[0]].sizes = []token{pairOf(a, b)}
	r.items[qs[0]].end = b.end
	r.items = append(r.items[:qs[1]:qs[1]], r.items[qs[1]+1:]...)
	return qs[:1]
}

// notThat puts the size at item a in place of the one at item b, wherever that was said.
func (r *reader) notThat(a, b int) (Reading, bool) {
	if len(r.items[a].sizes) != 1 || len(r.items[b].sizes) != 1 || r.items[a].vague {
		return Reading{}, false
	}
	swap := swapping{r: r, from: r.items[b].sizes[0], to: r.items[a].sizes[0]}
	return swap.apply(r.ctx)
}

// swapping replaces one size by another in what was said before.
type swapping struct {
	r        *reader
	from, to token
	any      bool // from is not said: the nearest size is meant
}

func (s swapping) apply(ctx Context) (Reading, bool) {
	if ctx.Last != nil {
		if q, ok := s.question(ctx.Last); ok {
			return Reading{Question: q}, true
		}
	}
	if ctx.LastSet != nil {
		if st, ok := s.statement(ctx.LastSet); ok {
			return Reading{Statements: []Statement{st}}, true
		}
	}
	for i := len(ctx.Statements) - 1; i >= 0 && !s.any; i-- {
		if st, ok := s.statement(ctx.Statements[i]); ok {
			return Reading{Statements: []Statement{st}}, true
		}
	}
	return Reading{}, false
}

func (s swapping) question(last *Question) (*Question, bool) {
	q := carried(last)
	at, to := -1, length.Length(0)
	for i, g := range q.Given {
		v, ok := g.Value.(term.Len)
		if !ok {
			continue
		}
		if n, ok := s.match(length.Length(v)); ok {
			if at >= 0 {
				return nil, false
			}
			at, to = i, n
		}
	}
	if at < 0 {
		return s.inRoom(q)
	}
	q.Given[at].Value, q.Given[at].From = term.Len(to), term.Message
	return q, true
}

// inRoom changes one side of a room that a question was given.
func (s swapping) inRoom(q *Question) (*Question, bool) {
	for i, g := range q.Given {
		v, ok := g.Value.(term.Lens)
		if !ok {
			continue
		}
		for k := range v {
			if n, ok := s.match(v[k]); ok {
				w := append(term.Lens(nil), v...)
				w[k] = n
				q.Given[i] = given(g.Name, w)
				return q, true
			}
		}
	}
	return nil, false
}

// match says whether a length is the one that was said wrong, and gives the right one in the same unit.
func (s swapping) match(old length.Length) (length.Length, bool) {
	for _, u := range []length.Unit{length.Millimetres, length.Inches, length.Feet, length.Centimetres, length.Metres} {
		from, to := s.from, s.to
		if to.class == tNumber && s.any && (u == length.Feet && old < 5*foot || u == length.Metres && old < length.Metre) {
			continue // nobody gives so little in feet without saying so
		}
		if s.any {
			from = to
		}
		if from.class == tNumber {
			withUnit(&from, u)
		}
		if to.class == tNumber {
			withUnit(&to, s.r.unitOf(to, u))
		}
		if s.any && near(old, to.meas.Len) || !s.any && from.meas.Len == old {
			return to.meas.Len, to.meas.Len > 0
		}
		if s.from.class == tLength && s.to.class == tLength {
			break
		}
	}
	return 0, false
}

// unitOf is the unit of a bare number that puts right a size in u: a part of an inch is of inches whatever that was in.
func (r *reader) unitOf(t token, u length.Unit) length.Unit {
	if u.System() == length.Metric && !t.num.Whole() && !r.decimal(t) {
		return length.Inches
	}
	return u
}

// near says whether a size may be a correction of another: within a quarter of it.
func near(old, now length.Length) bool {
	d := old - now
	if d < 0 {
		d = -d
	}
	return d > 0 && d*4 <= old
}

// only changes the one size of a statement: where the wrong one is not said, it is meant.
func (s swapping) only(old *Size, as bareAs) bool {
	if !s.any {
		return s.size(old)
	}
	size, ok := s.r.message.read(s.to, as, leaning{old.System, true})
	if ok {
		*old = size
	}
	return ok
}

func (s swapping) size(old *Size) bool {
	if old == nil {
		return false
	}
	n, ok := s.match(old.Len)
	if ok {
		sys := old.System
		if s.to.class == tLength {
			sys = s.to.meas.Unit.System()
		}
		*old = Size{n, sys}
	}
	return ok
}

// statement gives the statement with its one matching size changed.
func (s swapping) statement(old Statement) (Statement, bool) {
	switch v := old.(type) {
	case Room:
		a, b := v.EastWest, v.NorthSouth
		okA, okB := s.size(&a), s.size(&b)
		switch {
		case okA && okB && s.any && !(distance(a.Len, v.EastWest.Len) < distance(b.Len, v.NorthSouth.Len)):
			v.NorthSouth = b
		case okA:
			v.EastWest = a
		case okB:
			v.NorthSouth = b
		}
		return v, okA || okB
	case Plank:
		w, l, t := clone(v.Width), clone(v.Length), clone(v.Thickness)
		if s.size(w) || s.size(l) || s.size(t) {
			v.Width, v.Length, v.Thickness = w, l, t
			return v, true
		}
	case Gap:
		ok := s.only(&v.Size, bareSmall)
		return v, ok
	case Limit:
		ok := s.only(&v.Size, bareInch)
		return v, ok
	case Height:
		ok := s.only(&v.Size, bareThick)
		return v, ok
	case Measured:
		return s.share(v)
	case Underlay:
		if t := clone(v.Thickness); t != nil && v.RollWidth == nil && v.Overlap == nil && s.only(t, bareThick) {
			v.Thickness = t
			return v, true
		}
		a, b, c := clone(v.Thickness), clone(v.RollWidth), clone(v.RollLong)
		ok := s.size(a) || s.size(b) || s.size(c)
		v.Thickness, v.RollWidth, v.RollLong = a, b, c
		return v, ok
	}
	return s.counted(old)
}

// share changes the percentage of a reading.
func (s swapping) share(v Measured) (Statement, bool) {
	to, err := scale(s.to.num, 1000)
	if v.Percent == nil || err != nil || s.to.class != tPercent && s.to.class != tNumber {
		return v, false
	}
	if !s.any {
		if from, err := scale(s.from.num, 1000); err != nil || Thousandths(from) != *v.Percent {
			return v, false
		}
	}
	p := Thousandths(to)
	v.Percent = &p
	return v, true
}

// spared changes the share that is bought over.
func (s swapping) spared(v Spare) (Statement, bool) {
	if v.Percent == nil || s.to.class != tPercent && s.to.class != tNumber {
		return v, false
	}
	m, ok := s.share(Measured{Percent: v.Percent})
	return Spare{Percent: m.(Measured).Percent}, ok
}

// priced changes an amount, the currency kept where none is said.
func (s swapping) priced(v Price) (Statement, bool) {
	if s.to.class != tNumber && s.to.class != tMoney {
		return v, false
	}
	if !s.any {
		if from, err := scale(s.from.num, 100); err != nil || Cents(from) != v.Amount {
			return v, false
		}
	}
	to, err := scale(s.to.num, 100)
	if s.to.class == tMoney && s.to.unit != "" {
		v.Currency = lower(s.to.unit)
	}
	v.Amount = Cents(to)
	return v, err == nil && to > 0
}

// counted changes the count or the amount of a statement.
func (s swapping) counted(old Statement) (Statement, bool) {
	switch v := old.(type) {
	case Price:
		return s.priced(v)
	case Spare:
		if v.Percent != nil {
			return s.spared(v)
		}
	}
	if s.to.class != tNumber || s.to.num.Den != 1 {
		return nil, false
	}
	n, from := Whole(s.to.num.Num), Whole(s.from.num.Num)
	switch v := old.(type) {
	case Laid:
		return Laid{Rows: n}, !v.More && (s.any || v.Rows == from)
	case Opened:
		return Opened{Boxes: n}, !v.More && (s.any || v.Boxes == from)
	case Plank:
		v.PerBox = &n
		return v, old.(Plank).PerBox != nil && *old.(Plank).PerBox == from && !s.any
	}
	return nil, false
}

func distance(a, b length.Length) length.Length {
	if a > b {
		return a - b
	}
	return b - a
}

func clone(s *Size) *Size {
	if s == nil {
		return nil
	}
	c := *s
	return &c
}

// instead puts a wall or a way in place of the one said last: "no, north".
func (r *reader) instead() (Reading, bool) {
	if len(r.quantities()) > 0 || !r.has("no", "sorry", "not") || r.asks() || len(r.seq) > 4 {
		return Reading{}, false
	}
	wall := r.wallSaid()
	if _, ok := r.ctx.LastSet.(Start); ok && wall != "" && !r.has("start", "gap", "tight", "hidden", "door") {
		return Reading{Statements: []Statement{Start{wall}}}, true
	}
	return Reading{}, false
}
