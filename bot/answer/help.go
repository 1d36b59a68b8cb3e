package answer

import (
	"strings"

	"lastrow/calc/term"
	"lastrow/grammar"
)

// Help shows the ways to ask or say one kind.
func Help(k term.Kind, ways []string) Answer {
	return Say(term.AskHelp, plainName(term.Name(k))+":\n  "+strings.Join(ways, "\n  "))
}

// Overview shows one way to ask each kind of question, as far as a message holds them, and how to see the rest.
func Overview(examples []grammar.Example) Answer {
	var b strings.Builder
	b.WriteString("Ask me about a click-lock floor, in your own words:")
	seen := map[term.Kind]bool{}
	for _, e := range examples {
		if seen[e.Kind] || e.Tell || b.Len() > 1200 {
			continue
		}
		seen[e.Kind] = true
		b.WriteString("\n  " + e.Text)
	}
	b.WriteString("\nTell me the job and I remember it: \"room 11ft 4in x 12ft 6in\", \"plank 7 5/8 x 47 1/2, 8 per box\".")
	b.WriteString("\n\"help gap\" shows the ways to ask one thing; \"undo\" takes back the last thing told.")
	return Say(term.AskHelp, b.String())
}
