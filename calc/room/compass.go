package room

import (
	"math"

	"lastrow/calc/geom"
)

// The sides between, for walls that run at a slant: a corner cut off, the flanks of a bay.
const (
	NorthEast Side = "north-east"
	SouthEast Side = "south-east"
	SouthWest Side = "south-west"
	NorthWest Side = "north-west"
)

// Slanted stands for the one wall of a room that runs along no axis.
const Slanted Side = "slanted"

// compass lists the sides clockwise.
var compass = [...]Side{North, NorthEast, East, SouthEast, South, SouthWest, West, NorthWest}

// number is a side's place in the compass; -1 where it has none.
func (s Side) number() int {
	for i, c := range compass {
		if s == c {
			return i
		}
	}
	return -1
}

// Opposite is the side across the room; "" where there is none.
func (s Side) Opposite() Side { return s.turn(4) }

// outward is the side that a wall faces out to, by the way that it runs with the floor on its left.
func (s Side) outward() Side { return s.turn(2) }

func (s Side) turn(eighths int) Side {
	if i := s.number(); i >= 0 {
		return compass[(i+eighths)%len(compass)]
	}
	return ""
}

// vector is a step towards the side: east and north are positive.
func (s Side) vector() (x, y float64) {
	if i := s.number(); i >= 0 {
		x, y = math.Sincos(float64(i) * math.Pi / 4)
	}
	return x, y
}

// Slants says whether the side lies between two others.
func (s Side) Slants() bool { return s.number()%2 == 1 }

// Toward is the side nearest to the way from one point to another.
func Toward(a, b geom.Point) Side {
	turn := math.Atan2(float64(b.X-a.X), float64(b.Y-a.Y)) / (math.Pi / 4)
	return compass[(int(math.Round(turn))+len(compass))%len(compass)]
}
