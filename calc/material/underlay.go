package material

import (
	"fmt"
	"math/big"

	"lastrow/calc/cut"
	"lastrow/calc/length"
	"lastrow/calc/plank"
)

// Part is a rectangle of floor: the main room, or a closet off it. Strips run along it.
type Part struct{ Along, Across length.Length }

// Strips is underlay, or film, laid in strips side by side.
type Strips struct {
	N      int64         // strips in all
	Run    length.Length // of all strips together
	Rolls  int64
	Joins  int64 // seams across a strip, where it is pieced end to end
	Pieced bool
	Tape   length.Length // the seams between strips of a part, and the joins across them
}

// StripCount is the strips that it takes to get across: one, or 1 + (across - width) / (width - lap), rounded up.
func StripCount(across, width, lap length.Length) int64 {
	if across <= width {
		return 1
	}
	return 1 + length.Up(big.NewRat(int64(across-width), int64(width-lap)))
}

// Underlay lays strips of a roll along each part of a floor, of a roll that CheckRoll has nothing against. A strip is
// pieced from what rolls leave where that is allowed, or where no roll is as long as some strip.
func Underlay(parts []Part, roll plank.Roll, mayPiece bool) Strips {
	var s Strips
	longest := length.Length(0)
	for _, p := range parts {
		n := StripCount(p.Across, roll.Width, roll.Overlap)
		s.N += n
		s.Run += length.Length(n) * p.Along
		s.Tape += length.Length(n-1) * p.Along
		longest = max(longest, p.Along)
	}
	if longest > roll.Length || mayPiece {
		s.Pieced = true
		s.Rolls, s.Joins = pieced(parts, roll)
		s.Tape += length.Length(s.Joins) * roll.Width
		return s
	}
	s.Rolls = wholeStrips(parts, roll, s.N)
	return s
}

// manyStrips is a count above which strips of several lengths are cut part by part, and not against each other.
const manyStrips = 500

// wholeStrips is the rolls for strips that are not pieced: so many of one length to a roll, or strips of several lengths
// cut from the fewest rolls.
func wholeStrips(parts []Part, roll plank.Roll, n int64) (rolls int64) {
	if len(parts) == 1 || n > manyStrips {
		for _, p := range parts {
			rolls += length.Up(big.NewRat(StripCount(p.Across, roll.Width, roll.Overlap), int64(roll.Length/p.Along)))
		}
		return rolls
	}
	var strips []length.Length
	for _, p := range parts {
		for range StripCount(p.Across, roll.Width, roll.Overlap) {
			strips = append(strips, p.Along)
		}
	}
	plan, err := cut.Sticks(strips, roll.Length, 0)
	if err != nil { // no part is empty and no strip is longer than a roll
		return n
	}
	return int64(len(plan.Sticks))
}

// pieced cuts strips one after the other; a strip goes on with the next roll, lapped at the join, where one ends. An end no
// longer than the lap is thrown away.
func pieced(parts []Part, roll plank.Roll) (rolls, joins int64) {
	reach := roll.Length - roll.Overlap
	left := length.Length(0)
	for _, p := range parts {
		for range StripCount(p.Across, roll.Width, roll.Overlap) {
			need := p.Along
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
	}
	return rolls, joins
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
