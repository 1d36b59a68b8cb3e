// Package layout lays planks on a floor: rows, joints, every piece with its cuts, and the plank that each comes from.
//
// The rules and the stock model are those of a click-lock floor; see Rules. The same request gives the same layout,
// joint for joint.
package layout

import (
	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

// Rules are the limits that a layout keeps, or names as broken.
type Rules struct {
	LeastRow, LeastEnd, LeastStagger, Kerf, Lip length.Length
}

// Request is a floor to lay. Along is the way the rows run; StartWall the wall of the first row ("" lets the layout
// choose); FirstRow its width (0 lets the layout choose). Mark is the tape's division: first pieces are whole numbers of it
// where the run leaves room to, so that what is marked is what was planned; 0 for any length.
type Request struct {
	Floor     *room.Floor
	Plank     plank.Plank
	Along     Direction
	StartWall room.Side
	FirstRow  length.Length
	Mark      length.Length
	Rules     Rules
}

// Direction is the way that rows run: "east-west", "north-south", "diagonal" (north-east to south-west), "along west" and the
// like for along a wall of the main room, however it slants, or "" for along the start wall told or else the longer side.
type Direction string

// Layout is a floor laid. Rows are numbered from the start wall; pieces in a row from the left, as seen by one who
// stands at the start wall and looks across the floor.
type Layout struct {
	Request   Request
	Along     Direction
	StartWall room.Side // or the side that the corner faces; see Start
	Why       string    // one sentence: why this wall and this first row
	From, To  string    // the way to lay along a row: "west", "east"
	Rows      []Row
	Stock     []Stock // one for each plank taken from a box, in the order of cutting
	Planks    int     // len(Stock)
	Bound     int     // no layout under these rules, with square cuts between the pieces of one plank, uses fewer
	Broken    []Broken
}

// Row is a strip one plank face wide, or ripped.
type Row struct {
	N     int
	Near  length.Length // distance of its near edge from the laying area's start line
	Width length.Length
	Runs  []Run
}

// Run is a row's unbroken stretch of floor.
type Run struct {
	Left, Right length.Length // along the row, from the layout's left-hand origin
	Pieces      []Piece
}

// Piece is one piece of one plank, laid.
type Piece struct {
	Row, N      int
	Left, Right length.Length // along the row
	Shape       geom.Region   // where it lies on the floor
	Whole       bool
	Cuts        []Cut
	Plank       int    // index into Stock
	Offcut      bool   // cut from what another piece left
	Trapped     string // "" or why it cannot be tilted in
	WayIn       string // and what to do
}

// Stock is one plank taken from a box, and what is cut from it, in order.
type Stock struct {
	Pieces []Ref
	Left   []length.Length // offcuts left over, by length
	Scrap  length.Length   // the offcut at hand that it was; 0 for a whole plank
}

// Ref names a piece.
type Ref struct{ Row, N int }

// Broken is a rule that could not be kept.
type Broken struct {
	Rule  string // "narrow-row", "short-end", "close-joints"
	Where string
	Why   string
}

// The directions that need no angle.
const (
	EastWest   Direction = "east-west"
	NorthSouth Direction = "north-south"
	Diagonal   Direction = "diagonal"
)

// Longer is the direction along the longer of two sides; east-west where they are equal.
func Longer(eastWest, northSouth length.Length) Direction {
	if northSouth > eastWest {
		return NorthSouth
	}
	return EastWest
}
