package answer

import (
	"fmt"
	"regexp"
	"strings"

	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/room"
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
	head := paragraphs([]string{Headline(r, t)})
	tail := paragraphs([]string{assumed(r, t), Warn(cautions)})
	a.Text = Limit(paragraphs([]string{head, steps(r.Working, MaxText-len(head)-len(tail)), tail}))
	return a
}

// Headline is the first line: the numbers asked for.
func Headline(r calc.Result, t length.Tape) string {
	n := newNames(r.Given, r.Values, t)
	if say := spoken[r.Kind]; say != nil {
		return capital(ones(say(n)))
	}
	if line, ok := n.fill(headlines[r.Kind]); ok && line != "" {
		return capital(ones(line))
	}
	var parts []string
	for _, v := range r.Values {
		parts = append(parts, plainName(v.Name)+" "+text(v.Value, t))
	}
	return capital(strings.Join(parts, ", ")) + "."
}

// gaps names the gap at each wall, or the range where a floor's walls have gaps by their runs.
func gaps(g term.Given, f *room.Floor, t length.Tape) string {
	var least, most length.Length
	if f != nil {
		least, most = f.Gaps()
	}
	if least == most {
		return text(g.Value, t) + " gap at each wall"
	}
	return "gaps of " + Length(least, t) + " to " + Length(most, t) + " at the walls, by the run of the floor"
}

var manyOfOne = regexp.MustCompile(`(^|[ (])1 (box|row|plank|stick|strip|roll|bag|tube|screw|nail|trip|profile)(e?s)\b`)

// ones puts what there is one of in the singular: "1 tube".
func ones(line string) string { return manyOfOne.ReplaceAllString(line, "${1}1 $2") }

// steps writes the working, indented, as far as there is room for it.
func steps(working []string, room int) string {
	var b strings.Builder
	for i, w := range working {
		line := "\n  " + Harmless(times.Replace(w))
		more := fmt.Sprintf("\n  (%d steps more)", len(working)-i)
		if b.Len()+len(line)+len(more) > room-2 {
			b.WriteString(more)
			break
		}
		b.WriteString(line)
	}
	return strings.TrimPrefix(b.String(), "\n")
}

// assumptions say how a default is named in a reply; what is not here is named by its own name.
var assumptions = map[term.Name]string{
	term.LeastRow:         "no row under %s",
	term.LeastEnd:         "no end piece under %s",
	term.LeastStagger:     "joints at least %s apart",
	term.Kerf:             "a saw cut of %s",
	term.Spare:            "%s spare",
	term.Overlap:          "strips lapped %s",
	term.Start:            "start at the %s wall",
	term.FirstRow:         "first row %s",
	term.Boxes:            "%s boxes bought",
	term.Play:             "%s of play under the jambs",
	term.WorkingClearance: "a door swings with %s under it",
	term.StickLength:      "sticks of %s",
	term.TrimSpare:        "%s of trim over for cuts",
	term.DoorWidth:        "doors %s wide",
	term.EndDistance:      "%s from the ends",
	term.ScrewDiameter:    "%s screws",
	term.BeadShape:        "a %s bead",
	term.SealantLoss:      "%s of sealant lost",
	term.Density:          "planks of %s kg/m³",
	term.Rate:             "%s an hour",
	term.Crew:             "crew of %s",
	term.Limit:            "%s in one piece",
	term.Waste:            "%s waste",
	term.HumiditySwing:    "the air dries by %s points of humidity",
}

// quiet are what the layout chose where nobody said, which the first line tells, and the minutes that the working tells:
// the JSON lists them, the sentence does not.
var quiet = map[term.Name]bool{term.Start: true, term.FirstRow: true, term.Piecing: true,
	"row-minutes": true, "piece-minutes": true, "cut-minutes": true, "rip-minutes": true, "notch-minutes": true, "corner-minutes": true,
}

// direction says why the rows run as nobody told: along the wall of the first row where that was told, else along the longer side.
func direction(d term.Given, given []term.Given) string {
	way, _ := d.Value.(term.Word)
	said := "rows run " + string(way)
	if wall, ok := strings.CutPrefix(string(way), "along "); ok {
		said = "rows run along the " + wall + " wall"
	}
	for _, g := range given {
		if g.Name == term.Start && g.From != term.Default {
			return said + ", by the start wall"
		}
	}
	return said + ", along the longer side"
}

func assumed(r calc.Result, t length.Tape) string {
	var parts []string
	for _, g := range r.Given {
		if g.From != term.Default || quiet[g.Name] {
			continue
		}
		switch g.Name {
		case term.Gap:
			parts = append(parts, gaps(g, r.Floor, t))
			continue
		case term.Direction:
			parts = append(parts, direction(g, r.Given))
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
	return "Assumed: " + strings.Join(parts, "; ") + " (say otherwise to change it)."
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
