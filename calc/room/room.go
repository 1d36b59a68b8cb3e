// Package room joins what can be measured of a floor into one region: rooms, closets, doorways and fixtures.
//
// Lengths are exact along the axes; a slanted wall's corners are rounded to the nanometre once. The main room's
// south-west corner is the origin, X grows to the east and Y to the north. North is the top of the plan, wherever the
// compass may point. Build lists every broken rule at once, with its place.
package room

import "lastrow/calc/length"

// Side is a wall of the main room, or a way to walk.
type Side string

// The sides. A wall goes by the one that it faces; where several face one side, by its number along the walk.
const (
	North Side = "north"
	East  Side = "east"
	South Side = "south"
	West  Side = "west"
)

// Plan is what people say of a floor. Exactly one of Rect, Walk and Quad gives the outline of the main room.
type Plan struct {
	Rect      *Rect
	Walk      []Wall
	Quad      *Quad
	Closets   []Closet
	Openings  []Opening
	Doorways  []Doorway
	Fixtures  []Fixture
	Gap       length.Length          // the gap at every edge; 0 stands for the default by run
	WallGaps  map[Side]length.Length // a wall's own gap; 0 is tight
	OutOfView map[Side]bool          // walls where a narrow row does no harm
	Metric    bool                   // rounds the default gap to 1 mm, not 1/16 in
}

// Rect is a room by its sides, east-west first, with corners cut out.
type Rect struct {
	EastWest, NorthSouth length.Length
	CutOuts              []CutOut
}

// CutOut is a rectangle missing at a corner: "NE", "SE", "SW", "NW". Angled, the corner is cut off straight across.
type CutOut struct {
	Corner               string
	EastWest, NorthSouth length.Length
	Angled               bool
}

// Wall is one leg of a walk along the walls. One to a side between two others slants: by 45 degrees and Len along the wall,
// or, where Across is given, by Len east-west and Across north-south.
type Wall struct {
	To          Side
	Len, Across length.Length
}

// Quad is four walls and a diagonal: an out-of-square room. NWSE and SWNE are the diagonals; zero where not measured.
type Quad struct {
	North, East, South, West length.Length
	NWSE, SWNE               length.Length
}

// Closet opens off a wall: Wide along the wall, Deep away from it, From the named end of the wall.
// Opening is the width of the doorway, centred where OpeningFrom is zero; zero is the full width.
// A second room joined through an opening is one too, told apart by What it is.
type Closet struct {
	What        string // "hall", "bedroom"; empty is a closet
	Off         string // the closet or room whose wall it opens off; empty is the main room
	Wall        Side
	Wide, Deep  length.Length
	From        length.Length
	FromEnd     Side
	Opening     length.Length
	OpeningFrom length.Length
}

// Opening is one more opening between rooms that are placed already, Wide, From the named end of a wall of the one; the other
// is To. ToFrom is its place in the other's wall, from ToEnd, where that was measured too.
type Opening struct {
	Off        string // the closet or room whose wall it is in; empty is the main room
	Wall       Side
	Wide, From length.Length
	FromEnd    Side
	To         string
	ToFrom     length.Length
	ToEnd      Side
}

// Doorway is a way out through a wall: Wide, From the named end of it. The floor runs Into the wall, to the track's line under the door.
type Doorway struct {
	Off     string // the closet or room whose wall it is in; empty is the main room
	Wall    Side
	Wide    length.Length
	From    length.Length
	FromEnd Side
	Into    length.Length
}

// Fixture is a thing that the floor goes round: a post, a hearth, a pipe. Its near corner (or a pipe's centre) lies
// FromX from the wall SideX (west or east) and FromY from the wall SideY (south or north).
type Fixture struct {
	What         string // "post", "hearth", "pipe", "fixture"
	In           string // the closet or room that it stands in; empty is the main room
	Wide, Deep   length.Length
	Diameter     length.Length // of a pipe
	FromX, FromY length.Length
	SideX, SideY Side
}
