// Package term holds the words that the trade's questions are asked and answered in: the kinds of question and of
// statement, the names of their inputs and results, and the values that those names stand for.
//
// It computes nothing. Lengths, areas and volumes are exact (package length); values that come of angles,
// densities and rates are float64.
package term

// Kind names a kind of question or of statement: "rows", "room".
type Kind string

// Name names an input or a result: "plank-width", "last-row-width".
type Name string

// From says where an input comes from.
type From string

// The places that an input can come from.
const (
	Message From = "message" // said in the message being answered
	FromJob From = "job"     // a statement of the job
	Earlier From = "earlier" // an earlier message of the same conversation
	Default From = "default" // nobody said; the usual value
)

// Given is one input.
type Given struct {
	Name  Name
	Value Value
	From  From
}

// Named is one result.
type Named struct {
	Name  Name
	Value Value
}
