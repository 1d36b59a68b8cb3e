package material

import (
	"fmt"
	"math"

	"lastrow/calc/cut"
	"lastrow/calc/length"
)

// Wall is a stretch of wall that trim goes along, walked with the floor on the left. Corner is the angle within the floor
// at its end, to the next wall: 90 in a room's corner, 270 at a chimney breast; 0 where the trim stops at a casing.
type Wall struct {
	Name   string
	Length length.Length
	Corner float64
}

// EndKind is how a piece of trim ends.
type EndKind string

// The kinds of end.
const (
	AtCasing EndKind = "square"
	Inside   EndKind = "inside"
	Outside  EndKind = "outside"
)

// End is an end of a piece. Saw is the mitre's setting, 0 being square; an inside corner may be coped instead.
type End struct {
	Kind EndKind
	Saw  float64
}

// TrimPiece is a piece of trim, numbered in the order of the walk. Right and Left are its ends as seen by one who faces
// the wall; Length is along the wall, the back of the piece.
type TrimPiece struct {
	N           int
	Wall        string
	Length      length.Length
	Right, Left End
}

// Trim numbers the pieces along walls, in order. The walls are a closed walk where the last one has a corner.
func Trim(walls []Wall) []TrimPiece {
	walls = joined(walls)
	if len(walls) == 0 {
		return nil
	}
	before := endOf(walls[len(walls)-1].Corner)
	var out []TrimPiece
	for i, w := range walls {
		after := endOf(w.Corner)
		out = append(out, TrimPiece{N: i + 1, Wall: w.Name, Length: w.Length, Right: before, Left: after})
		before = after
	}
	return out
}

// joined makes one of walls that go straight on.
func joined(walls []Wall) []Wall {
	var out []Wall
	for _, w := range walls {
		if n := len(out); n > 0 && straight(out[n-1].Corner) {
			out[n-1].Length, out[n-1].Corner = out[n-1].Length+w.Length, w.Corner
			continue
		}
		out = append(out, w)
	}
	return out
}

func straight(corner float64) bool { return math.Abs(corner-180) < 0.01 }

func endOf(corner float64) End {
	switch {
	case corner == 0:
		return End{Kind: AtCasing}
	case corner > 180:
		return End{Outside, (corner - 180) / 2}
	}
	return End{Inside, (180 - corner) / 2}
}

// Stock is the length of stick that the piece takes: a mitre at an outside corner reaches past the wall by the thickness
// times the tangent of the saw's setting, rounded up to the nanometre.
func (p TrimPiece) Stock(thick length.Length) length.Length {
	l := p.Length
	for _, e := range []End{p.Right, p.Left} {
		if e.Kind == Outside {
			l += length.Length(math.Ceil(float64(thick) * math.Tan(e.Saw*math.Pi/180)))
		}
	}
	return l
}

// leastStick is the shortest stick that trim is joined from.
const leastStick = length.Inch

// Sticks cuts lengths of trim from sticks. A length over a stick's is made of whole sticks and a rest, joined on a stud. A
// stick under an inch is an error.
func Sticks(lengths []length.Length, stick, kerf length.Length) (p cut.Plan, joints int, err error) {
	if stick < leastStick {
		return p, 0, fmt.Errorf("a stick of %s is too short to cut from", stick)
	}
	var pieces []length.Length
	for _, l := range lengths {
		for ; l > stick; l -= stick {
			pieces = append(pieces, stick)
			joints++
		}
		pieces = append(pieces, l)
	}
	p, err = cut.Sticks(pieces, stick, kerf)
	return p, joints, err
}
