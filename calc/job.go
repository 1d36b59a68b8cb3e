// Package calc answers the questions of a floor's installer: a Job and a Question go in, a Result comes out.
//
// It is pure: no clock, no chance, no input or output, and no words for people beyond names and arithmetic.
package calc

import (
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// Job is what is known of one floor. A zero field is not known.
type Job struct {
	Name      string
	Tape      length.Tape
	Plan      room.Plan
	Plank     plank.Plank
	Underlay  plank.Roll
	Along     layout.Direction
	StartWall room.Side
	FirstRow  length.Length
	// Facts are the other inputs that statements have set, by name: least-end, kerf, spare, price, laid, opened.
	Facts map[term.Name]term.Value
	Notes []string
}

// Question is one thing asked. Given holds what the message said and what the conversation carried over, by From.
type Question struct {
	Kind  term.Kind
	Given []term.Given
}

// Result is an answer: the inputs it rests on, the results, and the arithmetic.
type Result struct {
	Kind    term.Kind
	Given   []term.Given
	Values  []term.Named
	Working []string // a step a line, in the job's units, to be checked with a pencil
	Floor   *room.Floor
	Layout  *layout.Layout
}

// Missing says what a question still needs. Each element is one need: any one of its names will do.
type Missing struct {
	Kind  term.Kind
	Needs [][]term.Name
}

// Refusal says why a thing that was understood cannot be: each broken rule, with its place.
type Refusal struct {
	Kind    term.Kind
	Reasons []string
}
