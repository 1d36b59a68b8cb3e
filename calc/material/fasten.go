package material

import (
	"math/big"

	"lastrow/calc/length"
)

// Spaced is screws or nails in a line: how many, and how far apart they come to be.
type Spaced struct {
	N       int64
	Spacing length.Length
}

// Line spaces fastenings evenly along a run with one at a set distance from each end, no further apart than asked, and
// counts both ends. A run too short for two is held by one.
func Line(run, most, end length.Length) Spaced {
	between := run - 2*end
	if between <= 0 {
		return Spaced{N: 1}
	}
	gaps := length.Up(big.NewRat(int64(between), int64(most)))
	return Spaced{N: gaps + 1, Spacing: between / length.Length(gaps)}
}

// ScrewLength is what a screw measures that goes through the fixture and so far into the concrete, and the first length
// in the shops not under it: quarter inches from 1 1/4 in, or 5 mm steps from 30 mm.
func ScrewLength(fixture, embedment length.Length, s length.System) (exact, stock length.Length) {
	exact = fixture + embedment
	step, least := length.Inch/4, 5*length.Inch/4
	if s == length.Metric {
		step, least = 5*length.Millimetre, 30*length.Millimetre
	}
	return exact, max(least, (exact+step-1)/step*step)
}

// Bit is the carbide bit for a concrete screw: 5/32 in for a 3/16 in screw, 3/16 in for a 1/4 in screw (trade practice;
// the screw's own sheet rules). It is false for a screw of another size.
func Bit(screw length.Length) (length.Length, bool) {
	switch screw {
	case 3 * length.Inch / 16:
		return 5 * length.Inch / 32, true
	case length.Inch / 4:
		return 3 * length.Inch / 16, true
	}
	return 0, false
}

// Penny is a nail by its old size.
type Penny struct {
	Size   string
	Length length.Length
}

// Pennies are the nails of the carpentry textbooks, from the shortest.
var Pennies = []Penny{
	{"2d", quarter(4)}, {"3d", quarter(5)}, {"4d", quarter(6)}, {"5d", quarter(7)}, {"6d", quarter(8)}, {"7d", quarter(9)},
	{"8d", quarter(10)}, {"9d", quarter(11)}, {"10d", quarter(12)}, {"12d", quarter(13)}, {"16d", quarter(14)}, {"20d", quarter(16)},
	{"60d", quarter(24)},
}

func quarter(n int64) length.Length { return length.Length(n) * length.Inch / 4 }

// NailFor is the shortest nail at least three times as long as the trim is thick (US Navy Builder training manual) that
// also goes 3/4 in into the stud behind a wall board (common practice). It is false where no nail is long enough.
func NailFor(trim, board length.Length) (Penny, bool) {
	need := max(3*trim, trim+board+3*length.Inch/4)
	for _, p := range Pennies {
		if p.Length >= need {
			return p, true
		}
	}
	return Penny{}, false
}

// Penetration is how far a nail goes into what stands behind the trim and the wall board.
func Penetration(nail, trim, board length.Length) length.Length { return max(0, nail-trim-board) }
