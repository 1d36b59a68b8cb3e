// Package grammar turns what people type into statements and questions, and prints them back in one canonical form.
//
// It is pure. Vocabulary is data, apart from meaning. It knows no job beyond the Context handed to it.
package grammar

import (
	"lastrow/calc/length"
	"lastrow/calc/term"
)

// Statement changes a job. String is its canonical text, which Parse reads back to an equal statement.
type Statement interface {
	Kind() term.Kind
	String() string
	Given() []term.Given // what it says, under the contract's names
}

// Question asks for a kind of answer. Job names another job than the current one, where the message did.
type Question struct {
	Kind  term.Kind
	Given []term.Given
	Job   string
}

// Context is what a reading may lean on: the conversation so far.
type Context struct {
	System  length.System // of the job
	Known   bool          // whether the job has said anything in either system
	Group   bool          // said in a group channel, not addressed to the bot
	Shared  bool          // the channel has a shared job
	Jobs    []string      // names of the user's jobs
	Current string        // the name of the job that is worked on
	Pending *Question     // a question that waits for Missing
	Missing [][]term.Name
	Last    *Question // the last question answered, with what it was given
	LastSet Statement // the last statement recorded
	Told    bool      // whether that was after the last question
	Setting term.Kind // a statement that waits for a value: of a Problem's Setting
	// Statements are those of the job that still stand, in order: a correction may be of any of them.
	Statements []Statement
}

// Reading is a message understood: its statements in order, then its question if it has one. Exactly one of the
// first two groups and Problem is meant: a Problem says that nothing of the message is to be done.
type Reading struct {
	Statements []Statement
	Question   *Question
	Instead    Statement // one of the job's, in the place of which the statement comes
	Problem    *Problem
	Silent     bool          // not addressed to the bot and nothing of its kind
	Courtesy   bool          // thanks or a greeting alone
	Signs      []string      // dangers mentioned in passing, by caution id
	Follow     string        // "why", "again" or "show" of the last answer, in place of a question
	System     length.System // that the message measures in
	Measured   bool          // whether it measures in either
}

// Problem is a message not understood or not possible.
type Problem struct {
	Outcome string      // "unclear", "refused", "ask-back"
	Kind    term.Kind   // where it was understood so far
	Read    string      // what was read
	Not     string      // what was not
	Example string      // a near message that would work
	Missing []term.Name // for ask-back
	Asked   *Question   // for ask-back: the question as far as it was understood; it becomes Context.Pending
	Setting term.Kind   // for ask-back on a statement; it becomes Context.Setting
}
