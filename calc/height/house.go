package height

import (
	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// Landing is the end of a flight that the new floor covers, the treads left bare.
type Landing string

// The ends of a flight.
const (
	Lower Landing = "lower"
	Upper Landing = "upper"
)

// Raise gives a flight's risers, lowest first, after the floor at one end of it is raised. Raising the lower floor takes
// from the first riser, raising the upper one adds to the last.
func Raise(flight []length.Length, at Landing, buildUp length.Length) []length.Length {
	after := append([]length.Length(nil), flight...)
	switch {
	case len(after) == 0:
	case at == Upper:
		after[len(after)-1] += buildUp
	default:
		after[0] -= buildUp
	}
	return after
}

// Spread is the largest riser less the smallest, over the whole flight: not between neighbours.
func Spread(flight []length.Length) length.Length {
	least, most := flight[0], flight[0]
	for _, r := range flight {
		least, most = min(least, r), max(most, r)
	}
	return most - least
}

// StairKept says whether a flight keeps the highest riser and the spread of 2018 IRC R311.7.5.1.
func StairKept(flight []length.Length) (height, spread bool) {
	height = true
	for _, r := range flight {
		height = height && r <= limit.RiserMost.Inch
	}
	return height, Spread(flight) <= limit.RiserSpread.Inch
}

// CeilingKept says whether a ceiling keeps the least height of a habitable room (2018 IRC R305.1), or of a bath or
// laundry room.
func CeilingKept(height length.Length, bath bool) bool {
	if bath {
		return height >= limit.CeilingBath.Inch
	}
	return height >= limit.CeilingLeast.Inch
}

// SillKept says whether a sill is low enough to escape by (2018 IRC R310.2.2), and high enough to need no fall
// protection over a deep drop (R312.2). Raising the floor helps the first and hurts the second.
func SillKept(height length.Length) (escape, fall bool) {
	return height <= limit.SillMost.Inch, height >= limit.SillLeast.Inch
}

// EgressKept says whether a floor lies near enough under the top of the threshold of the required egress door, and not
// over it (2018 IRC R311.3.1). It is no allowance for a step between rooms.
func EgressKept(drop length.Length) bool { return drop >= 0 && drop <= limit.EgressDrop.Inch }

// GuardKept says whether a guard still stands high enough over the raised floor (2018 IRC R312.1.2).
func GuardKept(height, buildUp length.Length) bool {
	return height-buildUp >= limit.GuardLeast.Inch
}
