package limit

import "lastrow/calc/length"

const (
	in   = length.Inch
	mm   = length.Millimetre
	none = "no source"
)

// The rules of the layout. A user may set each for a job.
var (
	LeastRow = each("least-row", "narrowest first or last row", 2*in, 50*mm,
		"two trade texts, no standard", Practice)
	LeastEnd = each("least-end", "shortest piece at the end of a row", 8*in, 200*mm,
		"trade texts; newer ones ask 12 in (300 mm)", Practice)
	LeastStagger = each("least-stagger", "least distance between joints of neighbouring rows", 12*in, 300*mm,
		"trade texts: 8, 12 or 16 in, mostly 12", Practice)
	Kerf = each("kerf", "width of the saw's cut", in/8, 3_200_000,
		none, Practice)
	LockLip = each("lock-lip", "how far the lock's lip stands out beyond the face, on the near and the left edge", in/8, 3*mm,
		none, Practice)
	Spare = amount("spare", "planks over the layout, at least one", 5, 1, "%",
		"no source: 2 to 5 % is often kept as attic stock", Practice)
	WasteByArea = amount("waste-by-area", "waste in the rule of thumb by area, straight rows", 10, 1, "%",
		"no source: 5 to 10 % straight, 15 % diagonal", Practice)
	TapeMark = each("tape-precision", "finest mark read off the tape", in/16, 1*mm,
		none, Practice)
)

// Tracks, trim and fastenings.
var (
	EmbedLeast = each("embedment-least", "least depth of a 3/16 or 1/4 in screw in concrete", in, 25*mm,
		"trade texts; the screw maker's sheet rules", Practice)
	EmbedMost = each("embedment-most", "greatest depth of a 3/16 or 1/4 in screw in concrete", 7*in/4, 45*mm,
		"trade texts; the screw maker's sheet rules", Practice)
	HoleExtra = each("hole-extra", "depth of the hole beyond the screw's end", in/4, 6*mm,
		"trade texts: 1/4 in for screws, 1/2 in as the general anchor rule", Practice)
	ScrewSpacing = amount("screw-spacing-least", "least distance between concrete screws", 10, 1, "diameters",
		"trade texts on concrete screws", Practice)
	ScrewEdge = amount("screw-edge-least", "least distance from a concrete screw to an edge", 5, 1, "diameters",
		"trade texts on concrete screws; some anchor tables ask 6 to 10", Practice)
	ConcreteAge = amount("concrete-age", "least age of concrete that is drilled for screws", 28, 1, "days",
		"trade texts on concrete screws", Practice)
	NailHold = amount("nail-length", "nail length to the thickness that it holds", 3, 1, "times",
		"US Navy Builder training manual, nails", Published)
	StudSpacing = each("stud-spacing", "studs on centre, where trim is nailed", 16*in, 400*mm,
		none, Practice)
	TrackEnd = each("track-end", "distance of the last screw from the end of a track", in, 25*mm,
		none, Practice)
	StickLength = each("stick-length", "length that trim and transitions are sold in", 8*length.Foot, 2400*mm,
		none, Practice)
	DoorWidth = each("door-width", "width of a door, where only the number of doors is known", 32*in, 800*mm,
		none, Practice)
	TrimWaste = amount("trim-spare", "waste of trim bought by length, for cuts and spoilt mitres", 10, 1, "%",
		none, Practice)
	SealantLoss = amount("sealant-loss", "sealant left in the tube and on the finger", 10, 1, "%",
		"no source: 5 to 20 %", Practice)
	ProfileLength = each("profile-length", "length that doorway profiles are sold in", 72*in, 1800*mm,
		none, Practice)
	ShortStick = each("stick-short", "by how much a profile may be shorter than it is called", in/4, 6*mm,
		none, Practice)
	TrimThickness = each("trim-thickness", "thickness of trim", in/2, 12*mm,
		none, Practice)
	SpacerSpacing = each("spacer-spacing", "pair of spacers along the walls", 2*length.Foot, 600*mm,
		none, Practice)
	LabourRateMetric = amount("rate-metric", "floor laid in a person's hour, cuts included, of a metric job", 4, 1, "sq m",
		"no source: 2 to 6 sq m", Practice)
	LabourRate = amount("rate", "floor laid in a person's hour, cuts included", 40, 1, "sq ft",
		"no source: 20 to 60 sq ft; trade text: installer and helper 1000 sq ft a day", Practice)
	NarrowRip = each("narrow-rip", "strip that a hand should not feed past a saw blade", 4*in, 100*mm,
		none, Practice)
)

// Coatings and dust.
var (
	LeadMinor = amount("lead-minor", "painted surface disturbed in one room indoors, at most, before the lead rule applies", 6, 1, "sq ft",
		"40 CFR 745.83, minor repair and maintenance", Published)
	LeadMinorHUD = amount("lead-minor-hud", "the same in housing assisted by HUD", 2, 1, "sq ft",
		"HUD 24 CFR 35.1350(d)", Published)
)
