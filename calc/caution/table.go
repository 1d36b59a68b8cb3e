package caution

import (
	"lastrow/calc/layout"
	"lastrow/calc/limit"
	"lastrow/calc/subfloor"
	"lastrow/calc/term"
)

// never is the condition of a row that only a danger mentioned in passing can raise.
func never(Circumstance) bool { return false }

var table = []rule{
	{Caution{"combustion-air", "A furnace, water heater or dryer may draw its air under or through this door: don't seal or lower that gap until the appliance's " +
		"instructions and the local code, or a licensed technician, say how much air it needs.",
		"from memory: combustion air provisions of NFPA 54 and the local mechanical code", 100}, never},
	{Caution{"old-coatings", "More than 6 sq ft of paint would be disturbed: in a house from before 1978 take it to hold lead and have it tested; " +
		"for paid work the lead rule asks for a certified renovator. A piece that comes off counts with its whole face.",
		limit.LeadMinor.Source, 96}, overLeadMinor},
	{Caution{"old-coatings", "Old paint may hold lead, and old floor tiles, sheet backing and black adhesive may hold asbestos: don't sand, grind, scrape or saw them; " +
		"leave or cover what is sound, have it tested first, and leave removal to licensed help. Never sweep the dust dry.",
		"40 CFR 745 (lead); Minnesota Department of Health and the warnings in ASTM F2170 and F1869 (asbestos)", 95}, never},
	{Caution{"buried-lines", "Find what lies in the slab before drilling: heating tubes, cables or tensioned tendons. A tendon cut can kill; if the slab may " +
		"be post-tensioned or heated, don't drill until it has been scanned or its drawings checked.",
		"common practice, no source", 90}, drillsSlab},
	{Caution{"silica-dust", "Drilling or cutting concrete frees silica dust: use a shroud or cowl with a dust-collecting vacuum, never a dry cut, and clean the holes with a " +
		"HEPA vacuum, not compressed air.",
		"OSHA 29 CFR 1926.1153 Table 1", 85}, drillsSlab},
	{Caution{"saw-safety", "Narrow rips and notches: guard and riving knife on, a push stick for the last hand's breadth, the piece clamped for the jigsaw, eyes and ears " +
		"covered, and the saw unplugged to change a blade. The saw's own instructions rule.",
		"from memory: OSHA 29 CFR 1926 subpart I on saws", 82}, narrowCut},
	{Caution{"trip-edge", "A step over 1/2 in needs a ramp or a longer reducer, not an edge to trip on; where access rules apply, no steeper than 1 in 12. The local code rules.",
		limit.StepBevelled.Source + ", 303.4", 66}, func(c Circumstance) bool { return c.step() > limit.StepBevelled.Inch }},
	{Caution{"trip-edge", "A step over 1/4 in needs a bevel, no steeper than 1 in 2: fit a profile that slopes. The local code rules.",
		limit.StepVertical.Source + ", 303.3", 65}, func(c Circumstance) bool { return c.step() > limit.StepVertical.Inch }},
	{Caution{"stair-riser", "Raising a floor that meets a stair changes its first or last riser; the risers of a whole flight may differ by 3/8 in at most. Measure them all, and ask " +
		"the local building office before the floor goes down.",
		limit.RiserSpread.Source, 62}, func(c Circumstance) bool { return c.raises(term.Riser) }},
	{Caution{"headroom", "The raised floor takes its height from the ceiling and from the sill: both have limits in the code for living rooms and escape windows. " +
		"The local code decides.",
		limit.CeilingLeast.Source + ", R310.2.2, R312.2", 58}, func(c Circumstance) bool { return c.raises(term.Ceiling, term.Sill) }},
	{Caution{"heated-floor", "Over a heated floor: only planks and underlay that their makers allow there, 0.15 m²K/W in all at most, and no surface warmer than 27 °C or what the sheet says. " +
		"Heating off before and during laying, and raised slowly after.",
		"EN 1264 (resistance); trade texts (27 °C)", 54}, heated},
	{Caution{"wet-room", "Laminate swells where water stands: use it in a bathroom or laundry only where the product's sheet allows it, with every edge sealed, and never round a floor drain.",
		"Danish floor trade's laminate fact sheet: not for wet rooms", 50}, wet},
	{Caution{"slab-moisture", "The slab is too wet: don't lay, and don't count on a film alone. Find where the water comes from, let it dry and test again; the product's own limit rules.",
		limitsOfSlabs, 48}, wetSlab},
	{Caution{"slab-moisture", "No moisture reading is on record for this slab: test it before the planks come (three tests for the first 1000 sq ft), whatever its age. A dry plastic sheet proves nothing.",
		limitsOfSlabs, 46}, slabUntested},
	{Caution{"not-flat", "The subfloor is out of tolerance: grind or fill it before laying, or the locks will work loose. Grinding old floors and concrete has dust of its own to guard against.",
		limit.FlatTenFeet.Source + "; the product's own limit rules", 44}, notFlat},
	{Caution{"not-flat", "No flatness reading is on record: lay a straightedge in several directions and measure the widest gap before the underlay goes down.",
		limit.FlatTenFeet.Source, 28}, flatnessUnread},
	{Caution{"door-swing", "The door would rub on the new floor: mark it from the floor, take it off its hinges and trim it before laying up to it. A fire door is trimmed only as its label allows.",
		limit.DoorWorking.Source, 40}, func(c Circumstance) bool { return c.asks(term.AskDoor) && lengthOf(c.value(term.TrimOff)) > 0 }},
	{Caution{"long-run", "The floor is longer or wider than it may be in one piece: part it with a profile, at a doorway where you can. The product's own sheet rules.",
		limit.LongRun.Source, 38}, tooLong},
	{Caution{"uncovered-gap", "This trim would not hide the gap once the floor has shrunk: take thicker trim or add a quarter round, nailed to the wall or the base, never into the floor.",
		"ANSI A208.2, from memory: linear expansion of the core, as a ceiling", 36}, func(c Circumstance) bool { return c.asks(term.AskTrimCover) && c.fails() }},
	{Caution{"wood-dust", "Saw outside or with a vacuum on the saw, and wear a dust mask: dust of fibreboard is fine and holds resin.",
		"common practice; TSCA Title VI, 40 CFR 770, limits the formaldehyde", 34}, saws},
	{Caution{"acclimate", "Let the boxes lie flat and closed in the room for 48 hours, or as long as their sheet says, at the warmth and humidity of use, before the first row.",
		"common practice; the product's sheet rules", 32}, layingBegins},
	{Caution{"trapped-plank", "A piece can't be tilted into its lock here: join its row first and slide it in flat, or shave the lock's lip, glue it and pull it together with a bar.",
		"common practice, no source", 30}, func(c Circumstance) bool { return c.anyPiece(func(p layout.Piece) bool { return p.Trapped != "" }) }},
	{Caution{"narrow-row", "The first or last row is narrower than is sound: rip the first row too, so that both come out alike and wide.",
		limit.LeastRow.Source, 26}, narrowRow},
	{Caution{"short-end", "A piece at the end of a row is shorter than is sound: start the row with another length.",
		limit.LeastEnd.Source, 24}, shortEnd},
	{Caution{"close-joints", "Joints in neighbouring rows lie too close: the floor is weak there. Start the row with another length.",
		limit.LeastStagger.Source, 22}, func(c Circumstance) bool {
		return c.breaks("close-joints") || c.asks(term.AskStagger) && c.fails()
	}},
}

const limitsOfSlabs = "ASTM F710 with F2170 (75 % RH) and F1869 (3 lb), where the maker says nothing else"

// drillsSlab is screws into a slab, or into a subfloor that nobody has called timber.
func drillsSlab(c Circumstance) bool {
	return c.asks(term.AskScrews) && c.ground() != subfloor.Timber
}
