package answer

import (
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/term"
)

// More gives all the cautions of the last answer, each with what it rests on.
func More(k term.Kind, cs []Caution) Answer {
	if len(cs) == 0 {
		return Say(k, "No cautions go with the last answer.")
	}
	var lines []string
	for _, c := range cs {
		line := "Caution: " + c.Text
		if c.Source != "" {
			line += " (" + c.Source + ")"
		}
		lines = append(lines, line)
	}
	a := Say(k, strings.Join(lines, "\n"))
	a.Cautions = cs
	return a
}

// Why shows the limits that a kind of answer is judged by, with what stands behind each.
func Why(k term.Kind, t length.Tape) Answer {
	var lines []string
	for _, id := range grounds[k] {
		if l, ok := limit.Find(id); ok {
			lines = append(lines, capital(l.Why(t))+".")
		}
	}
	if len(lines) == 0 {
		return Say(k, "That is plain arithmetic on what you said; no limit comes into it.")
	}
	return Say(k, strings.Join(lines, "\n"))
}

// grounds are the limits that each kind of answer is judged by.
var grounds = map[term.Kind][]string{
	term.AskRows:         {"gap-least", "gap-per-metre", "least-row"},
	term.AskBoxes:        {"waste-by-area", "spare", "least-end", "least-stagger", "kerf"},
	term.AskGap:          {"gap-least", "gap-per-metre", "movement-ceiling", "season-swing"},
	term.AskLongRun:      {"long-run", "field-joint"},
	term.AskStagger:      {"least-stagger", "least-end"},
	term.AskTransition:   {"step-vertical", "step-bevelled", "bevel-slope", "ramp-slope"},
	term.AskUndercut:     {"undercut-play"},
	term.AskDoor:         {"door-working", "fire-door"},
	term.AskHeadroom:     {"ceiling-least", "ceiling-bath", "stair-headroom", "sill-most", "sill-least", "riser-most", "riser-spread"},
	term.AskUnderlay:     {"film-lap"},
	term.AskTrim:         {"stick-length", "trim-spare", "door-width"},
	term.AskTrimCover:    {"movement-ceiling", "season-swing"},
	term.AskScrews:       {"track-end", "screw-spacing-least", "screw-edge-least", "embedment-least", "embedment-most", "hole-extra"},
	term.AskNails:        {"stud-spacing", "nail-length"},
	term.AskCaulk:        {"sealant-loss"},
	term.AskFlatness:     {"flat-10-ft", "flat-6-ft", "flat-first-metre", "flat-per-metre"},
	term.AskLeveler:      {"leveler-yield", "leveler-bag", "leveler-depth-most"},
	term.AskMoisture:     {"moisture-rh", "moisture-calcium-chloride", "moisture-carbide-cement", "moisture-carbide-sulfate", "moisture-wood", "moisture-tests"},
	term.AskVaporBarrier: {"film-thickness", "film-lap"},
	term.AskAcclimate:    {"acclimate", "air-least", "floor-least", "air-humidity-most"},
	term.AskHours:        {"rate"},
	term.AskStart:        {"least-row", "gap-least"},
	term.AskPlan:         {"least-row", "least-end", "least-stagger", "kerf", "lock-lip", "gap-least"},
	term.AskCutList:      {"least-row", "least-end", "least-stagger", "kerf", "lock-lip"},
	term.AskLeftover:     {"least-end", "least-stagger", "kerf"},
}
