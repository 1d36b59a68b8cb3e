package layout

import (
	"math"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// frame turns the floor so that rows lie along X and are laid towards growing Y: X to the right and Y away from one who
// stands at the start wall. A quarter turn is exact; any other rounds to the nanometre, once each way.
type frame struct {
	cos, sin length.Length // of the quarter turn: the floor's direction of X
	slant    float64       // half the square root of two for a diagonal, else 0
}

// frames are the turns by the wall that the first row lies along.
var frames = map[room.Side]frame{
	room.South: {cos: 1},
	room.North: {cos: -1},
	room.East:  {sin: 1},
	room.West:  {sin: -1},
}

// turn gives the frame for rows in a direction from a wall. A diagonal begins at the corner to the right of the wall.
func turn(along Direction, wall room.Side) frame {
	if along != Diagonal {
		return frames[wall]
	}
	if wall == room.South || wall == room.East {
		return frame{cos: 1, sin: 1, slant: math.Sqrt2 / 2}
	}
	return frame{cos: -1, sin: -1, slant: math.Sqrt2 / 2}
}

// in turns a point of the floor into the frame.
func (f frame) in(p geom.Point) geom.Point {
	return f.scale(geom.Point{X: f.cos*p.X + f.sin*p.Y, Y: f.cos*p.Y - f.sin*p.X})
}

// out turns a point of the frame back onto the floor.
func (f frame) out(p geom.Point) geom.Point {
	return f.scale(geom.Point{X: f.cos*p.X - f.sin*p.Y, Y: f.sin*p.X + f.cos*p.Y})
}

func (f frame) scale(p geom.Point) geom.Point {
	if f.slant == 0 {
		return p
	}
	return geom.Point{X: length.Length(math.Round(float64(p.X) * f.slant)), Y: length.Length(math.Round(float64(p.Y) * f.slant))}
}

func turned(r geom.Region, by func(geom.Point) geom.Point) geom.Region {
	out := make(geom.Region, len(r))
	for i, ring := range r {
		out[i] = make(geom.Ring, len(ring))
		for j, p := range ring {
			out[i][j] = by(p)
		}
	}
	return out
}

// ends names the left-hand and the right-hand end of a row.
func (f frame) ends() (from, to string) {
	switch {
	case f.slant != 0 && f.cos > 0:
		return "south-west", "north-east"
	case f.slant != 0:
		return "north-east", "south-west"
	case f.cos > 0:
		return "west", "east"
	case f.cos < 0:
		return "east", "west"
	case f.sin > 0:
		return "south", "north"
	}
	return "north", "south"
}

// walls are the two walls that rows of a direction can start from.
func (d Direction) walls() [2]room.Side {
	if d == NorthSouth {
		return [2]room.Side{room.West, room.East}
	}
	return [2]room.Side{room.South, room.North}
}
