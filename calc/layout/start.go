package layout

import (
	"fmt"
	"math"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// start is a place to begin: the wall of the first row, or the corner where no wall lies along the rows.
type start struct {
	wall   room.Side
	corner bool
	frame  frame
}

func (s start) String() string {
	if s.corner {
		return string(s.wall) + " corner"
	}
	return string(s.wall) + " wall"
}

// way is a direction by the axis that it lies along, where it does.
func (s start) way(d Direction) Direction {
	switch {
	case s.frame.slanted():
		return d
	case s.frame.north == 0:
		return EastWest
	}
	return NorthSouth
}

// place is what the start is, without its side.
func (s start) place() string {
	if s.corner {
		return "in this corner"
	}
	return "at this wall"
}

// startsOf gives the two places that rows of a direction can begin at.
func startsOf(f *room.Floor, d Direction) ([2]start, error) {
	switch d {
	case EastWest:
		return [2]start{{wall: room.South, frame: frame{1, 0}}, {wall: room.North, frame: frame{-1, 0}}}, nil
	case NorthSouth:
		return [2]start{{wall: room.West, frame: frame{0, -1}}, {wall: room.East, frame: frame{0, 1}}}, nil
	case Diagonal:
		half := frame{math.Sqrt2 / 2, math.Sqrt2 / 2}
		return [2]start{{room.SouthEast, true, half}, {room.NorthWest, true, half.back()}}, nil
	}
	wall, ok := d.Wall()
	if !ok {
		return [2]start{}, fmt.Errorf("%q is no direction of rows", string(d))
	}
	e, why := f.Wall(wall)
	if why != "" {
		return [2]start{}, fmt.Errorf("%s: %s", d.name(), why)
	}
	turn := heading(e.A, e.B)
	return [2]start{startAt(f, e.Side, turn), startAt(f, e.Side.Opposite(), turn.back())}, nil
}

// startAt is the start at the wall that faces a side, or in the corner there where no wall lies foremost.
func startAt(f *room.Floor, wall room.Side, turn frame) start {
	var corners geom.Ring
	for _, e := range f.Main {
		corners = append(corners, turn.in(e.A))
	}
	foremost := boxOf(geom.Region{corners}).near
	s := start{wall: wall, corner: true, frame: turn}
	for _, e := range f.Main {
		if e.Side == wall && min(turn.in(e.A).Y, turn.in(e.B).Y) <= foremost+hair {
			s.corner = false
		}
	}
	return s
}

// startWall gives where to begin: as told, or a doorway's wall, so that the planks go under its jambs first; else the longest.
func (r Request) startWall(d Direction) (s start, why string, err error) {
	both, err := startsOf(r.Floor, d)
	if err != nil {
		return s, "", err
	}
	if r.StartWall != "" {
		s, err = told(r.Floor, d, both, r.StartWall)
		return s, "told", err
	}
	const doors, long = "it has the doorway, where the last row would have to go under the jambs", "it is the longest straight wall along the rows"
	a, b := r.atWall(both[0]), r.atWall(both[1])
	switch {
	case a.doors > b.doors:
		return both[0], doors, nil
	case a.doors < b.doors:
		return both[1], doors, nil
	case b.longest > a.longest:
		return both[1], long, nil
	case a.longest > b.longest:
		return both[0], long, nil
	}
	return both[0], "both walls along the rows serve alike", nil
}

// wallSign is what speaks for a wall.
type wallSign struct {
	doors   int
	longest length.Length
}

func (r Request) atWall(at start) wallSign {
	var s wallSign
	for _, c := range faces(r.Floor.Edges, at.frame, boxOf(at.frame.floor(r.Floor.Laying))) {
		if c.far {
			continue
		}
		if c.door {
			s.doors++
		} else {
			s.longest = max(s.longest, c.length)
		}
	}
	return s
}

// start is where the layout begins.
func (l *Layout) start() start {
	both, err := startsOf(l.Request.Floor, l.Along)
	if err != nil {
		return start{}
	}
	s, _ := told(l.Request.Floor, l.Along, both, l.StartWall)
	return s
}

// Start names the wall, or the corner, that the first row lies at: "south wall".
func (l *Layout) Start() string { return l.start().String() }

// AtCorner says whether the first row lies in a corner, along no wall.
func (l *Layout) AtCorner() bool { return l.start().corner }

// Local turns a region so that rows lie along X, from their left end, and Y goes away from the start wall.
func (l *Layout) Local(r geom.Region) geom.Region { return turned(r, l.start().frame.in) }

// Heading is the way to lay along a row: a step of length 1 by its parts to the east and to the north.
func (l *Layout) Heading() (east, north float64) {
	f := l.start().frame
	return f.east, f.north
}
