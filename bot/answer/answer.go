// Package answer turns results, missing facts, misreadings and cautions into what people and programs read.
package answer

import "lastrow/calc/term"

// Outcome says what became of a message.
type Outcome string

// The outcomes.
const (
	Answered Outcome = "answer"
	Recorded Outcome = "recorded"
	AskBack  Outcome = "ask-back"
	Unclear  Outcome = "unclear"
	Refused  Outcome = "refused"
	Silent   Outcome = "silent"
)

// Answer is a reply in the form that programs read.
type Answer struct {
	Message  string      `json:"message"`
	Outcome  Outcome     `json:"outcome"`
	Kind     term.Kind   `json:"kind"`
	Reading  string      `json:"reading"`
	Given    []Given     `json:"given"`
	Values   []Named     `json:"values"`
	Working  []string    `json:"working"`
	Cautions []Caution   `json:"cautions"`
	Missing  []term.Name `json:"missing"`
	Files    []string    `json:"files"`
	Text     string      `json:"text"`
}

// Given is one input as shown.
type Given struct {
	Name  term.Name `json:"name"`
	Value Value     `json:"value"`
	From  term.From `json:"from"`
}

// Named is one result as shown.
type Named struct {
	Name  term.Name `json:"name"`
	Value Value     `json:"value"`
}

// Caution is one caution as shown.
type Caution struct {
	ID     string `json:"id"`
	Text   string `json:"text"`
	Source string `json:"source"`
}

// Value is a term.Value with its text; it marshals to one object with "text" and the field of its kind.
type Value struct {
	Text string
	Of   term.Value
}
