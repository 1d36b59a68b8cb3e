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
