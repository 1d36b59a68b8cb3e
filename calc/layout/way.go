package layout

import (
	"fmt"
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/room"
)

// Along is the direction along a wall of the main room.
func Along(wall room.Side) Direction {
	return Direction("along " + string(wall))
}

// Wall is the wall that rows of a direction run along, where one is told.
func (d Direction) Wall() (wall room.Side, ok bool) {
	w, ok := strings.CutPrefix(string(d), "along ")
	return room.Side(w), ok
}

// name is how a direction is spoken of.
func (d Direction) name() string {
	if wall, ok := d.Wall(); ok {
		return "rows along the " + string(wall) + " wall"
	}
	return "rows that run " + string(d)
}

// longWay is the direction of a floor that nobody has told one for: along the longer side, or, where neither wall of that
// side lies along it, along the longer of the two.
func longWay(f *room.Floor) Direction {
	d := Longer(f.Extent())
	both, _ := startsOf(f, d)
	var longest room.Edge
	for _, e := range f.Main {
		if e.Side != both[0].wall && e.Side != both[1].wall {
			continue
		}
		if !heading(e.A, e.B).slanted() {
			return d
		}
		if e.Len() > longest.Len() {
			longest = e
		}
	}
	if longest.Side == "" {
		return d
	}
	return Along(longest.Side)
}

// Way is the direction of a floor's rows where none is told: along the wall of the first row, where that is told, else
// along the longer side.
func Way(f *room.Floor, startWall room.Side) Direction {
	if startWall == "" {
		return longWay(f)
	}
	e, why := f.Wall(startWall)
	switch {
	case why == "" && heading(e.A, e.B).slanted():
		return Along(startWall)
	case startWall == room.East || startWall == room.West:
		return NorthSouth
	case startWall == room.South || startWall == room.North:
		return EastWest
	case startWall.Slants():
		return Diagonal
	}
	return longWay(f)
}

// told finds the start that a wall names among the two that a direction has.
func told(f *room.Floor, d Direction, both [2]start, wall room.Side) (start, error) {
	name := wall
	if wall == room.Slanted {
		e, why := f.Wall(wall)
		if why != "" {
			return start{}, fmt.Errorf("the start: %s", why)
		}
		name = e.Side
	}
	for _, s := range both {
		if s.wall == name {
			return s, nil
		}
	}
	if d == Diagonal && !name.Slants() {
		s := both[0]
		if name == room.North || name == room.West {
			s = both[1]
		}
		return s, nil
	}
	return start{}, fmt.Errorf("%s start at the %s or the %s, not at the %s one", d.name(), both[0], both[1], wall)
}

// Across is how far a floor reaches square to rows of a direction.
func Across(f *room.Floor, d Direction) (length.Length, error) {
	both, err := startsOf(f, d)
	if err != nil {
		return 0, err
	}
	b := boxOf(both[0].frame.floor(f.Region))
	return b.far - b.near, nil
}

// Check says what is wrong with a direction and a start wall told for a floor, the one or both of them.
func Check(f *room.Floor, d Direction, wall room.Side) error {
	if d == "" {
		d = Way(f, wall)
	}
	both, err := startsOf(f, d)
	if err == nil && wall != "" {
		_, err = told(f, d, both, wall)
	}
	return err
}
