package grammar

import (
	"lastrow/calc/length"
	"lastrow/calc/term"
)

// dim is what a quantity measures.
type dim int

const (
	dLen   dim = iota
	dPair      // two lengths: the sides of a room
	dPlank     // two or three lengths: width, length, thickness
	dArea
	dCount
	dPercent
	dMoney
	dAngle
	dMass
)

// bareAs is how a number with no unit is read.
type bareAs int

const (
	bareNone  bareAs = iota
	bareRoom         // feet; metres where the message is metric
	bareSide         // as bareRoom, or inches from 60 on: a room's sides
	bareNear         // as bareRoom, or millimetres from 100 on: a closet's sides, a distance from a corner
	bareFace         // a plank's width or length: inches, or millimetres by size
	bareThick        // inches under 1 in, millimetres over 3
	bareSmall        // inches under 3, millimetres over
	bareInch         // inches; centimetres or millimetres where the message is metric
	bareRoll         // a roll's width and length: feet; metres where the message is metric
	bareArea         // square feet, or square metres
)

// slot is a place that a quantity can go to: its name, what it measures, how a bare number is read, the words that
// speak for it, and between what lengths it usually lies.
type slot struct {
	name    term.Name
	dim     dim
	bare    bareAs
	cues    string
	lo, hi  length.Length
	must    bool // only with a word for it
	count   string
	not     string // words that speak against it where the quantity belongs to them
	stacked bool   // with no word for it, only on top of the quantity before: "8mm on 2mm"
	loose   bool   // a bare number is taken for an area of its own
	paid    bool   // a bare number for each box is taken for an amount
	spoken  bool   // a bare whole number only with a word for it
}

const (
	inch = length.Inch
	foot = length.Foot
)

var (
	sAcross    = slot{name: term.Across, bare: bareSide, cues: "room hall wet across wide wall floor", lo: 2 * foot, hi: 200 * foot}
	sRoom      = slot{name: term.Room, dim: dPair, bare: bareSide, cues: "room hall wet floor closet", lo: foot, hi: 400 * foot}
	sPlank     = slot{name: "plank", dim: dPlank, bare: bareFace, cues: "plank"}
	sWidth     = slot{name: term.PlankWidth, bare: bareFace, cues: "plank wide", lo: 2 * inch, hi: 18 * inch}
	sLong      = slot{name: term.PlankLength, bare: bareFace, cues: "plank long", lo: 18 * inch, hi: 110 * inch}
	sThick     = slot{name: term.PlankThickness, bare: bareThick, not: "step tile carpet vinyl underlay", cues: "plank thick floor click", lo: 4 * length.Millimetre, hi: 20 * length.Millimetre}
	sUnder     = slot{name: term.UnderlayThickness, bare: bareThick, cues: "underlay thick", not: "step tile carpet vinyl plank other", stacked: true, lo: length.Millimetre, hi: 7 * length.Millimetre}
	sGap       = slot{name: term.Gap, bare: bareSmall, cues: "gap expansion leave around tight wall", lo: 1, hi: 3 * inch / 2, must: true}
	sFirst     = slot{name: term.FirstRow, bare: bareInch, cues: "firstrow rip start", lo: inch, hi: 18 * inch, must: true}
	sPerBox    = slot{name: term.PlanksPerBox, dim: dCount, cues: "box per", count: "per-box"}
	sCoverage  = slot{name: term.BoxCoverage, dim: dArea, cues: "box per cover each"}
	sArea      = slot{name: term.FloorArea, dim: dArea, bare: bareArea, cues: "area floor room hall wet"}
	sSpare     = slot{name: term.Spare, dim: dPercent, cues: "spare"}
	sSpareN    = slot{name: "spare-planks", dim: dCount, cues: "spare", must: true, count: "plank spare"}
	sPrice     = slot{name: term.Price, dim: dMoney, cues: "price box per each cost", must: false}
	sRun       = slot{name: term.Run, bare: bareRoom, cues: "run room hall long wall floor wet across wide", lo: 3 * foot, hi: 400 * foot}
	sFloorH    = slot{name: term.FloorHeight, bare: bareThick, cues: "floor high ours mine finished up total", not: "tile carpet vinyl underlay plank wood", lo: 3 * length.Millimetre, hi: 3 * inch, must: true}
	sOther     = slot{name: term.OtherHeight, bare: bareThick, cues: "tile carpet vinyl concrete wood high theirs other", not: "step plank underlay", lo: length.Millimetre, hi: 4 * inch}
	sDoorGap   = slot{name: term.DoorGap, bare: bareThick, cues: "door clearance gap under over concrete", lo: 2 * length.Millimetre, hi: 3 * inch}
	sRollW     = slot{name: term.RollWidth, bare: bareRoll, cues: "wide roll underlay", lo: foot, hi: 8 * foot}
	sRollL     = slot{name: term.RollLength, bare: bareRoll, cues: "long roll underlay", lo: 5 * foot, hi: 300 * foot}
	sRoll      = slot{name: "roll", dim: dPair, bare: bareRoll, cues: "roll comes", must: true}
	sOverlap   = slot{name: term.Overlap, bare: bareInch, cues: "overlap", must: true}
	sStick     = slot{name: term.StickLength, bare: bareRoom, cues: "stick long trim each at piece", lo: 4 * foot, hi: 24 * foot}
	sDoors     = slot{name: term.Doors, bare: bareInch, cues: "door doorway", lo: 18 * inch, hi: 20 * foot, must: true}
	sTrimThick = slot{name: term.TrimThickness, bare: bareThick, cues: "trim thick", lo: 3 * length.Millimetre, hi: 2 * inch}
	sTrimLen   = slot{name: term.TrimLength, bare: bareRoom, cues: "trim run around wall", lo: 2 * foot, hi: 5000 * foot}
	sSpacing   = slot{name: term.Spacing, bare: bareInch, cues: "every spacing one each at between apart", lo: inch, hi: 4 * foot}
	sTrack     = slot{name: term.Track, bare: bareInch, cues: "track long door doorway strip transition", lo: foot, hi: 30 * foot}
	sBead      = slot{name: term.Bead, bare: bareSmall, cues: "bead gap", lo: length.Millimetre, hi: inch}
	sEmbed     = slot{name: term.Embedment, bare: bareSmall, cues: "embed concrete", lo: inch / 2, hi: 4 * inch, must: true}
	sFixThick  = slot{name: term.FixtureThickness, bare: bareSmall, cues: "thick track", lo: length.Millimetre, hi: 2 * inch, must: true}
	sDip       = slot{name: term.Dip, bare: bareSmall, cues: "dip deep gap", lo: length.Millimetre / 2, hi: 4 * inch}
	sEdge      = slot{name: term.Straightedge, bare: bareRoom, cues: "straightedge over flat", lo: 18 * inch, hi: 20 * foot}
	sDepth     = slot{name: term.Depth, bare: bareSmall, cues: "deep thick dip high", lo: length.Millimetre / 2, hi: 6 * inch}
	sOffcut    = slot{name: term.Offcut, bare: bareInch, cues: "offcut long cut start piece leftover", lo: 2 * inch, hi: 110 * inch}
	sJoint     = slot{name: term.Joint, bare: bareInch, cues: "this", lo: 2 * inch, hi: 110 * inch, must: true}
	sPrevious  = slot{name: term.PreviousJoint, bare: bareInch, cues: "joint lastrow previous before", lo: 2 * inch, hi: 110 * inch, must: true}
	sAround    = slot{name: term.Perimeter, bare: bareRoom, cues: "around total trim run for wall", lo: 4 * foot, hi: 5000 * foot}
	sOffset    = slot{name: term.Offset, bare: bareInch, cues: "stagger between apart", lo: inch, hi: 60 * inch, must: true}
	sLeastSt   = slot{name: term.LeastStagger, bare: bareInch, cues: "least", lo: 3 * inch, hi: 3 * foot, must: true}
	sCloset    = slot{name: term.Closet, dim: dPair, bare: bareRoom, cues: "closet", lo: foot}
	sRowN      = slot{name: term.Row, dim: dCount, cues: "row", must: true, count: "row"}
	sPieceN    = slot{name: term.Piece, dim: dCount, cues: "piece plank", must: true, count: "piece plank"}
	sBoxes     = slot{name: term.Boxes, dim: dCount, cues: "box need order", must: true, count: "box need order"}
	sCorner    = slot{name: term.Corner, dim: dAngle, cues: "corner angle"}
)

var (
	sPaid       = slot{name: term.Price, dim: dMoney, cues: "price box per each cost", paid: true}
	sThickSaid  = slot{name: term.PlankThickness, bare: bareThick, cues: "plank thick floor", lo: 4 * length.Millimetre, hi: 20 * length.Millimetre, spoken: true}
	sCrew       = slot{name: term.Crew, dim: dCount, cues: "crew guys guy people hands persons us", must: true, count: "crew guys guy people hands persons us"}
	sPayload    = slot{name: term.Payload, dim: dMass, cues: "load lift"}
	sRollPrice  = slot{name: term.RollPrice, dim: dMoney, cues: "roll underlay", must: true}
	sStickPrice = slot{name: term.StickPrice, dim: dMoney, cues: "stick trim", must: true}
)

// takes is what each kind of question takes, in the order that people say it.
var takes = map[term.Kind][]slot{
	term.AskRows:       {sAcross, sRoom, sWidth, sPlank, sLong, sGap, sFirst},
	term.AskBoxes:      {sRoom, sArea, sWidth, sPlank, sLong, sThick, sPerBox, sCoverage, sSpare, sPrice, sGap, sSpareN},
	term.AskGap:        {sRun, sRoom},
	term.AskLongRun:    {sRun, sRoom},
	term.AskStagger:    {sOffcut, sJoint, sPrevious, sPlankLenOnly, sLeastSt, sOffset},
	term.AskTransition: {sFloorH, sThick, sUnder, sOther},
	term.AskUndercut:   {sThick, sUnder},
	term.AskDoor:       {sDoorGap, sThick, sUnder},
	term.AskHeadroom:   {sCeiling, sSill, sRiser, sThick, sUnder},
	term.AskUnderlay:   {sRoom, sArea, sRoll, sRollW, sRollL, sOverlap},
	term.AskTrim:       {sRoom, sAround, sDoors, sStick},
	term.AskTrimCover:  {sTrimThick, sGap, sRun},
	term.AskScrews:     {sTrack, sSpacing, sEmbed, sFixThick},
	term.AskNails:      {sTrimLen, sSpacing, sRoom},
	term.AskCaulk:      {sTrimLen, sBead, sRoom},
	term.AskSquare:     {sSides, sSideA, sSideB, sDiagonal},
	term.AskTaper:      {sHere, sThere, sTaperLong},
	term.AskMiter:      {sCorner},
	term.AskMoisture:   {sSlabThick},
	term.AskFlatness:   {sDip, sEdge},
	term.AskLeveler:    {sArea, sRoom, sDepth},
	term.AskHours:      {sArea, sRoom, sCrew},
	term.AskCost:       {sBoxes, sPaid, sArea, sRoom, sCoverage, sSpare, sPerBox, sPlank, sThick, sRollPrice, sStickPrice},
	term.AskWeight:     {sArea, sRoom, sThickSaid, sBoxes, sCoverage, sPerBox, sPlank, sPayload},
	term.AskLeftover:   {sCloset, sArea, sLeftCount, sPlank},
	term.AskStart:      {sRoom, sWidth, sPlank, sGap},
	term.AskRow:        {sRowN},
	term.AskPiece:      {sRowN, sPieceN},
	term.AskPlan:       {sRoom, sPlank, sWidth, sGap},
	term.AskShopping:   {sStick, sSpare, sPrice, sRollPrice, sStickPrice, sRoom, sPlank, sPerBox},
}

var (
	sPlankLenOnly = slot{name: term.PlankLength, bare: bareFace, cues: "plank", lo: 18 * inch, hi: 110 * inch, must: true}
	sCeiling      = slot{name: term.Ceiling, bare: bareRoom, cues: "ceiling headroom", lo: 4 * foot, hi: 20 * foot}
	sSill         = slot{name: term.Sill, bare: bareInch, cues: "sill window", lo: 6 * inch, hi: 6 * foot, must: true}
	sRiser        = slot{name: term.Riser, bare: bareInch, cues: "riser stairs", lo: 4 * inch, hi: 12 * inch, must: true}
	sSides        = slot{name: "sides", dim: dPair, bare: bareRoom, lo: foot}
	sSideA        = slot{name: term.SideA, bare: bareRoom, cues: "wall", lo: foot, hi: 200 * foot}
	sSideB        = slot{name: term.SideB, bare: bareRoom, cues: "wall", lo: foot, hi: 200 * foot}
	sDiagonal     = slot{name: term.Diagonal, bare: bareRoom, cues: "diagonal across square", lo: foot, hi: 300 * foot}
	sHere         = slot{name: term.WidthHere, bare: bareFace, cues: "here", lo: inch / 8, hi: 30 * inch}
	sThere        = slot{name: term.WidthThere, bare: bareFace, cues: "there", lo: inch / 8, hi: 30 * inch}
	sTaperLong    = slot{name: term.Length, bare: bareRoom, cues: "long over run", lo: 2 * foot, hi: 200 * foot}
	sSlabThick    = slot{name: term.SlabThickness, bare: bareInch, cues: "concrete thick", lo: inch, hi: 16 * inch, must: true}
	sLeftCount    = slot{name: term.Leftover, dim: dCount, cues: "plank leftover remaining ones full whole", must: true, count: "plank leftover ones remaining"}
)
