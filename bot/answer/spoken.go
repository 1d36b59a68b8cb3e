package answer

import (
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// spoken are the first lines that a table of words can't say.
var spoken = map[term.Kind]func(names) string{
	term.AskBoxes: boxes, term.AskTransition: transition, term.AskDoor: door,
}

func (n names) length(name term.Name) length.Length {
	l, _ := n.of[name].(term.Len)
	return length.Length(l)
}

func (n names) say(line string) string {
	s, _ := n.fill(line)
	return s
}

// boxes compares with the rule of thumb only where there is something else to compare.
func boxes(n names) string {
	if _, laid := n.of[term.Planks]; !laid {
		return n.say("{boxes} boxes for {area}, by area with {waste} for waste.")
	}
	return n.say("{boxes} boxes ({planks} planks, spares among them) for {area}. By area and the usual allowance: {boxes-by-area}.")
}

// transition says which floor is higher, and what bridges the step.
func transition(n names) string {
	step := n.length(term.Step)
	by := text(term.Len(max(step, -step)), n.tape)
	var line string
	switch {
	case n.tape.Round(step) == 0:
		line = "the floors are as good as level"
	case step > 0:
		line = "the new floor stands " + by + " higher"
	case step < 0:
		line = "the new floor lies " + by + " lower"
	}
	profile, _ := n.of[term.Profile].(term.Word)
	line += ": " + article(strings.ReplaceAll(string(profile), "-", " ")) + "."
	if n.length(term.Bevel) > 0 {
		line += n.say(" Slope it over {bevel}.")
	}
	return line
}

func article(noun string) string {
	if strings.HasPrefix(noun, "end") {
		return "an " + noun
	}
	return "a " + noun
}

// door says whether a door swings over the new floor.
func door(n names) string {
	switch {
	case n.length(term.TrimOff) <= 0:
		return n.say("it clears the new floor by {door-clearance}.")
	case n.length(term.DoorClearance) < 0:
		return n.say("it would jam on the new floor: take {trim-off} off the door.")
	}
	return n.say("it would rub, with {door-clearance} left: take {trim-off} off the door.")
}
