package layout

import "lastrow/calc/length"

// span is an interval of lengths, both ends in it.
type span struct{ lo, hi length.Length }

func (s span) empty() bool { return s.lo > s.hi }

// marked is the last mark of a tape that is not over l and still in the span, or l itself where there is none.
func (s span) marked(l, mark length.Length) length.Length {
	if m := l - l%mark; m >= s.lo {
		return m
	}
	return l
}

// markedUp is the first mark that is not under l, or l itself where it would lie outside the span.
func (s span) markedUp(l, mark length.Length) length.Length {
	if m := l + (mark-l%mark)%mark; m <= s.hi {
		return m
	}
	return l
}

// and is what two spans have in common.
func (s span) and(t span) span { return span{max(s.lo, t.lo), min(s.hi, t.hi)} }

// starts gives the lengths that the first piece of a run longer than one plank may have, so that it and the last piece
// are at least the least long. The first span takes one plank more than the second to fill by whole planks, and leaves
// a first and a last piece that come to less than a plank between them.
//
// With ρ what is left over of the run by whole planks (more than nothing, up to a plank): first + last is ρ, or ρ and a
// plank more.
func starts(run, plank, least length.Length) (short, long span) {
	rho := leftOver(run, plank)
	short = span{least, rho - least}
	long = span{max(least, rho), min(plank, rho+plank-least)}
	return short, long
}

// leftOver is what a run is longer than a number of whole planks: more than nothing, at most a plank.
func leftOver(run, plank length.Length) length.Length {
	return run - (run-1)/plank*plank
}

// lastPiece is the length of the last piece that a first one leaves: more than nothing, at most a plank.
func lastPiece(run, plank, first length.Length) length.Length {
	return leftOver(run-first, plank)
}

// wholes is the number of whole planks between the first piece and the last.
func wholes(run, plank, first length.Length) int {
	return int((run - first - 1) / plank)
}

// apart is the least distance between the joints of two runs. Each has its joints one plank apart from its first to its
// last; more is true where either has none.
func apart(first, last, otherFirst, otherLast, plank length.Length) length.Length {
	d := otherFirst - first
	most, least := (last-first)/plank, -((otherLast - otherFirst) / plank)
	n := min(max(floorDiv(d, plank), least), most)
	best := abs(d - n*plank)
	if n < most {
		best = min(best, abs(d-(n+1)*plank))
	}
	return best
}

func floorDiv(a, b length.Length) length.Length {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

func abs(l length.Length) length.Length {
	if l < 0 {
		return -l
	}
	return l
}
