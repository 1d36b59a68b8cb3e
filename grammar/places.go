package grammar

import (
	_ "embed"
	"math/bits"
	"strconv"

	"lastrow/calc/length"
	"lastrow/calc/term"
	"lastrow/grammar/likely"
	"lastrow/grammar/words"
)

//go:embed likely/places.txt
var placeWeights string

// placeModel guesses at the place that a quantity goes to. It is learnt from the marked messages of testdata/phrasebook.
var placeModel = likely.Parse(placeWeights)

// nowhere is the place of a quantity that the bot has no use for: a time, an age, a count in passing.
const nowhere = "-"

// The probabilities from which a guess at a place is heeded, and what it counts beside the words' score.
const (
	likelier = 0.6  // it needs no word for the place, and a quantity may stay without one
	surely   = 0.85 // a quantity said in passing goes to no place
	unlikely = 0.02 // a bare number with no word for the place does not go there
	counts   = 3    // of a certain place
)

// chance is the probability of a place for quantity q, in the kind that the message is placed for; nothing for none.
func (m *message) chance(q int, place string) float64 {
	if m.about == none {
		return 0
	}
	all, ok := m.chances[q]
	if !ok {
		if m.chances == nil {
			m.chances = map[int]likely.Chances{}
		}
		all = placeModel.All(m.placeFeatures(q, m.about))
		m.chances[q] = all
	}
	return all.Of(place)
}

// likelyIn is how likely a quantity goes to a slot.
func (m *message) likelyIn(q int, s *slot) float64 {
	p := m.chance(q, string(s.name))
	switch s.name {
	case term.Room:
		p += m.chance(q, string(term.FloorArea))
	case term.Doors:
		p += m.chance(q, "door-width")
	}
	return min(p, 1)
}

// placedFor says of which kind the places are that the quantities go to. In a group nothing is guessed.
func (r *reader) placedFor(k term.Kind) {
	if r.ctx.Group {
		k = none
	}
	if r.about != k {
		r.about, r.chances = k, nil
	}
}

// guessable says whether a quantity is one bare number, of which a guess is asked.
func (m *message) guessable(q int) bool {
	it := &m.items[q]
	return m.about != none && len(it.sizes) == 1 && it.sizes[0].class == tNumber
}

// placeFeatures lists what a guess at the place of quantity q rests on, in a message of a kind: what it measures and how
// much, the words on either side, its number among the quantities.
func (m *message) placeFeatures(q int, kind term.Kind) []string {
	f := make([]string, 0, 64)
	is := m.items[q].measure()
	k := string(kind) + " "
	f = append(f, "all", "k "+k, "d "+is, "kd "+k+is, "b "+is+m.items[q].bulk(), "kb "+k+m.items[q].bulk())
	f = m.placeWords(f, q, -1, k)
	f = m.placeWords(f, q, 1, k)
	before, after := 0, 0
	for i := range m.items {
		if m.items[i].quantity() {
			if i < q {
				before++
			} else if i > q {
				after++
			}
		}
	}
	return append(f, "o "+strconv.Itoa(before)+is, "ko "+k+strconv.Itoa(before), "a "+strconv.Itoa(after), "n "+k+strconv.Itoa(before+after))
}

// placeWords adds the words on one side of a quantity, the nearest by their place, up to the fifth.
func (m *message) placeWords(f []string, q, way int, k string) []string {
	side := "L"
	if way > 0 {
		side = "R"
	}
	last := ""
	n := 0
	for i := q + way; i >= 0 && i < len(m.items) && n < 5; i += way {
		it := &m.items[i]
		w := it.shape()
		if w == "" {
			w = it.mark
		}
		if w == "" {
			continue
		}
		at := side + strconv.Itoa(n)
		if n < 2 {
			f = append(f, at+w, "k"+at+k+w)
		}
		if n == 1 {
			f = append(f, side+"p"+last+" "+w)
		}
		if is := it.sense(); is != "" {
			if n < 3 {
				f = append(f, at+"m"+is)
			}
			f = append(f, side+"~"+is, "k"+side+"~"+k+is)
		} else if it.meaning != words.Filler || n < 2 {
			f = append(f, side+"w"+w)
		}
		last = w
		n++
	}
	if n == 0 {
		f = append(f, side+"edge", "k"+side+"edge"+k)
	}
	return f
}

// measure is what a quantity measures, with the unit of a length.
func (it *item) measure() string {
	t := &it.sizes[0]
	switch n := len(it.sizes); {
	case n > 2:
		return "#triple"
	case n == 2:
		return "#pair"
	case t.class == tLength:
		return "#" + strconv.Itoa(int(t.meas.Unit))
	case t.class == tNumber && t.num.Den > 1:
		return "#part"
	}
	return it.dimension()
}

// bulk is how much a quantity is, in steps of two.
func (it *item) bulk() string {
	t := &it.sizes[0]
	n := t.num.Num * 64 / max(t.num.Den, 1)
	if t.class == tLength {
		n = int64(t.meas.Len / (length.Millimetre / 8))
	}
	return strconv.Itoa(bits.Len64(uint64(max(n, 0))))
}
