package answer

import (
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// headlines hold each kind's first line. {name} stands for a result or an input; a part in [ ] is left out where one of
// its names has no value; {name? a| b} chooses by a yes or no.
var headlines = map[term.Kind]string{
	term.AskRows: "{rows} rows. First row {first-row-width}, last row {last-row-width}." +
		"[ The last is a sliver: rip first and last alike to {balanced-row-width}.]",
	term.AskGap:          "[{pass? Enough.| Not enough.} ]Leave {gap} at each wall[, for a run of {run}].[ It takes {movement} of movement.]",
	term.AskLongRun:      "{pass? A run of {run} is within the limit| A run of {run} is too long in one piece: the limit is} {limit}.[ Part it into {fields}.]",
	term.AskStagger:      "{pass? Good:| Too close:} the joints land {offset} apart[, and the least is {least-stagger}].",
	term.AskUndercut:     "Undercut {undercut} above the subfloor.",
	term.AskUnderlay:     "{rolls} rolls[: {strips} strips][, {tape} of tape].",
	term.AskTrim:         "{trim-length} of trim[: {sticks} sticks].",
	term.AskTrimCover:    "{pass? Yes, it hides the gap, with {cover} to spare.| No: with the floor shrunk, the gap would show.}",
	term.AskScrews:       "{screws} screws[, one every {spacing}].[ Screw {screw-length} long][, hole {hole-depth} deep.]",
	term.AskNails:        "{nails} nails.",
	term.AskCaulk:        "{tubes} tubes.",
	term.AskSquare:       "[{pass? Square.| Out of square.} ]A true diagonal is {true-diagonal}[; the corner is out by {out-of-square}, {angle}].",
	term.AskTaper:        "It tapers {taper}[, {angle}].",
	term.AskMiter:        "Set the saw to {miter}.",
	term.AskFlatness:     "{pass? Flat enough:| Not flat enough:} {allowed} is allowed[, yours is {dip}].",
	term.AskLeveler:      "{volume} of leveler[: {bags} bags].",
	term.AskVaporBarrier: "{pass? Yes, put a vapor barrier down.| No vapor barrier is called for here.}",
	term.AskAcclimate:    "Leave the boxes closed and flat in the room for {hours}.",
	term.AskMoisture:     "{pass? Dry enough to lay:| Too wet to lay:}[ it reads {reading},] {allowed} is allowed.",
	term.AskWeight:       "About {kg}[, {box-kg} a box].[ {trips} trips.]",
	term.AskPlan:         "{rows} rows, {planks} planks, laid from the {start-wall} {at-corner? corner| wall}. First row {first-row-width}, last row {last-row-width}.",
	term.AskCutList:      "{rows} rows from {planks} planks, laid from the {start-wall} {at-corner? corner| wall}.",
	term.AskRow:          "Row {row}, {width} wide[: {pieces}].",
	term.AskPiece:        "Row {row} piece {piece}: {length} long, {width} wide.",
	term.AskStatus:       "{laid} of {rows} rows laid, {planks} planks used[, {leftover} left]. {pass? What there is will do.| What there is will not do.}",
	term.AskShopping:     "To buy: {boxes} boxes of planks[, {rolls} rolls of underlay][, {sticks} sticks of trim][, {profiles} profiles].[ In all {amount}.]",
	term.AskHours:        "About {hours} of work.",
	term.AskCost:         "{amount} in all.",
	term.AskMeasure:      "{result}[, that is {converted}].",
	term.AskStart:        "Start at the {start-wall} {at-corner? corner| wall}. First row {first-row-width}, last row {last-row-width}.",
	term.AskLeftover:     "{pass? Enough for the closet| Not enough for the closet}[: {rows} rows].",
	term.AskHeadroom:     "[Ceiling {ceiling}. ][Sill {sill}. ][Riser {riser}. ]{pass? Within the limit.| Outside the limit.}",
}

// names is what a line may speak of.
type names struct {
	of   map[term.Name]term.Value
	tape length.Tape
}

func newNames(gs []term.Given, vs []term.Named, t length.Tape) names {
	n := names{map[term.Name]term.Value{}, t}
	for _, g := range gs {
		n.of[g.Name] = g.Value
	}
	for _, v := range vs {
		n.of[v.Name] = v.Value
	}
	return n
}

// fill writes a line; false where a name outside [ ] has no value.
func (n names) fill(line string) (string, bool) {
	var b strings.Builder
	for line != "" {
		i := strings.IndexAny(line, "[{")
		if i < 0 {
			b.WriteString(line)
			break
		}
		b.WriteString(line[:i])
		end := closing(line, i)
		part, ok := n.part(line[i], line[i+1:end])
		if !ok && line[i] == '{' {
			return "", false
		}
		b.WriteString(part)
		line = line[end+1:]
	}
	return b.String(), true
}

// closing finds the bracket that closes the one at i; the tables are ours, and tested, so there is one.
func closing(line string, i int) int {
	depth := 0
	for j := i; j < len(line); j++ {
		switch line[j] {
		case '[', '{':
			depth++
		case ']', '}':
			if depth--; depth == 0 {
				return j
			}
		}
	}
	return len(line) - 1
}

func (n names) part(bracket byte, inside string) (string, bool) {
	if bracket == '[' {
		return n.fill(inside)
	}
	name, choice, isChoice := strings.Cut(inside, "?")
	v, ok := n.of[term.Name(name)]
	if !ok {
		return "", false
	}
	if !isChoice {
		return text(v, n.tape), true
	}
	yes, no, _ := strings.Cut(choice, "|")
	if v != term.Pass(true) {
		yes = no
	}
	return n.fill(strings.TrimPrefix(yes, " "))
}
