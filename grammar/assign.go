package grammar

import (
	"sort"
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// value is a quantity read for a slot.
type value struct {
	sizes []Size
	term  term.Value
	flat  Flat
	item  int
}

// placing is a way to put the quantities of a message into slots.
type placing struct {
	slot  []int // by quantity; -1 where it goes nowhere
	value []value
	score float64
}

// fits is one quantity in one slot, and how well it sits there.
type fits struct {
	slot  int
	value value
	score float64
}

// place puts the quantities at the given items into the slots, one each, so that units, nearby words, sizes and order
// fit best. tie says that another way, with other values, fits as well.
func (m *message) place(qs []int, slots []slot, l leaning) (best placing, tie bool) {
	if len(qs) > 12 {
		return placing{}, false
	}
	options := make([][]fits, len(qs))
	for i, q := range qs {
		options[i] = m.options(q, slots, l)
	}
	s := search{options: options, best: placing{score: -1e9}, second: -1e9, used: make([]bool, len(slots)), now: make([]int, len(qs))}
	s.rest = make([]float64, len(qs)+1)
	for i := len(qs) - 1; i >= 0; i-- {
		top := 0.0
		if len(options[i]) > 0 {
			top = max(0, options[i][0].score)
		}
		s.rest[i] = s.rest[i+1] + top
	}
	s.try(0, 0)
	return s.best, s.second > s.best.score-0.25 && s.swapped()
}

// options gives the slots that a quantity can go to, best first.
func (m *message) options(q int, slots []slot, l leaning) []fits {
	var out []fits
	if _, rate := m.areaRate(q); rate || m.countsStrangers(q) || !m.telling && m.chance(q, nowhere) >= surely {
		return nil
	}
	for k := range slots {
		v, fit, ok := m.valueFor(q, &slots[k], l)
		if !ok || m.never(q, &slots[k], v) || m.countsOther(q, &slots[k]) || slots[k].name == term.FloorArea && m.ofOneBox() {
			continue
		}
		likely := m.likelyIn(q, &slots[k])
		near := m.nearness(q, slots[k].cues)
		if likely < likelier && (m.barred(q, &slots[k], v, near) || fit < 0 && near < 5) || likely < unlikely && near < 1 && m.guessable(q) {
			continue
		}
		switch {
		case slots[k].stacked && m.heaped(q):
			fit += 2
		case slots[k].not != "" && m.nearness(q, slots[k].not) > 5:
			fit -= 4
		}
		out = append(out, fits{k, v, 2 + near + fit + counts*likely - 0.3*float64(k)/float64(len(slots))})
	}
	sort.SliceStable(out, func(a, b int) bool { return out[a].score > out[b].score })
	if len(out) > 6 {
		out = out[:6]
	}
	return out
}

// never says whether a quantity is no size of a slot's at all: a part of a plank, a difference, a face that no plank has.
func (m *message) never(q int, s *slot, v value) bool {
	if s.name != term.PlankThickness && m.partOf(q) || resized[s.name] && m.relative(q) {
		return true
	}
	return s.bare == bareFace && s.dim == dLen && m.items[q].sizes[0].class == tNumber && s.hi > 0 && far(v.sizes[0].Len, s)
}

// barred says whether a quantity can't go to a slot by the words beside it, or their want, or its size.
func (m *message) barred(q int, s *slot, v value, near float64) bool {
	switch {
	case s.must && near < 2.5 && !(s.dim == dCount && m.ofThem(q)):
		return true
	case (s.dim == dLen || s.dim == dMoney) && (m.countsGoods(q) || s.dim == dLen && m.perBox(q) && m.items[q].sizes[0].class == tNumber):
		return true
	case m.countsPlanks(q, s, near):
		return true
	case (s.must || s.name == term.Perimeter && m.cents(m.items[q].sizes[0]) && m.at(q)) && s.dim == dLen && m.costs(q):
		return true
	case (s.must || s.spoken || s.name == term.Dip) && s.lo > 0 && len(v.sizes) == 1 && far(v.sizes[0].Len, s) && outside(s.name, v.sizes[0].Len) == "":
		return true
	}
	return s.stacked && near < 2.5 && !m.stacked(q)
}

// stacked says whether a quantity is laid on the one before: "8mm on 2mm", "12 + 2", "12mm and 3mm".
func (m *message) stacked(q int) bool {
	for j := q - 1; j >= 0 && j >= q-6; j-- {
		it := &m.items[j]
		switch {
		case it.quantity():
			return true
		case it.class == tSep && it.mark != "," || it.word == "to" || it.says() && it.word != "w" && !isOne(it.meaning, []string{"plus", "plank", "floor", "thick", "wood"}):
			return false
		}
	}
	return false
}

// partOf says whether a quantity is a part of a plank and no size: "a half plank".
func (m *message) partOf(q int) bool {
	t := m.items[q].sizes[0]
	return t.class == tNumber && len(m.items[q].sizes) == 1 && t.num.Num < t.num.Den && t.num.Num > 0 && q+1 < len(m.items) && m.items[q+1].meaning == "plank"
}

// resized are the names of sizes that are said to be so much more or less than they were.
var resized = map[term.Name]bool{
	term.Across: true, term.PlankWidth: true, term.PlankLength: true, term.FirstRow: true, term.Run: true, term.Gap: true, term.Ceiling: true, term.SideA: true, term.SideB: true,
	term.FloorArea: true, term.BoxCoverage: true,
}

// relative says whether a size is a difference and no size of its own: "2 ft longer", "an inch off the first row".
func (m *message) relative(q int) bool {
	if q+1 >= len(m.items) || len(m.items[q].sizes) > 1 {
		return false
	}
	next := m.items[q+1].word
	if m.items[q].sizes[0].class == tArea {
		return isOne(next, []string{"off", "more", "less", "bigger", "smaller"})
	}
	return isOne(next, []string{"longer", "wider", "narrower", "shorter", "bigger", "smaller", "thicker", "thinner", "taller"}) || next == "off" && m.offRow(q+2)
}

// offRow says whether "the first row", "the board" or the like stands at item i.
func (m *message) offRow(i int) bool {
	for ; i < len(m.items); i++ {
		if it := &m.items[i]; !isOne(it.word, []string{"the", "my", "our", "each", "both", "that", "this"}) {
			return isOne(it.meaning, []string{"firstrow", "lastrow", "row", "plank"})
		}
	}
	return false
}

// heaped says whether "+", "plus" or "on" stands between a quantity and the one before, and nothing else: "8+3".
func (m *message) heaped(q int) bool {
	if q < 2 || !m.items[q-2].quantity() {
		return false
	}
	it := &m.items[q-1]
	return it.mark == "+" || it.meaning == "plus" || it.word == "on" || it.word == "over"
}

// far says whether a size is far outside what is usual in a slot.
func far(l length.Length, s *slot) bool { return l > 3*s.hi || 3*l < s.lo }

// search tries every way, cutting off what can't be best.
type search struct {
	options [][]fits
	rest    []float64
	used    []bool
	now     []int
	best    placing
	second  float64
	other   []int // the slots of the second best
	steps   int
}

const most = 20000

func (s *search) try(i int, score float64) {
	if s.steps++; s.steps > most || score+s.rest[i] < s.second {
		return
	}
	if i == len(s.options) {
		s.finish(score)
		return
	}
	for k, f := range s.options[i] {
		if s.used[f.slot] {
			continue
		}
		s.used[f.slot], s.now[i] = true, k
		s.try(i+1, score+f.score-s.crossed(i, f.slot))
		s.used[f.slot] = false
	}
	s.now[i] = -1
	s.try(i+1, score)
}

// crossed is a small charge for each earlier quantity that went to a later slot.
func (s *search) crossed(i, slot int) float64 {
	charge := 0.0
	for j := 0; j < i; j++ {
		if s.now[j] >= 0 && s.options[j][s.now[j]].slot > slot {
			charge += 0.3
		}
	}
	return charge
}

// slots lists the slots of the way at hand.
func (s *search) slots() []int {
	out := make([]int, len(s.now))
	for i, k := range s.now {
		out[i] = -1
		if k >= 0 {
			out[i] = s.options[i][k].slot
		}
	}
	return out
}

// swapped says whether the two best ways put the same quantities in places, and two of them in each other's.
func (s *search) swapped() bool {
	moved := 0
	for i, a := range s.best.slot {
		b := s.other[i]
		if (a < 0) != (b < 0) {
			return false
		}
		if a != b {
			moved++
		}
	}
	return moved > 1
}

func (s *search) finish(score float64) {
	if score <= s.best.score {
		if score > s.second {
			s.second, s.other = score, s.slots()
		}
		return
	}
	s.second, s.other = s.best.score, s.best.slot
	s.best = placing{score: score, slot: make([]int, len(s.now)), value: make([]value, len(s.now))}
	for i, k := range s.now {
		s.best.slot[i] = -1
		if k >= 0 {
			s.best.slot[i], s.best.value[i] = s.options[i][k].slot, s.options[i][k].value
		}
	}
}

// valueFor reads a quantity as what the slot takes; fit says how usual its size is there.
func (m *message) valueFor(q int, s *slot, l leaning) (v value, fit float64, ok bool) {
	it := &m.items[q]
	v.item = q
	t := it.sizes[0]
	one := len(it.sizes) == 1
	switch s.dim {
	case dLen:
		if !one {
			return v, 0, false
		}
		size, ok := m.read(t, s.bare, l)
		v.sizes, v.term = []Size{size}, term.Len(size.Len)
		return v, s.usual(size.Len), ok
	case dPair, dPlank:
		if s.name == term.Room && q+1 < len(m.items) && isOne(m.items[q+1].meaning, []string{"tile", "oldfloor", "post", "window", "vinyl"}) {
			return v, 0, false
		}
		return m.several(it, s, l)
	case dArea:
		return m.areaFor(q, s, l)
	case dCount:
		ok = one && t.class == tNumber && t.num.Whole() && t.num.Num/t.num.Den <= 1_000_000 && !m.decimal(t) && (m.counts(q, s) || m.likelyIn(q, s) >= likelier)
		if ok {
			v.term = term.Count(t.num.Num / t.num.Den)
		}
		return v, 1, ok
	case dPercent:
		if t.class != tPercent {
			return v, 0, false
		}
		n, err := scale(t.num, 1000)
		if t.neg {
			n = -n
		}
		v.term = term.Percent(n)
		return v, 2, err == nil
	case dMoney:
		return m.moneyFor(q, s)
	case dMass:
		if t.class != tMass || !one {
			return v, 0, false
		}
		v.term = massOf(t)
		return v, 1, true
	case dAngle:
		if t.class != tAngle && t.class != tNumber {
			return v, 0, false
		}
		v.term = term.Degrees(t.num.Float())
		return v, 1, one
	}
	return v, 0, false
}

// massOf is a weight in kilograms; a pound is 0.45359237 kg (international yard and pound agreement, 1959).
func massOf(t token) term.Mass {
	if t.unit == "lb" {
		return term.Mass(t.num.Float() * 0.45359237)
	}
	return term.Mass(t.num.Float())
}

func (s *slot) usual(l length.Length) float64 {
	if s.hi > 0 && (l < s.lo || l > s.hi) {
		return -5
	}
	return 1
}

// several reads "a x b" as two sizes, or as a plank's three.
func (m *message) several(it *item, s *slot, l leaning) (v value, fit float64, ok bool) {
	n := len(it.sizes)
	if n < 2 || n > 3 || n == 3 && s.dim == dPair {
		return v, 0, false
	}
	ts := share(it.sizes)
	for i, t := range ts {
		as := s.bare
		if as == bareSide && !bothLarge(ts) {
			as = bareRoom
		}
		if i == 2 {
			as = bareThick
		}
		size, ok := m.read(t, as, m.together(ts, inMetres(m, ts, s, l)))
		if !ok {
			return v, 0, false
		}
		v.sizes = append(v.sizes, size)
	}
	v.item = -1
	if s.dim == dPlank {
		if v.sizes[0].Len > v.sizes[1].Len {
			v.sizes[0], v.sizes[1] = v.sizes[1], v.sizes[0]
		}
		if fit = plankFit(v.sizes); n == 2 && v.sizes[1].Len < 20*inch && v.sizes[0].Len < 20*inch || fit < 3 && n == 2 && !m.has("plank", "box") {
			return v, 0, false
		}
		return v, fit, true
	}
	v.term = term.Lens{v.sizes[0].Len, v.sizes[1].Len}
	if s.name == "roll" {
		fit = rollFit(v.sizes)
		return v, fit, fit > -20
	}
	if s.name == term.Room && min(v.sizes[0].Len, v.sizes[1].Len) < 4*foot && m.about != term.AskLeveler && !m.has("room", "hall", "wet", "floor", "closet") {
		return v, -5, true
	}
	if m.oddFeet(ts) && (s.bare == bareRoom || s.bare == bareSide) {
		return v, -5, true
	}
	return v, min(s.usual(v.sizes[0].Len), s.usual(v.sizes[1].Len)), true
}

// bothLarge says whether both of two bare sizes are larger than rooms are in feet.
func bothLarge(ts []token) bool { return ts[0].num.Float() >= 60 && ts[1].num.Float() >= 60 }

// inMetres leans to metres where the sides of a room are decimals that no one measures in feet: 4.2 x 3.1 is a room in
// metres, and thirteen square feet.
func inMetres(m *message, ts []token, s *slot, l leaning) leaning {
	if s.bare != bareRoom && s.bare != bareSide || s.dim != dPair || len(ts) != 2 || ts[0].class != tNumber || ts[1].class != tNumber {
		return l
	}
	if area := ts[0].num.Float() * ts[1].num.Float(); area < 40 && m.decimal(ts[0]) && m.decimal(ts[1]) {
		return leaning{length.Metric, true}
	}
	return l
}

// together leans to metres where two bare sizes are small decimals: 3.6 by 4.8.
func (m *message) together(ts []token, l leaning) leaning {
	if l.sure || len(ts) != 2 {
		return l
	}
	small, dec := true, m.gapInMillimetres()
	for _, t := range ts {
		small = small && t.num.Float() < 9
		dec = dec || m.decimal(t)
	}
	if small && dec {
		return leaning{length.Metric, true}
	}
	return l
}

// gapInMillimetres says whether a gap is in millimetres and nothing in inches.
func (m *message) gapInMillimetres() bool {
	for _, q := range m.quantities() {
		if t := m.items[q].sizes[0]; t.class == tLength && t.meas.Unit >= length.Millimetres && m.nearness(q, "gap expansion") > 4 {
			return true
		}
	}
	return false
}

// rollFit says how likely two sizes are a roll's: no side of a roll is both wide and long.
func rollFit(s []Size) float64 {
	short, long := min(s[0].Len, s[1].Len), max(s[0].Len, s[1].Len)
	if short > 10*foot {
		return -20
	}
	if short > 8*foot || short < 8*inch || long < 5*foot {
		return -5
	}
	return 2
}

func orFeet(unit string) string {
	if unit == "" {
		return "sq ft"
	}
	return unit
}

// oddFeet says whether a bare size has a fraction that nobody gives a room's feet in: 7 5/8.
func (m *message) oddFeet(ts []token) bool {
	for _, t := range ts {
		if t.class == tNumber && !m.decimal(t) && (t.num.Den > 2 || t.num.Den == 2 && t.num.Float() > 24) {
			return true
		}
	}
	return false
}

func plankFit(s []Size) float64 {
	fit := 3.0
	if s[0].Len > 13*inch || s[0].Len < 4*inch || s[1].Len < 24*inch {
		fit = 0
	}
	if s[0].Len < 2*inch || s[0].Len > 18*inch || s[1].Len < 10*inch || s[1].Len > 110*inch || s[0].Len > s[1].Len {
		fit = -4
	}
	if len(s) == 3 && (s[2].Len < 4*length.Millimetre || s[2].Len > inch) {
		fit -= 4
	}
	return fit
}

func (m *message) areaFor(q int, s *slot, l leaning) (v value, fit float64, ok bool) {
	t := m.items[q].sizes[0]
	v.item = q
	switch {
	case t.class == tArea && len(m.items[q].sizes) == 1:
		v.flat = flatOf(t)
	case t.class == tNumber && s.name == term.BoxCoverage && len(m.items[q].sizes) == 1 && (m.covers(q) || s.loose && (m.perBox(q) || m.at(q)) && !t.num.Whole()):
		v.flat = Flat{t.num, orFeet(m.areaSaid())}
		if m.areaSaid() == "" && l.sure && l.system == length.Metric {
			v.flat.Unit = "sq m"
		}
	case t.class == tNumber && s.bare == bareArea && len(m.items[q].sizes) == 1 && (s.loose || m.nearness(q, "area") > 2):
		v.flat = Flat{t.num, "sq ft"}
		if l.sure && l.system == length.Metric {
			v.flat.Unit = "sq m"
		}
	default:
		return v, 0, false
	}
	a := v.flat.Area()
	v.term = term.Area{Area: a}
	fit = 1.5
	if m.perBox(q) {
		fit = -4
	}
	if s.name == term.BoxCoverage {
		return v, coverageFit(a) + 2 - fit, a.M2() < 7 || fit < 0
	}
	return v, fit, true
}

// coverageFit says how likely an area is to be a box's: 0.8 to 6 m².
func coverageFit(a length.Area) float64 {
	if m2 := a.M2(); m2 < 0.8 || m2 > 6 {
		return -4
	}
	return 1
}

// at says whether "at" stands before a quantity: "312 sq ft at 23.9".
func (m *message) at(q int) bool { return q > 0 && m.items[q-1].word == "at" }

// areaSaid is the unit of the areas in a message, or "".
func (m *message) areaSaid() string {
	for i := range m.items {
		if m.items[i].quantity() && m.items[i].sizes[0].class == tArea {
			return m.items[i].sizes[0].unit
		}
	}
	return ""
}

// nearness scores how near the words for a slot stand to a quantity: the two nearest count.
func (m *message) nearness(q int, cues string) float64 {
	first, second := 0.0, 0.0
	m.around(q, func(it *item, score float64) {
		if !wordIn(cues, it.meaning) && !wordIn(cues, it.word) {
			return
		}
		if score > first {
			first, second = score, first
		} else if score > second {
			second = score
		}
	})
	return first + second/2
}

func wordIn(list, w string) bool {
	if w == "" {
		return false
	}
	for rest := list; rest != ""; {
		var one string
		one, rest, _ = strings.Cut(rest, " ")
		if one == w {
			return true
		}
	}
	return false
}

// around tells of the words on either side of a quantity, up to the next quantity, and how near they are: 6 next to it,
// less for each word that says something and for each mark between.
func (m *message) around(q int, tell func(*item, float64)) {
	m.beside(q, 1, tell)
	m.beside(q, -1, tell)
}

// beside tells of the words on one side: 1 for those after, -1 for those before.
func (m *message) beside(q, way int, tell func(*item, float64)) {
	near := 6.0
	for j := q + way; j >= 0 && j < len(m.items) && near > 0; j += way {
		it := &m.items[j]
		switch {
		case it.quantity():
			return
		case it.mark != "":
			near -= markCost(it.mark)
		case it.word != "":
			tell(it, near)
			near -= wordCost(it)
		}
	}
}

func markCost(mark string) float64 {
	switch {
	case ends(mark):
		return 4
	case mark == ",":
		return 2.5
	case mark == "x" || mark == ":":
		return 0
	}
	return 1
}

func wordCost(it *item) float64 {
	if it.says() {
		return 1
	}
	if it.word == "and" {
		return 1
	}
	return 0.25
}
