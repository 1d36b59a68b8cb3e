package grammar

// retracting are words that take back the quantity before them, and backing the ones that may stand with them.
var (
	retracting = []string{"no", "sorry", "wait", "scratch", "oops", "actually", "rather"}
	backing    = []string{"make", "that", "it", "to", "a", "an", "i", "mean", "figure", "call", "say", "its", "is", "hang", "on", "the", "of"}
)

// meant lists the quantities that a message stands by: without the 10 of "ten no to twelve inches" and the 12 of "10 mm thick
// not 12".
func (r *reader) meant() []int {
	qs := r.quantities()
	out := make([]int, 0, len(qs))
	for k, q := range qs {
		if k+1 < len(qs) && r.takenBack(q, qs[k+1]) || k > 0 && r.notThis(qs[:k], q) {
			continue
		}
		out = append(out, q)
	}
	return out
}

// takenBack says whether only words that take back stand between two quantities of one measure.
func (r *reader) takenBack(q, next int) bool {
	back := false
	for j := q + 1; j < next; j++ {
		it := &r.items[j]
		switch {
		case isOne(it.word, retracting):
			back = true
		case it.word != "" && !isOne(it.word, backing), it.word == "" && it.mark != "," && it.mark != "-" && it.mark != "…" && it.mark != ".":
			return false
		}
	}
	return back && r.akin(q, next)
}

// notThis says whether "not" stands before a quantity that ends its sentence, and one of the same measure before that.
func (r *reader) notThis(before []int, q int) bool {
	if q == 0 || r.items[q-1].word != "not" {
		return false
	}
	for j := q + 1; j < len(r.items) && r.items[j].class != tSep; j++ {
		if r.items[j].says() || r.items[j].quantity() {
			return false
		}
	}
	for _, b := range before {
		if r.akin(b, q) {
			return true
		}
	}
	return false
}

// akin says whether one quantity may stand for another: both have as many sizes, of one class, or one of them is a bare number.
func (r *reader) akin(a, b int) bool {
	x, y := &r.items[a], &r.items[b]
	if len(x.sizes) != len(y.sizes) {
		return false
	}
	p, q := x.sizes[0].class, y.sizes[0].class
	return p == q || p == tNumber || q == tNumber
}
