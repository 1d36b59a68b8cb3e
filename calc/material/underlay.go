package material

import (
	"fmt"
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/plank"
)

// Strips is underlay, or film, laid in strips side by side along a floor.
type Strips struct {
	N      int64         // strips across the floor
	Length length.Length // of each
	Rolls  int64
	Joins  int64 // seams across a strip, where it is pieced end to end
	Pieced bool
	roll   plank.Roll
}

// StripCount is the strips that it takes to get across: one, or 1 + (across - width) / (width - lap), rounded up.
func StripCount(across, width, lap length.Length) int64 {
	if across <= width {
		return 1
	}
	return 1 + length.Up(big.NewRat(int64(across-width), int64(width-lap)))
}

// Underlay lays strips of a roll along a floor's length, of a roll that CheckRoll has nothing against. A strip is pieced
// from what rolls leave where that is allowed, or where no roll is as long as the strip.
func Underlay(along, across length.Length, roll plank.Roll, mayPiece bool) Strips {
	s := Strips{N: StripCount(across, roll.Width, roll.Overlap), Length: along, roll: roll}
	if along > roll.Length || mayPiece {
		s.Pieced = true
		s.Rolls, s.Joins = pieced(s.N, along, roll)
		return s
	}
	s.Rolls = length.Up(big.NewRat(s.N, int64(roll.Length/along)))
	return s
}

// pieced cuts n strips one after the other; a strip goes on with the next roll, lapped at the join, where one ends. An
// end no longer than the lap is thrown away.
func pieced(n int64, along length.Length, roll plank.Roll) (rolls, joins int64) {
	reach := roll.Length - roll.Overlap
	left := length.Length(0)
	for range n {
		need := along
		if left > roll.Overlap && left < need {
			need, left = need-(left-roll.Overlap), 0
			joins++
		}
		if left < need {
			fresh := 1 + max(0, length.Length(length.Up(big.NewRat(int64(need-roll.Length), int64(reach)))))
			rolls, joins = rolls+int64(fresh), joins+int64(fresh-1)
			left = roll.Length + (fresh-1)*reach
		}
		left -= need
	}
	return rolls, joins
}

// Run is the length of all strips together.
func (s Strips) Run() length.Length { return length.Length(s.N) * s.Length }

// Tape is the length of the seams: those between strips, and the joins across them.
func (s Strips) Tape() length.Length {
	return length.Length(s.N-1)*s.Length + length.Length(s.Joins)*s.roll.Width
}

// RollsByArea is the rule of thumb by area, which takes in no seams: too few where strips may not be pieced.
func RollsByArea(floor length.Area, roll plank.Roll) int64 {
	return length.Up(floor.Over((roll.Width - roll.Overlap).Times(roll.Length)))
}

// CheckRoll says what is wrong with a roll: a lap as wide as the roll covers nothing.
func CheckRoll(r plank.Roll) error {
	switch {
	case r.Width < 50*length.Millimetre || r.Length < 300*length.Millimetre:
		return fmt.Errorf("a roll of %s by %s is no underlay", r.Width, r.Length)
	case r.Overlap < 0 || 2*r.Overlap > min(r.Width, r.Length):
		return fmt.Errorf("a lap of %s on a roll %s wide covers next to nothing", r.Overlap, r.Width)
	}
	return nil
}
