package answer

import (
	"strings"

	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/term"
)

// MaxText is the most that a reply holds, in bytes: under the 2000 characters that a chat message may have.
const MaxText = 1900

// mostCautions is how many cautions a reply shows; the rest are a word away.
const mostCautions = 3

// Compose writes an answer to a question: the numbers, the pencil steps, what was assumed, the cautions.
func Compose(r calc.Result, t length.Tape, cautions []Caution) Answer {
	a := Answer{
		Outcome: Answered, Kind: r.Kind, Given: Givens(r.Given, t), Values: Results(r.Values, t),
		Working: r.Working, Cautions: cautions,
	}
	var parts []string
	parts = append(parts, Headline(r, t))
	parts = append(parts, steps(r.Working))
	parts = append(parts, assumed(r.Given, t))
	parts = append(parts, Warn(cautions))
	a.Text = Limit(paragraphs(parts))
	return a
}

// Headline is the first line: the numbers asked for.
func Headline(r calc.Result, t length.Tape) string {
	if line, ok := newNames(r.Given, r.Values, t).fill(headlines[r.Kind]); ok && line != "" {
		return capital(line)
	}
	var parts []string
	for _, v := range r.Values {
		parts = append(parts, plainName(v.Name)+" "+text(v.Value, t))
	}
	return capital(strings.Join(parts, ", ")) + "."
}

func steps(working []string) string {
	var b strings.Builder
	for _, w := range working {
		b.WriteString("\n  " + w)
	}
	return strings.TrimPrefix(b.String(), "\n")
}

// assumptions say how a default is named in a reply; what is not here is named by its own name.
var assumptions = map[term.Name]string{
	term.Gap:          "%s gap at each wall",
	term.LeastRow:     "no row under %s",
	term.LeastEnd:     "no end piece under %s",
	term.LeastStagger: "joints at least %s apart",
	term.Kerf:         "a saw cut of %s",
	term.Spare:        "%s spare",
	term.Direction:    "rows run %s, along the longer side",
	term.Overlap:      "strips lapped %s",
}

// quiet are defaults that bear on a rule and not on the numbers: the JSON lists them, the sentence does not.
var quiet = map[term.Name]bool{term.LeastRow: true, term.LeastEnd: true, term.Kerf: true}

func assumed(gs []term.Given, t length.Tape) string {
	var parts []string
	for _, g := range gs {
		if g.From != term.Default || quiet[g.Name] {
			continue
		}
		form, ok := assumptions[g.Name]
		if !ok {
			form = plainName(g.Name) + " %s"
		}
		parts = append(parts, strings.Replace(form, "%s", text(g.Value, t), 1))
	}
	if len(parts) == 0 {
		return ""
	}
	return "Assumed: " + strings.Join(parts, "; ") + ". Say otherwise and I work it out again."
}

// Warn writes the weightiest cautions.
func Warn(cs []Caution) string {
	var lines []string
	for i, c := range cs {
		if i == mostCautions {
			lines = append(lines, `("more" for the other cautions)`)
			break
		}
		lines = append(lines, "Caution: "+c.Text)
	}
	return strings.Join(lines, "\n")
}

func paragraphs(parts []string) string {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, "\n")
}

// Limit cuts a text that is too long for a message at a line's end, and says so.
func Limit(s string) string {
	if len(s) <= MaxText {
		return s
	}
	const more = "\n(cut short)"
	cut := strings.LastIndexByte(s[:MaxText-len(more)], '\n')
	if cut < 0 {
		cut = MaxText - len(more)
	}
	return strings.ToValidUTF8(s[:cut], "") + more
}
