package limit

import "lastrow/calc/length"

// Gaps at the edges, and how far a floor may run in one piece. The product's own sheet rules over each of them.
var (
	GapLeast = each("gap-least", "least gap at each edge", in/4, 8*mm,
		"NF DTU 51.11 in a trade guide: 8 mm, for laminate by extension; 1/4 in: no source", Practice)
	GapPerMetre = amount("gap-per-metre", "gap at each edge for a metre of run", 3, 2, "mm",
		"NF DTU 51.11 in a trade guide: 0.15 % of the run at each edge, for laminate by extension", Practice)
	LongRun = each("long-run", "longest run or width in one piece", 27*length.Foot, 8000*mm,
		"trade texts on NF DTU 51.11 and Australasian practice: 8 m; US practice 27 to 40 ft, no standard", Practice)
	FieldJoint = both("field-joint", "width of the joint that parts a floor, under a profile", 15*mm,
		"trade texts on NF DTU 51.11", Practice)
	MoveCeiling = amount("movement-ceiling", "movement of a metre of core for a point of humidity, at most", 11, 100, "mm",
		"ANSI A208.2: linear expansion of MDF at most 0.33 %, over the step of 50 to 80 % RH", Memory)
	SeasonSwing = amount("season-swing", "humidity swing over a year indoors, where none is measured", 30, 1, "points RH",
		"no source: 30 to 60 % RH", Practice)
)

// DefaultGap is the gap at each edge of a run where nobody says: the larger of GapLeast and GapPerMetre, rounded up to
// 1/16 in or 1 mm.
func DefaultGap(run length.Length, s length.System) length.Length {
	return length.Tape{System: s}.Up(max(GapLeast.In(s), ByRun(run)))
}

// ByRun is GapPerMetre for the run, rounded up to the nanometre.
func ByRun(run length.Length) length.Length {
	metre, rate := int64(length.Metre), GapPerMetre
	nm := rate.num * int64(mm)
	return length.Length((int64(run)*(nm/rate.den) + metre - 1) / metre)
}
