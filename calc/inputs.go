package calc

import (
	"lastrow/calc/length"
	"lastrow/calc/term"
)

// inputs finds each named input of a question: what was said, then the job, then the default. It remembers what was
// used, for Result.Given, and what was needed and not found.
type inputs struct {
	job     *Job
	said    map[term.Name]term.Given
	used    []term.Given
	missing [][]term.Name
	tape    length.Tape
}

// handler computes one kind of question.
type handler func(in *inputs) (Result, error)

// handlers is filled by the files kind_*.go, one entry a kind.
var handlers = map[term.Kind]handler{}
