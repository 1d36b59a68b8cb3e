package grammar

import (
	"math"
	"regexp"
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// rightTriples are ways to write the check of a right corner by 3, 4 and 5.
var rightTriples = regexp.MustCompile(`\b(?:3[ ,/-]{1,2}4[ ,/-]{1,2}5|6[ ,/-]{1,2}8[ ,/-]{1,2}10)($|[^\d/.]|\.(?:$|\s))`)

// threes makes one word of "3 4 5" where a corner is checked by it.
func threes(text string) string {
	if !strings.Contains(text, "3") && !strings.Contains(text, "6") {
		return text
	}
	low := strings.ToLower(text)
	for _, w := range []string{"square", "triangle", "method", "corner", "diagonal", "trick", "check"} {
		if strings.Contains(low, w) || strings.Contains(text, "3-4-5") {
			return rightTriples.ReplaceAllString(text, "threefourfive$1")
		}
	}
	return text
}

// threeFourFive gives the two sides of a corner checked by 3, 4 and 5, or by twice or thrice as much, where only the long
// side is said: "did a 3 4 5 in feet, the long side came 5 ft 1/2 in".
func (r *reader) threeFourFive(q *Question, qs *[]int) {
	if !r.has("345") || len(*qs) != 1 || len(r.items[(*qs)[0]].sizes) != 1 || r.items[(*qs)[0]].vague {
		return
	}
	long, ok := r.message.read(r.items[(*qs)[0]].sizes[0], bareRoom, r.lean)
	if !ok || long.Len < foot {
		return
	}
	unit := foot
	if long.System == length.Metric {
		unit = 100 * length.Millimetre
	}
	k := (long.Len + 5*unit/2) / (5 * unit)
	if miss := long.Len - 5*k*unit; k == 0 || miss*33 > long.Len || miss*33 < -long.Len {
		return
	}
	q.Given = append(q.Given, given(term.SideA, term.Len(3*k*unit)), given(term.SideB, term.Len(4*k*unit)), given(term.Diagonal, term.Len(long.Len)))
	*qs = nil
}

// needsDiagonal says whether a corner is asked to be square with its two sides alone.
func (r *reader) needsDiagonal(q *Question) bool {
	return q.Kind == term.AskSquare && hasName(q.Given, term.SideA) && hasName(q.Given, term.SideB) && !hasName(q.Given, term.Diagonal) &&
		(r.hasWord("is", "are", "if") && r.has("square") || r.has("check")) && !r.has("diagonal", "what", "how", "howmuch", "howlong", "345", "across") && !r.hasWord("make", "should", "for", "get")
}

// edge is one length of a triangle: a token, or two that are feet and inches.
type edge struct {
	t    token
	size length.Length
}

// triangle puts the longest of three lengths at the diagonal: no side of a room is longer. Where there are more numbers,
// some are feet and inches: "9 x 12 and 15 1".
func (r *reader) triangle(q *Question, qs *[]int) {
	var all []token
	for _, i := range *qs {
		if r.items[i].vague {
			return
		}
		all = append(all, r.items[i].sizes...)
	}
	if len(all) < 3 || len(all) > 6 {
		return
	}
	l := r.lean3(*qs)
	sides := r.edges(all, l)
	if len(all) > 3 {
		sides = r.merged(all, l)
	}
	if len(sides) != 3 {
		return
	}
	k := longest(sides)
	if sides[k].size < 2*foot {
		return
	}
	names := []term.Name{term.SideA, term.SideB}
	for i, s := range sides {
		if i == k {
			q.Given = set(q.Given, given(term.Diagonal, term.Len(s.size)))
			continue
		}
		q.Given = set(q.Given, given(names[0], term.Len(s.size)))
		names = names[1:]
	}
	*qs = nil
}

// edges reads tokens as lengths of walls; nil where one can't be.
func (r *reader) edges(ts []token, l leaning) []edge {
	var out []edge
	for _, t := range ts {
		size, ok := r.message.read(t, bareRoom, l)
		if !ok {
			return nil
		}
		out = append(out, edge{t, size.Len})
	}
	return out
}

func longest(e []edge) int {
	k := 0
	for i := range e {
		if e[i].size > e[k].size {
			k = i
		}
	}
	return k
}

// merged tries which numbers are feet and the inches after them, and gives the one way to three lengths that are
// nearly a right corner.
func (r *reader) merged(ts []token, l leaning) []edge {
	var found []edge
	ways := 0
	for way := 1; way < 1<<(len(ts)-1); way++ {
		if e := r.edges(pairUp(ts, way), l); len(e) == 3 && nearlyRight(e) {
			found, ways = e, ways+1
		}
	}
	if ways != 1 {
		return nil
	}
	return found
}

// pairUp makes feet and inches of the bare numbers at each bit set and after it; nil where they can't be.
func pairUp(ts []token, way int) []token {
	var out []token
	for i := 0; i < len(ts); i++ {
		if way>>i&1 == 0 {
			out = append(out, ts[i])
			continue
		}
		if i+1 == len(ts) || way>>(i+1)&1 == 1 {
			return nil
		}
		a, b := ts[i], ts[i+1]
		if a.class != tNumber || b.class != tNumber || !a.num.Whole() || b.num.Num >= 12*b.num.Den || b.at-a.end != 1 {
			return nil
		}
		out = append(out, pairOf(a, b))
		i++
	}
	return out
}

// nearlyRight says whether the longest of three lengths is within a fiftieth of the diagonal of the other two.
func nearlyRight(e []edge) bool {
	k := longest(e)
	d, sum := e[k].size.MM(), 0.0
	for i := range e {
		if i != k {
			sum += e[i].size.MM() * e[i].size.MM()
		}
	}
	return math.Abs(math.Sqrt(sum)-d) < d/50
}

// lean3 leans to metres where three bare lengths are small and one has decimals: 3.6, 3.2 and 4.81.
func (r *reader) lean3(qs []int) leaning {
	if r.lean.sure {
		return r.lean
	}
	dec := false
	for _, i := range qs {
		for _, t := range r.items[i].sizes {
			if t.class != tNumber || t.num.Float() >= 9 {
				return r.lean
			}
			dec = dec || r.decimal(t)
		}
	}
	if dec {
		return leaning{length.Metric, true}
	}
	return r.lean
}

// taperOfRoom reads the widths of a room at its two ends, which are nearly alike, and its length.
func (r *reader) taperOfRoom(q *Question, qs *[]int) {
	if len(*qs) != 3 {
		return
	}
	var l [3]length.Length
	for k, i := range *qs {
		size, ok := r.message.read(r.items[i].sizes[0], bareRoom, r.lean)
		if !ok || len(r.items[i].sizes) > 1 || r.items[i].vague || size.Len < 4*foot {
			return
		}
		l[k] = size.Len
	}
	if d := distance(l[0], l[1]); d*20 > l[0] {
		return
	}
	q.Given = append(q.Given, given(term.WidthHere, term.Len(l[0])), given(term.WidthThere, term.Len(l[1])), given(term.Length, term.Len(l[2])))
	*qs = nil
}
