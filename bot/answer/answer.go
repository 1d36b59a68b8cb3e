// Package answer turns results, missing facts, misreadings and cautions into what people and programs read.
// Sentences for people are made here and nowhere else.
package answer

import (
	"encoding/json"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

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

// MarshalJSON gives every list, empty ones too.
func (a Answer) MarshalJSON() ([]byte, error) {
	type bare Answer
	b := bare(a)
	b.Given = append([]Given{}, b.Given...)
	b.Values = append([]Named{}, b.Values...)
	b.Working = append([]string{}, b.Working...)
	b.Cautions = append([]Caution{}, b.Cautions...)
	b.Missing = append([]term.Name{}, b.Missing...)
	b.Files = append([]string{}, b.Files...)
	return json.Marshal(b)
}

// Givens shows inputs.
func Givens(gs []term.Given, t length.Tape) []Given {
	var out []Given
	for _, g := range gs {
		out = append(out, Given{g.Name, Show(g.Value, t), g.From})
	}
	return out
}

// Results shows results.
func Results(vs []term.Named, t length.Tape) []Named {
	var out []Named
	for _, v := range vs {
		out = append(out, Named{v.Name, Show(v.Value, t)})
	}
	return out
}
