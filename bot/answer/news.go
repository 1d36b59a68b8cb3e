package answer

import (
	"regexp"
	"strings"

	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/term"
	"lastrow/grammar"
)

// Fault owns up to a fault of ours, in one plain line.
func Fault() Answer {
	return Answer{Outcome: Refused, Text: "Something broke on my side; nothing was changed. Try again in a moment."}
}

// Courtesy answers thanks and greetings.
func Courtesy() Answer {
	return Answer{Outcome: Answered, Kind: term.AskHelp, Text: `Glad to help. "help" shows what I work out.`}
}

// Idle says whether an answer is to thanks, or to what was not understood: where nobody spoke to the bot it is not given.
func (a Answer) Idle() bool {
	return a.Outcome == Unclear || a.Text == Courtesy().Text
}

// Nothing answers a message that holds nothing.
func Nothing() Answer {
	return Answer{Outcome: Unclear, Text: `I read nothing to work out. Try "rows for 11ft 4in, plank 7 5/8", or "help".`}
}

// Say is a plain answer of a kind that computes nothing.
func Say(k term.Kind, text string) Answer {
	return Answer{Outcome: Answered, Kind: k, Reading: string(k), Text: Limit(text)}
}

// Refuse says which rules were broken, all of them.
func Refuse(r *calc.Refusal) Answer {
	a := Answer{Outcome: Refused, Kind: r.Kind}
	var lines []string
	for _, reason := range r.Reasons {
		lines = append(lines, plainReason(reason))
	}
	if len(lines) == 1 {
		a.Text = Limit("That can't be: " + lines[0] + ".")
		return a
	}
	a.Text = Limit("That can't be:\n  " + strings.Join(lines, "\n  "))
	return a
}

var leadingName = regexp.MustCompile(`^[a-z]+(-[a-z]+)+ of `)

// plainReason writes a name that leads a reason as people say it: "plank-width of 75 ft" as "plank width of 75 ft".
func plainReason(reason string) string {
	name := leadingName.FindString(reason)
	return strings.ReplaceAll(name, "-", " ") + Harmless(reason[len(name):])
}

// Back asks for what a question still needs.
func Back(r calc.Result, m *calc.Missing, t length.Tape) Answer {
	return Answer{Outcome: AskBack, Kind: m.Kind, Given: Givens(r.Given, t), Missing: Flat(m.Needs), Text: Ask(m.Needs)}
}

// Problem says what was not understood: what was read, what was not, one example that would work.
func Problem(p *grammar.Problem) Answer {
	a := Answer{Outcome: Outcome(p.Outcome), Kind: p.Kind, Missing: p.Missing}
	impossible := a.Outcome == Refused
	if a.Kind == "" && impossible {
		a.Outcome = Unclear
	}
	read, not := Short(Harmless(p.Read), 80), Short(Harmless(p.Not), 160)
	var parts []string
	switch {
	case a.Outcome == AskBack && not == "" && len(p.Missing) > 0:
		parts = append(parts, Ask(oneEach(p.Missing)))
	case impossible && read != "" && not != "":
		parts = append(parts, "I read "+read+": "+not+".")
	case impossible && not != "":
		parts = append(parts, capital(not)+".")
	case read != "" && not != "":
		parts = append(parts, "I read "+read+", but not "+not+".")
	case not == "it is empty":
		return Nothing()
	case not != "":
		parts = append(parts, "I can't make out "+not+".")
	case read != "":
		parts = append(parts, "I read "+read+", and no more.")
	default:
		parts = append(parts, "I don't understand that.")
	}
	if p.Example != "" {
		parts = append(parts, `Try: "`+p.Example+`".`)
	}
	a.Text = Limit(strings.Join(parts, " "))
	return a
}

func oneEach(names []term.Name) [][]term.Name {
	var needs [][]term.Name
	for _, n := range names {
		needs = append(needs, []term.Name{n})
	}
	return needs
}

// plainly puts the canonical words of statements as people say them.
var plainly = strings.NewReplacer(
	"height other-height", "the floor it meets is", "height floor-height", "the new floor ends up at", "height door-gap", "under the door there is",
	"height ceiling", "ceiling height", "height sill", "sill height", "height riser", "riser height",
	"first-row", "first row", "least-end", "least end piece", "least-stagger", "joints apart at least", "least-row", "least row",
	"out-of-sight", "out of sight:", "reading rh", "reading RH", "calcium-chloride", "calcium chloride", "gap 0 in at", "tight at", "gap 0 mm at", "tight at",
)

// sofar says how big the floor is, and how far the job, once something is noted.
var sofar = map[term.Name]string{
	term.FloorArea: "Floor so far: %s.", term.Perimeter: "Round its walls: %s.",
	term.Laid: "Rows laid in all: %s.", term.Opened: "Boxes opened in all: %s.", term.Damaged: "Planks damaged in all: %s.",
}

// Record says what a job has noted, and what that comes to now: the floor's size, what was taken for granted in it, the
// totals.
func Record(k term.Kind, texts []string, given []term.Given, now []term.Named, taken []string, t length.Tape, cs []Caution) Answer {
	a := Answer{
		Outcome: Recorded, Kind: k, Reading: strings.Join(texts, "\n"),
		Given: Givens(given, t), Values: Results(now, t), Working: taken, Cautions: cs,
	}
	noted := "Noted: " + Harmless(plainly.Replace(strings.Join(texts, "; "))) + "."
	if k == term.SetJob {
		noted = "On " + Harmless(strings.TrimPrefix(strings.Join(texts, "; "), "job ")) + " now."
	}
	var comes []string
	for _, v := range now {
		if line, ok := sofar[v.Name]; ok {
			comes = append(comes, strings.Replace(line, "%s", roomy(v.Value, t), 1))
		}
	}
	for _, s := range taken {
		comes = append(comes, capital(s)+".")
	}
	a.Text = Limit(paragraphs([]string{noted, strings.Join(comes, " "), Warn(cs)}))
	return a
}

// roomy shows a value as the size of a room is said: in feet and inches, or metres.
func roomy(v term.Value, t length.Tape) string {
	if l, ok := v.(term.Len); ok {
		return t.Room(length.Length(l))
	}
	return text(v, t)
}
