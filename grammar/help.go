package grammar

import "lastrow/calc/term"

// Example is a message that reads to the kind it stands under.
type Example struct {
	Kind term.Kind
	Tell bool // a statement
	Text string
}

// Examples are a few ways to say each kind. A test reads them all.
var Examples = []Example{
	{term.AskRows, false, "last row for an 11ft 4in room, plank 7 5/8"},
	{term.AskRows, false, "how wide is the last row, 3.45 m across, 192 mm boards, 10 mm gap"},
	{term.AskBoxes, false, "how many boxes for a 12 x 14 room, 21.5 sq ft a box"},
	{term.AskBoxes, false, "how many packs for 18 m2, 2.22 m2 in a pack"},
	{term.AskGap, false, "what gap do I leave, the room is 22 ft long"},
	{term.AskLongRun, false, "can I run 45 ft without a break"},
	{term.AskStagger, false, "offcut is 16 in, last joint at 22, plank 48 long, enough stagger?"},
	{term.AskTransition, false, "12mm plank on 2mm underlay to 3/4 carpet, which strip?"},
	{term.AskUndercut, false, "how much undercut for 12mm plank and 2mm underlay"},
	{term.AskDoor, false, "door has 5/8 under it, 8mm plank, 2mm underlay, will it rub?"},
	{term.AskHeadroom, false, "headroom under a 6ft 10 ceiling with 12mm plank and 2mm underlay?"},
	{term.AskUnderlay, false, "how many rolls of underlay for 11 x 13, roll 4 ft x 25 ft"},
	{term.AskTrim, false, "how much baseboard for a 12 x 10 room, 16 ft sticks, 32 in door"},
	{term.AskTrimCover, false, "will 1/2 in baseboard cover a 3/8 gap, 14 ft wall"},
	{term.AskScrews, false, "how many screws for a 32 1/2 in track, one every 10"},
	{term.AskNails, false, "how many nails for 60 ft of baseboard, one every 16 in"},
	{term.AskCaulk, false, "how many tubes of caulk for 60 ft of trim, 1/4 in bead"},
	{term.AskSquare, false, "is it square, walls 12 ft and 15 ft, diagonal 19 ft 3"},
	{term.AskTaper, false, "taper from 4 1/8 here to 3 3/8 there over 12 ft"},
	{term.AskMiter, false, "what miter for a 135 degree corner"},
	{term.AskFlatness, false, "3/16 dip under a 10 ft straightedge, flat enough?"},
	{term.AskLeveler, false, "how much leveler for 24 sq ft, 1/4 in deep"},
	{term.AskMoisture, false, "slab reads 78% RH, ok to lay?"},
	{term.AskVaporBarrier, false, "do I need a vapor barrier on a slab?"},
	{term.AskAcclimate, false, "how long do the boxes acclimate?"},
	{term.AskHours, false, "how long will it take to lay 200 sq ft"},
	{term.AskCost, false, "what will it cost, 12 boxes at $31.90 a box"},
	{term.AskWeight, false, "how heavy are 200 sq ft of 12mm plank"},
	{term.AskMeasure, false, "47 1/2 - 18 3/16 - 1/8"},
	{term.AskMeasure, false, "11ft 4in in mm"},
	{term.AskMeasure, false, "half of 92 1/2"},
	{term.AskLeftover, false, "leftovers are 40, 33 and 28 in, enough for a 4 ft x 2 ft closet?"},
	{term.AskStart, false, "which wall do I start at?"},
	{term.AskPlan, false, "show me the plan"},
	{term.AskCutList, false, "cut list"},
	{term.AskRow, false, "show row 8"},
	{term.AskPiece, false, "show row 3 piece 2"},
	{term.AskStatus, false, "how many rows are left?"},
	{term.AskShopping, false, "shopping list"},
	{term.AskHelp, false, "help"},
	{term.AskUnits, false, "use metric"},
	{term.AskUndo, false, "undo"},
	{term.AskHistory, false, "history"},
	{term.AskJobs, false, "what jobs have I got"},
	{term.AskShare, false, "share this job"},
	{term.AskUnshare, false, "stop sharing"},
	{term.AskExport, false, "export"},
	{term.AskForget, false, "forget everything"},
	{term.SetJob, true, "job Alder basement"},
	{term.SetRoom, true, "room 11ft 4in x 12ft 6in"},
	{term.SetRoom, true, `room 12'4" x 9'2" with 3' x 2'6" out of the NE corner`},
	{term.SetRoom, true, "room 12' x 10' with the NE corner cut off 2' x 2' at an angle"},
	{term.SetWalls, true, "walls E 12'4, S 9', W 3', S 2'6, W 9'4, N 11'6"},
	{term.SetWalls, true, "walls E 12', NE 3', N 6', W 14' 1 1/2, S 8' 1 1/2"},
	{term.SetCloset, true, "closet 5' x 2' off the north wall, 3' from the west corner, opening 4'"},
	{term.SetCloset, true, "hall 4' x 15' off the east wall, 2' from the south corner, opening 3'"},
	{term.SetOpening, true, "opening 3' between the hall and the annex, in the hall's east wall"},
	{term.SetDoorway, true, "door 32in in the south wall, 2' from the west corner"},
	{term.SetFixture, true, "post 4in x 4in, 3' from west, 5' from south"},
	{term.SetFixture, true, "post 4in x 4in in the hall, 3' from west, 1' from south"},
	{term.SetPlank, true, "plank 7 5/8 x 47 1/2 x 12mm, 8 per box"},
	{term.SetUnderlay, true, "underlay 2mm, roll 4ft x 25ft"},
	{term.SetGap, true, "gap 3/8"},
	{term.SetHidden, true, "north wall is out of sight"},
	{term.SetDirection, true, "rows run east-west"},
	{term.SetDirection, true, "rows run along the west wall"},
	{term.SetStart, true, "start at the south wall"},
	{term.SetFirstRow, true, "first row 5 in"},
	{term.SetLeastEnd, true, "no end pieces under 10 in"},
	{term.SetLeastStagger, true, "joints at least 12 in apart"},
	{term.SetLeastRow, true, "no row under 3 in"},
	{term.SetKerf, true, "kerf 1/8"},
	{term.SetTrim, true, "baseboard 1/2 in thick, 16 ft sticks"},
	{term.SetHeight, true, "hall carpet is 5/8 high"},
	{term.SetSubfloor, true, "subfloor is concrete"},
	{term.SetReading, true, "slab reads 78% RH"},
	{term.SetPrice, true, "31.90 a box"},
	{term.SetSpare, true, "10% spare"},
	{term.SetLaid, true, "laid 6 rows"},
	{term.SetOpened, true, "opened 5 boxes"},
	{term.SetDamaged, true, "2 planks damaged"},
	{term.SetNote, true, "note: hold the bath threshold"},
}

// example is a message near to a kind that would work.
func example(kind term.Kind) string {
	for _, e := range Examples {
		if e.Kind == kind {
			return e.Text
		}
	}
	return Examples[0].Text
}

// Help gives the ways to say a kind, the question's before the statement's.
func Help(kind term.Kind) []string {
	var out []string
	for _, e := range Examples {
		if e.Kind == kind {
			out = append(out, e.Text)
		}
	}
	return out
}
