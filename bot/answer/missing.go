package answer

import (
	"fmt"
	"strings"

	"lastrow/calc/term"
)

// questions ask for an input, with one way to say it.
var questions = map[term.Name]string{
	term.Across:            "how wide is the room, square to the rows (11ft 4in)",
	term.Room:              "how big is the room (11ft 4in x 12ft 6in)",
	term.FloorArea:         "how big is the floor (140 sq ft)",
	term.PlankWidth:        "how wide is a plank's face (7 5/8)",
	term.PlankLength:       "how long is a plank (47 1/2)",
	term.PlankThickness:    "how thick is the plank (12mm)",
	term.UnderlayThickness: "how thick is the underlay (2mm)",
	term.PlanksPerBox:      "how many planks to a box (8 per box)",
	term.BoxCoverage:       "how much does a box cover (20 sq ft a box)",
	term.FloorHeight:       "how high does the new floor end up (14mm)",
	term.OtherHeight:       "how high is the floor it meets (carpet 3/4)",
	term.DoorGap:           "how much room is under the door, from the subfloor (5/8)",
	term.Gap:               "how wide is the gap (3/8)",
	term.Run:               "how long is the floor that way (22 ft)",
	term.Offcut:            "how long is the offcut (16 in)",
	term.Joint:             "where does this row's joint land (31 in)",
	term.PreviousJoint:     "where is the joint in the row before (22 in)",
	term.RollWidth:         "how wide is a roll (4 ft)",
	term.RollLength:        "how long is a roll (25 ft)",
	term.StickLength:       "how long is a stick (8 ft)",
	term.TrimThickness:     "how thick is the trim (1/2)",
	term.TrimLength:        "how much trim is there (60 ft)",
	term.Perimeter:         "how far is it round the room (48 ft)",
	term.Walls:             "how long are the walls (12ft, 9ft, 12ft, 9ft)",
	term.Doors:             "how wide are the doors (30 in)",
	term.Track:             "how long is the track (36 in)",
	term.Spacing:           "how far apart (10 in)",
	term.Bead:              "how big is the bead (1/4 x 1/4)",
	term.SideA:             "how long is one side (6 ft)",
	term.SideB:             "how long is the other side (8 ft)",
	term.Diagonal:          "how long is it corner to corner (10 ft)",
	term.WidthHere:         "how wide is it at this end (4 1/8)",
	term.WidthThere:        "how wide is it at the other end (3 3/8)",
	term.Length:            "how long is the row (12 ft)",
	term.Corner:            "what is the corner's angle (92 degrees)",
	term.Dip:               "how deep is the dip (3/16)",
	term.Straightedge:      "how long is the straightedge (10 ft)",
	term.Depth:             "how deep is it (1/4 in)",
	term.Test:              "which test is it: rh, calcium chloride, carbide or wood",
	term.Reading:           "what does it read (78 % RH)",
	term.Subfloor:          "what is underneath: concrete, plywood, OSB",
	term.Boxes:             "how many boxes",
	term.Price:             "what does a box cost (31.90 a box)",
	term.Leftover:          "what is left (5 planks, or 40, 33 and 28 1/2 in)",
	term.Closet:            "how big is the closet (4 ft x 2 ft)",
	term.Row:               "which row (row 5)",
	term.Piece:             "which piece (row 5 piece 2)",
	term.Ceiling:           "how high is the ceiling now (7 ft 1/4)",
	term.Sill:              "how high is the sill now (44 1/4)",
	term.Riser:             "how high are the risers now (7 1/2)",
	term.Job:               "which job",
	term.Laid:              "how many rows are laid (laid 6 rows)",
}

// Ask asks for what is missing: the first need as a question, the rest named.
func Ask(needs [][]term.Name) string {
	if len(needs) == 0 {
		return "What should I work out?"
	}
	var rest []string
	for _, n := range needs[1:] {
		rest = append(rest, plainName(n[0]))
	}
	s := capital(question(needs[0])) + "?"
	if len(rest) > 0 {
		s += " I also need the " + strings.Join(rest, ", the ") + "."
	}
	return s
}

func question(names []term.Name) string {
	var qs []string
	for _, n := range names[:min(len(names), 2)] {
		q, ok := questions[n]
		if !ok {
			q = fmt.Sprintf("what is the %s", plainName(n))
		}
		qs = append(qs, q)
	}
	return strings.Join(qs, ", or ")
}

func plainName(n term.Name) string { return strings.ReplaceAll(string(n), "-", " ") }

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// Flat lists every name of the needs once, in order.
func Flat(needs [][]term.Name) []term.Name {
	var out []term.Name
	seen := map[term.Name]bool{}
	for _, need := range needs {
		for _, n := range need {
			if !seen[n] {
				seen[n], out = true, append(out, n)
			}
		}
	}
	return out
}
