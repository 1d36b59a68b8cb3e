package caution

import (
	"slices"
	"strings"

	"lastrow/calc"
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/subfloor"
	"lastrow/calc/term"
)

// Disturbed is the painted face of trim that comes off, and whether it is over what 40 CFR 745.83 calls minor: 6 sq ft in a
// room. A removed piece counts with its whole face; 6 sq ft exactly is still minor.
func Disturbed(run, height length.Length) (face length.Area, over bool) {
	face = run.Times(height)
	return face, face.Over(length.SquareFoot).Cmp(limit.LeadMinor.Rat()) > 0
}

func overLeadMinor(c Circumstance) bool {
	run, height := lengthOf(c.given(term.TrimLength)), lengthOf(c.given(term.TrimHeight))
	if run == 0 {
		run = lengthOf(c.value(term.TrimLength))
	}
	_, over := Disturbed(run, height)
	return over && slices.Contains(c.Signs, "old-coatings")
}

// step is the height of a transition, up or down.
func (c Circumstance) step() length.Length {
	if !c.asks(term.AskTransition) {
		return 0
	}
	s := lengthOf(c.value(term.Step))
	return max(s, -s)
}

// raises says whether the question is on what a raised floor does to one of the heights.
func (c Circumstance) raises(names ...term.Name) bool {
	if !c.asks(term.AskHeadroom) {
		return false
	}
	for _, n := range names {
		if c.given(n) != nil {
			return true
		}
	}
	return false
}

// narrowCut is a rip too narrow for a hand, a taper, or a notch.
func narrowCut(c Circumstance) bool {
	narrow := limit.NarrowRip.In(c.system())
	switch {
	case c.asks(term.AskTaper):
		return min(lengthOf(c.given(term.WidthHere)), lengthOf(c.given(term.WidthThere))) < narrow
	case c.asks(term.AskRows, term.AskStart):
		plank := lengthOf(c.given(term.PlankWidth))
		return ripped(c.value(term.LastRowWidth), plank, narrow) || ripped(c.value(term.FirstRowWidth), plank, narrow)
	}
	return c.asks(term.AskPlan, term.AskCutList, term.AskRow, term.AskPiece) && c.anyCut(func(cut layout.Cut) bool {
		return cut.What == "notch" || (cut.What == "rip" || cut.What == "taper") && min(cut.Near, cut.Far) < narrow
	})
}

// ripped says whether a row is ripped to under a width; a whole plank that is as narrow is not.
func ripped(v term.Value, plank, least length.Length) bool {
	return short(v, least) && lengthOf(v) < plank
}

// heated is a heated subfloor, where it is told or where something of the answer depends on it.
func heated(c Circumstance) bool {
	s := strings.ReplaceAll(c.subfloor(), "unheated", "")
	return (c.sets(term.SetSubfloor) || c.onSubfloor() || c.asks(term.AskScrews)) && (strings.Contains(s, "heated") || strings.Contains(s, "radiant"))
}

// onSubfloor says whether the question is of laying on the subfloor.
func (c Circumstance) onSubfloor() bool {
	return c.asks(term.AskVaporBarrier, term.AskAcclimate, term.AskStart, term.AskPlan, term.AskShopping, term.AskUnderlay, term.AskMoisture)
}

// wet is a job of a room where water stands, by its name.
func wet(c Circumstance) bool {
	if c.Job == nil || !c.sets(term.SetJob, term.SetRoom, term.SetWalls) && !c.asks(term.AskStart, term.AskPlan, term.AskBoxes, term.AskShopping) {
		return false
	}
	name := strings.ToLower(c.Job.Name)
	return slices.ContainsFunc([]string{"bath", "laundry", "shower", "wet room", "wetroom"}, func(w string) bool { return strings.Contains(name, w) })
}

// readingFails says whether the reading just put on record breaks the limit of a kind of question.
func (c Circumstance) readingFails(k term.Kind) bool {
	if c.Job == nil || !c.sets(term.SetReading) {
		return false
	}
	r, err := calc.Answer(c.Job, calc.Question{Kind: k})
	return err == nil && Circumstance{Result: r}.fails()
}

// wetSlab is a reading over the limit, by any test but that of a wood subfloor.
func wetSlab(c Circumstance) bool {
	return (c.asks(term.AskMoisture) && c.fails() || c.readingFails(term.AskMoisture)) && c.given(term.Test) != term.Word(subfloor.Wood)
}

func notFlat(c Circumstance) bool {
	return c.asks(term.AskFlatness) && c.fails() || c.readingFails(term.AskFlatness)
}

// slabUntested is a slab with no reading, where the question is of laying on it.
func slabUntested(c Circumstance) bool {
	return c.ground() == subfloor.Mineral && c.given(term.Reading) == nil && (c.onSubfloor() || c.sets(term.SetSubfloor))
}

// flatnessUnread is a question on the subfloor with no reading of a straightedge.
func flatnessUnread(c Circumstance) bool {
	return c.asks(term.AskVaporBarrier, term.AskMoisture) && c.given(term.Dip) == nil
}

func tooLong(c Circumstance) bool {
	return c.asks(term.AskLongRun) && c.fails() ||
		(c.sets(term.SetRoom, term.SetWalls) || c.asks(term.AskGap, term.AskRows, term.AskBoxes, term.AskStart, term.AskPlan, term.AskTrimCover)) &&
			c.longest() > c.least(term.Limit, limit.LongRun)
}

// saws is boards to be cut: a layout asked for, or jambs and doors to be trimmed.
func saws(c Circumstance) bool {
	return c.asks(term.AskUndercut) || c.asks(term.AskDoor) && lengthOf(c.value(term.TrimOff)) > 0 ||
		c.asks(term.AskPlan, term.AskCutList, term.AskRow, term.AskPiece) && c.anyPiece(func(p layout.Piece) bool { return len(p.Cuts) > 0 })
}

// layingBegins is boxes opened before any row is laid.
func layingBegins(c Circumstance) bool {
	return c.sets(term.SetOpened) && count(c.given(term.Laid)) == 0
}

func narrowRow(c Circumstance) bool {
	least := c.least(term.LeastRow, limit.LeastRow)
	return c.breaks("narrow-row") || c.asks(term.AskRows, term.AskStart) && (short(c.value(term.LastRowWidth), least) || short(c.value(term.FirstRowWidth), least))
}

func shortEnd(c Circumstance) bool {
	return c.breaks("short-end") || c.asks(term.AskStagger) && short(c.given(term.Offcut), c.least(term.LeastEnd, limit.LeastEnd))
}
