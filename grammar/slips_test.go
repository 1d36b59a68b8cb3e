package grammar

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// A slip of the thumb is near many words, but never near one that takes back, deletes or gives away.
func TestSlipsAreNoCommands(t *testing.T) {
	for _, text := range []string{"will dor drag, 9/16 undr it", "undr the door", "shere it", "frget", "exprt"} {
		r := Read(text, Context{})
		if r.Question != nil {
			require.NotContains(t, []term.Kind{term.AskUndo, term.AskForget, term.AskExport, term.AskShare}, r.Question.Kind, text)
		}
	}
}

// Decimals that would make a cupboard in feet are metres, whatever was measured in before.
func TestRoomInMetres(t *testing.T) {
	r := Read("room 4.2x3.1", Context{System: length.Imperial, Known: true})
	require.Len(t, r.Statements, 1)
	require.Equal(t, "room 4200 mm x 3100 mm", r.Statements[0].String())
	r = Read("room 12.5 x 10.25", Context{System: length.Imperial, Known: true})
	require.Equal(t, "room 12 ft 6 in x 10 ft 3 in", r.Statements[0].String())
}

// A message that speaks of another thing is no more of the question before it.
func TestAnotherThingIsNoFollowUp(t *testing.T) {
	last := &Question{Kind: term.AskMoisture, Given: []term.Given{given(term.Test, term.Word("rh")), given(term.Reading, term.Percent(78_000))}}
	for text, follows := range map[string]bool{"wich wall 2 start": false, "and if it was 80%": true} {
		r := Read(text, Context{Last: last})
		require.Equal(t, follows, r.Question != nil && r.Question.Kind == term.AskMoisture, text)
	}
}

// While a question waits, what is said of other goods is a statement of those.
func TestOtherGoodsAnswerNothing(t *testing.T) {
	waits := Context{
		Pending: &Question{Kind: term.AskUndercut, Given: []term.Given{given(term.PlankThickness, term.Len(12*length.Millimetre))}},
		Missing: [][]term.Name{{term.UnderlayThickness}},
	}
	r := Read("trim 1/2 inch", waits)
	require.Len(t, r.Statements, 1)
	require.Equal(t, "trim 1/2 in thick", r.Statements[0].String())
	r = Read("underlay is 2mm", waits)
	require.NotNil(t, r.Question)
	require.Equal(t, term.AskUndercut, r.Question.Kind)
}

// A minus before a number is read, never dropped: no size is under nothing.
func TestNothingIsUnderNothing(t *testing.T) {
	for _, text := range []string{"-5 + 3", "-5ft + 3ft", "5 * -3", "what is -4 in in mm", "half of -4 in"} {
		r := Read(text, Context{})
		require.NotNil(t, r.Problem, text)
		require.Contains(t, r.Problem.Not, "a size under nothing", text)
	}
	for _, text := range []string{"12 -5", "12ft -5in", "47 1/2 - 18"} {
		require.NotNil(t, Read(text, Context{}).Question, text)
	}
}

// A half said before "of" belongs to the number before it, and what stands between screws is their spacing.
func TestHalfOfTheTrack(t *testing.T) {
	r := Read("with 28 and a half of track and 7 between, how many screws", Context{})
	require.NotNil(t, r.Question)
	require.Equal(t, "screws track 28 1/2 in, spacing 7 in?", r.Question.String())
}
