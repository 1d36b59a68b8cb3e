package limit

import "lastrow/calc/length"

// Steps between floors.
var (
	StepVertical = both("step-vertical", "step with no edge treatment", in/4,
		"2010 ADA Standards 303.2", Published)
	StepBevelled = both("step-bevelled", "step with a bevel, the vertical part included", in/2,
		"2010 ADA Standards 303.3", Published)
	BevelSlope = amount("bevel-slope", "run of a bevel for its rise, at least", 2, 1, "to 1",
		"2010 ADA Standards 303.3", Published)
	RampSlope = amount("ramp-slope", "run of a ramp for its rise, at least", 12, 1, "to 1",
		"2010 ADA Standards 303.4, 405.2", Published)
	ThresholdOld = both("threshold-existing", "existing or altered threshold, bevelled 1:2 on both sides", 3*in/4,
		"2010 ADA Standards 404.2.5 exception", Published)
	CarpetPile = both("carpet-pile", "carpet pile, to the backing", in/2,
		"2010 ADA Standards 302.2", Published)
	NearLevel = both("near-level", "step that a t-molding bridges", in/8,
		none, Practice)
)

// Doors and jambs.
var (
	UndercutPlay = each("undercut-play", "play under a jamb above plank and underlay", in/16, 1*mm,
		none, Practice)
	DoorWorking = each("door-working", "least working clearance under a door that swings", in/8, 3*mm,
		"no source: 1/8 in swings free, 3/8 in is a usual finished clearance", Practice)
	FireDoor = both("fire-door", "clearance under a fire door, above the finished floor", 3*in/4,
		"NFPA 80 4.8.4, from the 2007 edition on", Published)
)

// Stairs, ceilings, sills and hearths in dwellings.
var (
	RiserMost = both("riser-most", "highest riser of a stair", 31*in/4,
		"2018 IRC R311.7.5.1", Published)
	RiserSpread = both("riser-spread", "largest riser less smallest, in a whole flight", 3*in/8,
		"2018 IRC R311.7.5.1", Published)
	StairHeadroom = both("stair-headroom", "least headroom over a stair", 80*in,
		"2018 IRC R311.7.2", Published)
	CeilingLeast = both("ceiling-least", "least ceiling height of a habitable room or hallway", 84*in,
		"2018 IRC R305.1", Published)
	CeilingBath = both("ceiling-bath", "least ceiling height of a bath, toilet or laundry room", 80*in,
		"2015 IRC R305.1", Published)
	SillMost = both("sill-most", "highest sill of an escape window, to the clear opening", 44*in,
		"2018 IRC R310.2.2 (R310.2.3 from 2021)", Published)
	SillLeast = both("sill-least", "lowest sill without fall protection, 72 in or more above the ground outside", 24*in,
		"2018 IRC R312.2", Published)
	EgressDrop = both("egress-drop", "drop from the top of the threshold of the required egress door to the floor", 3*in/2,
		"2018 IRC R311.3.1", Published)
	GuardLeast = both("guard-least", "least height of a guard above the floor beside it", 36*in,
		"2018 IRC R312.1.2", Published)
)

// What goods and houses measure at all: anything beyond is a slip of the tape or the thumb, and is asked back.
var (
	PlankThickLeast = both("plank-thickness-least", "thinnest plank of a floating floor", 4*mm, none, Practice)
	PlankThickMost  = both("plank-thickness-most", "thickest plank of a floating floor", in, none, Practice)
	UnderlayMost    = both("underlay-most", "thickest underlay of a floating floor", in/2, none, Practice)
	BuildUpMost     = both("build-up-most", "highest build-up of a floating floor", 2*in, none, Practice)
	OtherFloorMost  = both("other-floor-most", "highest neighbouring floor above the same subfloor", 4*in, none, Practice)
	DoorGapMost     = both("door-gap-most", "largest gap under a door", 4*in, none, Practice)
	CeilingMost     = both("ceiling-most", "highest ceiling of a dwelling", 30*length.Foot, none, Practice)
	RiserLow        = both("riser-low", "lowest riser of a stair", 2*in, none, Practice)
	RiserHigh       = both("riser-high", "highest step that is still a riser", 14*in, none, Practice)
)
