// Package job replays statements into a calc.Job. A job is the text of its statements: nothing else of it is kept.
//
// It is pure. It knows what each statement does to a job and which statements cannot be; the arithmetic is calc's.
package job

import (
	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
	"lastrow/grammar"
)

// Undo is the text of the statement that takes back the last one still standing.
const Undo = "undo"

// Standing gives the texts that no undo has taken back, in order.
func Standing(texts []string) []string {
	var stand []string
	for _, t := range texts {
		switch {
		case t != Undo:
			stand = append(stand, t)
		case len(stand) > 0:
			stand = stand[:len(stand)-1]
		}
	}
	return stand
}

// Parse reads the texts that still stand. An error names the text that is no statement: the store holds what this
// program never wrote.
func Parse(texts []string) ([]grammar.Statement, error) {
	var ss []grammar.Statement
	for _, text := range Standing(texts) {
		s, err := grammar.ParseStatement(text)
		if err != nil {
			return nil, err
		}
		ss = append(ss, s)
	}
	return ss, nil
}

// Replay makes the job that is called name from its statements.
func Replay(name string, ss []grammar.Statement) *calc.Job {
	j := New(name)
	for _, s := range ss {
		Apply(j, s)
	}
	return j
}

// New is a job of which nothing is known.
func New(name string) *calc.Job {
	return &calc.Job{
		Name:  name,
		Plan:  room.Plan{WallGaps: map[room.Side]length.Length{}, OutOfView: map[room.Side]bool{}},
		Facts: map[term.Name]term.Value{},
	}
}

// System gives the system of the first length, area or moisture rate said in the statements; known is false where none is.
func System(ss []grammar.Statement) (sys length.System, known bool) {
	for _, s := range ss {
		if sys, known = systemOf(s); known {
			return sys, true
		}
	}
	return length.Imperial, false
}

// Try applies statements to a job, all of them or none: with an error the job is not to be used. The error is a *calc.Refusal
// that lists every rule broken.
func Try(j *calc.Job, ss []grammar.Statement) error {
	var reasons []string
	for _, s := range ss {
		reasons = append(reasons, bounds(j, s)...)
	}
	if len(reasons) > 0 {
		return &calc.Refusal{Kind: ss[0].Kind(), Reasons: reasons}
	}
	for _, s := range ss {
		Apply(j, s)
	}
	if reasons = broken(j, ss); len(reasons) > 0 {
		return &calc.Refusal{Kind: ss[0].Kind(), Reasons: reasons}
	}
	return nil
}
