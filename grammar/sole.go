package grammar

import (
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// likelySole reads the one size of a statement whose kind is guessed and has one place for it.
func (r *reader) likelySole(k term.Kind, q int) (Reading, bool) {
	if len(r.items[q].sizes) > 1 || r.items[q].vague || r.relative(q) || r.chance(q, nowhere) >= likelier {
		return Reading{}, false
	}
	switch k {
	case term.SetGap, term.SetFirstRow, term.SetLeastEnd, term.SetLeastStagger, term.SetLeastRow, term.SetKerf:
		s := settingOf(term.Name(k))
		if v, ok := r.soleSize(q, s); ok {
			return r.tell(placed{by: map[term.Name]value{s.name: v}}.build())
		}
	case term.SetReading:
		return r.likelyDamp(q)
	case term.SetPrice:
		return r.likelyPrice(q)
	case term.SetSpare:
		return r.spareBoxes()
	case term.SetHeight:
		s := settingOf(r.heightNamed())
		if v, ok := r.soleSize(q, s); ok {
			return r.tell([]Statement{Height{s.name, v.sizes[0]}})
		}
	}
	return Reading{}, false
}

// settingOf is the place of a name in a statement.
func settingOf(n term.Name) *slot {
	for i := range settings {
		if settings[i].name == n {
			return &settings[i]
		}
	}
	return nil
}

// soleSize reads a size for a place in the message's system, or in millimetres where it is far from any there.
func (r *reader) soleSize(q int, s *slot) (v value, ok bool) {
	t := r.items[q].sizes[0]
	if t.class == tTime && strings.HasSuffix(r.src[t.at:t.end], "min") {
		t.class = tNumber // the least, and no time
	}
	for _, l := range []leaning{r.lean, {length.Metric, true}} {
		size, read := r.message.read(t, s.bare, l)
		if !read || s.lo > 0 && far(size.Len, s) || s.lo == 0 && size.Len > s.hi || outside(s.name, size.Len) != "" {
			continue
		}
		v = value{sizes: []Size{size}, term: term.Len(size.Len), item: q}
		return v, !r.doubtfulGap(s.name, v)
	}
	return v, false
}

// heightNamed is what a message about a height tells of: the floor beyond a doorway, where nothing else is named.
func (r *reader) heightNamed() term.Name {
	switch {
	case r.has("ceiling", "headroom"):
		return term.Ceiling
	case r.has("riser"):
		return term.Riser
	case r.has("sill", "track"):
		return term.Sill
	case r.has("door") && r.hasWord("under", "gap", "below"):
		return term.DoorGap
	}
	return term.OtherHeight
}

// likelyDip reads the two sizes of a reading with a straightedge: the hollow, and the length that it lies under.
func (r *reader) likelyDip(qs []int) (Reading, bool) {
	if !r.has("dip", "straightedge", "flat", "reading", "gap") {
		return Reading{}, false
	}
	dip, over := settingOf(term.Dip), settingOf(term.Straightedge)
	for _, two := range [][2]int{{qs[0], qs[1]}, {qs[1], qs[0]}} {
		d, ok1 := r.soleSize(two[0], dip)
		s, ok2 := r.soleSize(two[1], over)
		if ok1 && ok2 && !r.items[two[0]].vague && !r.items[two[1]].vague {
			return r.tell([]Statement{Measured{Dip: &d.sizes[0], Straightedge: &s.sizes[0]}})
		}
	}
	return Reading{}, false
}

// likelyDamp reads a moisture reading whose test is named, or follows from what is measured: pounds are those of a calcium
// chloride test, a small share is that of wood, a large one a humidity.
func (r *reader) likelyDamp(q int) (Reading, bool) {
	t := r.items[q].sizes[0]
	test := r.testSaid()
	switch {
	case test != "":
	case r.hasWord("cm"):
		test = "carbide"
	case t.class == tMass && t.unit == "lb":
		test = "calcium-chloride"
	case t.num.Float() >= 30 && r.has("concrete", "moisture", "test", "reading"):
		test = "rh"
	case t.class == tPercent && t.num.Float() >= 5 && r.has("wood", "plank", "subfloor") || t.num.Float() >= 5 && t.num.Float() < 30 && r.has("wood"):
		test = "wood"
	}
	m := Measured{Test: test}
	switch v := reading(t, test).(type) {
	case term.Percent:
		p := Thousandths(v)
		m.Percent = &p
	case term.Number:
		n, err := scale(t.num, 100)
		c := Cents(n)
		if m.Pounds = &c; err != nil {
			return Reading{}, false
		}
	default:
		return Reading{}, false
	}
	if test == "" {
		return Reading{}, false
	}
	return r.tell([]Statement{m})
}

// otherGoods are goods whose price no job keeps.
var otherGoods = []string{"roll", "underlay", "trim", "stick", "bag", "leveler", "tube", "caulk", "transition", "nail", "screw", "film", "tape"}

// likelyPrice reads a bare number as the price of a box. That of other goods is said to be for questions alone.
func (r *reader) likelyPrice(q int) (Reading, bool) {
	t := r.items[q].sizes[0]
	if t.class != tMoney && t.class != tNumber || r.byArea(q) {
		return Reading{}, false
	}
	if r.has(otherGoods...) {
		return r.refused(term.SetPrice, "a job keeps the price of a box of planks alone; give that of other goods in the question that needs it"), true
	}
	n, err := scale(t.num, 100)
	if !r.has("box", "price") || err != nil || n <= 0 {
		return Reading{}, false
	}
	return r.tell([]Statement{Price{Cents(n), lower(t.unit)}})
}

// likelyBare reads a statement without a size: no spare, no kerf, a first row as wide as the planks are.
func (r *reader) likelyBare(k term.Kind) (Reading, bool) {
	switch {
	case k == term.SetKerf && r.has("kerf", "cut", "missing") && (r.has("no") || r.hasWord("nothing", "zero")):
		return r.tell([]Statement{Limit{term.Kerf, Size{0, r.lean.system}}})
	case k == term.SetSpare && r.says2("no", "spare"):
		none := Thousandths(0)
		return r.tell([]Statement{Spare{Percent: &none}})
	case k == term.SetSpare:
		return r.spareBoxes()
	case k == term.SetSubfloor && r.subfloor() != "" && !(r.has("wood") && r.has("concrete")):
		return r.tell([]Statement{Subfloor{What: r.subfloor(), Heated: r.has("heated")}})
	case k == term.SetFirstRow && r.hasWord("full", "whole", "uncut"):
		return r.fullRow()
	}
	return Reading{}, false
}

// says2 says whether one meaning follows another at once.
func (r *reader) says2(a, b string) bool {
	for i := 0; i+1 < len(r.seq); i++ {
		if r.seq[i].is == a && r.seq[i+1].is == b {
			return true
		}
	}
	return false
}

// fullRow makes the first row as wide as the job's planks.
func (r *reader) fullRow() (Reading, bool) {
	var wide *Size
	for _, s := range r.ctx.Statements {
		if p, ok := s.(Plank); ok && p.Width != nil {
			wide = p.Width
		}
	}
	if wide == nil {
		return Reading{Problem: &Problem{Outcome: "ask-back", Kind: term.SetFirstRow, Read: r.gist(), Example: "plank 7 5/8 wide", Missing: []term.Name{term.PlankWidth}, Setting: term.SetPlank}}, true
	}
	return r.tell([]Statement{Limit{term.FirstRow, *wide}})
}

// spareBoxes reads whole boxes that are to be left over, as the planks in them.
func (r *reader) spareBoxes() (Reading, bool) {
	n := r.boxesCounted()
	if n == 0 {
		return Reading{}, false
	}
	per := r.planksPerBox()
	if per == 0 {
		return Reading{Problem: &Problem{Outcome: "ask-back", Kind: term.SetSpare, Read: r.gist(), Example: "8 per box", Missing: []term.Name{term.PlanksPerBox}, Setting: term.SetPlank}}, true
	}
	n *= per
	return r.tell([]Statement{Spare{Planks: &n}})
}
