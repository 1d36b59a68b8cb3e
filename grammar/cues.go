package grammar

import (
	"slices"

	"lastrow/calc/term"
)

// asks are the turns of words that speak for each kind of question. A kind that reaches 4 is understood.
var asks = together(floorAsks, goodsAsks, walkAsks)

type cuesOf struct {
	kind term.Kind
	cues []cue
}

var floorAsks = []cuesOf{
	{term.AskRows, []cue{
		{5, "lastrow"}, {-4, "joint"}, {-2, "offcut"}, {4, "rip ~ firstrow"}, {4, "what ~ finish"}, {5, "howmany row"}, {5, "count ~ row"}, {5, "row count"}, {4, "what last"}, {3, "row ~ need"}, {3, "row # .. plank|gap|#"}, {2, "howmany row ~ room|hall|across"}, {4, "sliver"}, {5, "what remaining ~ end"}, {4, "what remaining end"}, {2, "across ~ plank"}, {1, "howwide ~ lastrow"},
		{4, "row ~ fit|across"}, {2, "firstrow ~ wide"}, {4, "what|how ~ firstrow"}, {3, "rip ~ lastrow"}, {9, "howmany plank ~ across"}, {4, "what end .. across"}, {3, "across .. howmany plank"}, {3, "howmany plank ~ wide"},
	}},
	{term.AskGap, []cue{
		{5, "howmuch !gap|!expansion"}, {5, "what ~ !gap|!expansion"}, {4, "!gap"}, {4, "!expansion"}, {4, "howmuch ~ leave"}, {4, "howmuch ~ around"}, {1, "leave ~ around"}, {6, "howwide ~ !gap"}, {3, "howmuch ~ !gap"}, {4, "howmuch room|space ~ leave"}, {6, "# gap|expansion .. enough"}, {6, "# enough ~ around"}, {6, "ok leave #"}, {6, "leave # .. enough|ok"}, {6, "enough ~ gap|expansion"}, {6, "gap|expansion # .. enough"}, {4, "gap|expansion .. enough"}, {-20, "gap .. straightedge|flat|clearance"}, {-20, "straightedge|door .. gap"},
	}},
	{term.AskLongRun, []cue{
		{6, "fields"}, {8, "break .. run"}, {9, "tmold|transition|strip ~ halfway"}, {8, "tmold|transition .. # ~ hall"}, {7, "tmold|transition|strip break"}, {8, "tmold|transition .. # ~ run"}, {4, "break"}, {8, "lay .. no ~ strip|transition|tmold|joint"}, {6, "run .. no ~ strip|transition|tmold|joint"}, {9, "can .. no|without ~ strip|transition|tmold|joint"}, {9, "no|without ~ strip|transition|tmold|joint .. ok"}, {5, "howlong ~ run"}, {3, "most ~ long"}, {4, "long ~ most ~ run"}, {4, "too long"}, {4, "most run"}, {3, "need transition ~ #"}, {5, "howlong can ~ floor|run|lay"}, {4, "run ~ # ~ fields"}, {4, "most ~ run"},
	}},
	{term.AskStagger, []cue{
		{5, "stagger"}, {5, "offcut"}, {4, "joint"}, {6, "lastrow joint"}, {6, "joint lastrow"}, {6, "joint .. this"}, {2, "joint #"}, {3, "leftover .. joint"}, {4, "joint .. joint"}, {4, "start nextrow"}, {3, "nextrow"}, {2, "enough stagger"}, {6, "how ~ spacing ~ end|joint|row"}, {3, "long enough ~ start"},
	}},
	{term.AskTransition, []cue{
		{5, "transition"}, {4, "what|which strip"}, {3, "strip"}, {5, "reducer"}, {5, "tmold"}, {4, "endcap"}, {4, "ramp"}, {5, "step"}, {3, "flush"}, {2, "tile"}, {2, "carpet"}, {2, "vinyl"}, {3, "tile|carpet|vinyl ~ #"}, {3, "# tile|carpet|vinyl"}, {1, "plank|underlay|floor .. tile|carpet|vinyl"}, {3, "meet"}, {2, "doorway"}, {4, "plank # .. # wood floor"}, {4, "which|what profile"}, {2, "profile"}, {5, "what|which trim|piece ~ plank|floor ~ tile|carpet|vinyl"}, {5, "what|which trim|piece ~ tile|carpet|vinyl ~ plank|floor"},
	}},
	{term.AskUndercut, []cue{{7, "undercut"}, {6, "cut ~ jamb"}, {6, "jamb ~ cut"}, {5, "jamb"}, {3, "howhigh|howmuch ~ jamb"}, {6, "jamb .. cut"}, {3, "saw ~ jamb"}}},
	{term.AskDoor, []cue{
		{2, "door"}, {4, "door .. clearance|drag|open|shave|cut|trim|floor"}, {4, "door ~ remaining|trim ~ #"}, {4, "drag|open|shave|clearance .. door"}, {4, "cut|trim|howmuch ~ door"}, {5, "door gap"}, {2, "furnace door"}, {3, "door ~ over|under"}, {2, "drag"}, {3, "# ~ door ~ drag"}, {2, "door ~ need"}, {2, "underlay .. door|drag"}, {3, "door # .. plank # .. shave"}, {4, "door # .. enough"}, {4, "# enough ~ door"}, {4, "# ~ door ~ enough"},
	}},
	{term.AskHeadroom, []cue{{5, "headroom"}, {4, "ceiling"}, {6, "sill"}, {5, "riser"}, {2, "stairs"}, {2, "stairs .. #"}, {2, "# .. stairs"}, {2, "stairs .. plank|underlay|floor"}, {2, "floor|plank .. stairs"}, {4, "head height"}}},
	{term.AskSquare, []cue{{5, "square"}, {5, "diagonal"}, {7, "outof"}, {7, "345"}, {2, "corner ~ across"}, {3, "# # across ~ square"}, {6, "# # .. # diagonally"}}},
	{term.AskTaper, []cue{{7, "taper"}, {4, "# ~ end .. # ~ end|window|door"}, {3, "outof parallel"}, {4, "here .. there"}, {8, "# end # #"}, {8, "# ~ end # # ~ angle"}, {4, "end # .. slope"}}},
	{term.AskMiter, []cue{{7, "miter"}, {5, "corner ~ #d"}, {5, "#d ~ corner"}, {2, "#d"}, {4, "angle ~ corner"}, {4, "corner ~ angle"}, {3, "saw ~ angle"}, {3, "angle"}, {4, "cut ~ angle"}, {4, "angle ~ cut"}, {7, "corner # ~ cut"}, {5, "cut ~ corner"}}},
	{term.AskFlatness, []cue{
		{4, "dip"}, {5, "flat"}, {4, "straightedge"}, {3, "dip .. straightedge"}, {2, "howmuch ~ dip"}, {3, "need ~ straightedge"}, {3, "floor ~ flat"},
	}},
	{term.AskMoisture, []cue{{6, "rh"}, {4, "moisture"}, {7, "calcium"}, {7, "carbide"}, {7, "woodtest"}, {4, "probe"}, {3, "test ~ reading"}, {4, "test .. wood|concrete"}, {2, "too ~ moisture"}, {3, "dry enough"}, {4, "concrete ~ dry"}, {3, "concrete ~ moisture"}, {9, "howlong ~ concrete ~ dry"}, {9, "howlong .. concrete .. dry"}, {9, "howmany|day .. concrete .. dry"}}},
	{term.AskVaporBarrier, []cue{{7, "film"}, {4, "need film"}}},
	{term.AskAcclimate, []cue{{7, "acclimate"}, {9, "howlong ~ sit"}, {4, "sit ~ box"}, {3, "box ~ sit"}, {5, "when ~ open ~ box"}, {4, "can ~ open ~ box"}, {4, "howlong ~ before ~ open"}, {9, "howmany|hours|day .. sit"}, {9, "howlong .. sit"}, {6, "day ~ sit"}, {9, "day ~ box ~ sit|room"}, {9, "arrived .. lay|start"}, {9, "howlong .. lay .. arrived"}, {9, "box ~ room ~ long enough"}, {9, "howlong .. box ~ inside"}, {9, "leave ~ plank|box ~ room .. day|#t"}, {9, "#t ~ box|plank ~ sit|room"}, {9, "howlong ~ leave ~ box|plank"}}},
	{term.AskStart, []cue{{7, "which wall ~ start"}, {7, "where ~ start"}, {7, "which ~ start"}, {5, "start ~ wall"}, {6, "what wall ~ start"}, {6, "start ~ which|where"}, {5, "best ~ start"}}},
	{term.AskPlan, []cue{{6, "plan"}, {3, "show ~ plan"}, {5, "show ~ plank"}, {4, "show ~ floor"}, {5, "where ~ plank"}, {3, "show row"}, {4, "show room"}, {4, "show lay"}}},
	{term.AskCutList, []cue{{7, "cutlist"}, {4, "what cut"}, {4, "howmany cut"}, {3, "list ~ cut"}, {4, "send cut"}, {14, "shopping need cut"}, {11, "list|everything .. cut"}, {5, "what ~ need cut"}, {5, "plank|piece|which ~ need cut"}, {5, "list ~ piece|plank ~ cut"}}},
	{term.AskRow, []cue{{5, "row #n"}, {5, "plan|show ~ row #n"}, {4, "row #n ~ offcut|piece|plank|start|cut|joint"}, {5, "offcut ~ row #n"}, {4, "which ~ row #n"}, {3, "piece ~ row #n"}}},
	{term.AskPiece, []cue{{6, "piece #n"}, {9, "row #n .. piece #n"}, {9, "piece #n .. row #n"}, {6, "plank #n ~ row #n"}}},
	{term.AskStatus, []cue{
		{6, "status"}, {5, "howmany ~ remaining"}, {6, "enough ~ finish"}, {5, "row remaining"}, {5, "box remaining"}, {5, "plank remaining"}, {4, "what remaining"}, {3, "remaining"}, {4, "howmuch remaining"}, {4, "howmany more"},
		{4, "where at"}, {6, "where we|job"}, {5, "run out"}, {5, "short"}, {4, "enough ~ make"}, {4, "howmany row ~ laid"}, {4, "howmany ~ opened|laid"}, {8, "howmany ~ used"}, {6, "enough|will .. finish"}, {6, "used ~ howmany|so"}, {4, "enough ~ plank|box ~ finish"}, {4, "enough plank|box"}, {4, "will ~ enough"},
	}},
	{term.AskHelp, []cue{{7, "help"}, {6, "how ~ work ~ this"}, {5, "what ~ can ~ do"}, {6, "^help"}, {10, "how ~ ask"}, {7, "what ~ can ~ ask"}, {6, "how ~ use"}}},
	{term.AskUnits, []cue{{8, "units"}}},
	{term.AskUndo, []cue{{9, "undo"}}},
	{term.AskHistory, []cue{{8, "history"}}},
	{term.AskJobs, []cue{{7, "what|which job"}, {7, "show|work|list job"}, {7, "howmany job"}, {6, "my jobs"}, {7, "job list"}, {9, "joblist"}}},
	{term.AskShare, []cue{{8, "share"}}},
	{term.AskUnshare, []cue{{9, "unshare"}}},
	{term.AskExport, []cue{{8, "export"}}},
	{term.AskForget, []cue{{9, "forget"}}},
}

var askPatterns = compileAsks()

func compileAsks() map[term.Kind][]pattern {
	out := map[term.Kind][]pattern{}
	for _, a := range asks {
		out[a.kind] = compile(a.cues)
	}
	return out
}

// terse are the meanings that ask by themselves, with no word of asking: "last row for an 11'4 room".
var terse = slices.Concat(compile(goodsTerse), compile(walkTerse), compile(heightTerse), compile([]cue{
	{1, "lastrow"}, {1, "shopping"}, {1, "cutlist"}, {1, "^plan"}, {1, "undercut"}, {1, "status"}, {1, "^help"}, {1, "undo"}, {1, "history"}, {1, "export"}, {1, "forget"}, {1, "^share"}, {1, "unshare"}, {1, "^box .. room|hall"}, {1, "need .. !box"}, {1, "need ~ shopping|film|leveler|trim|underlay"}, {1, "joint .. joint"}, {1, "joint .. offcut"}, {1, "offcut .. joint"}, {1, "joint .. cut"},
	{1, "taper"}, {1, "miter"}, {1, "weigh"}, {1, "acclimate"}, {1, "leveler"}, {1, "enough"}, {1, "remaining"}, {1, "^units"}, {1, "outof"}, {1, "345"}, {1, "joblist"}, {1, "hours"}, {1, "film"}, {1, "^job list"}, {1, "^piece #n"}, {1, "^caulk"}, {1, "^nail"}, {1, "^screw"},
	{1, "transition|reducer"}, {1, "^underlay ~ room"}, {1, "^trim ~ room"}, {1, "^leftover"}, {1, "cover ~ gap"}, {1, "^headroom"}, {1, "show"}, {1, "^cost"}, {1, "^jobs"}, {1, "cost"}, {1, "straightedge"}, {1, "# .. diagonal"}, {1, "diagonal # .. #"}, {1, "^offcut"}, {1, "work"}, {1, "drag"}, {1, "^door gap"}, {1, "corner # cut"}, {1, "end # .. slope|angle"}, {1, "arrived .. can ~ lay"}, {1, "box|roll|stick|screw|nail|bag|tube|plank need"}, {1, "box|row|roll count"}, {1, "count ~ row|box"}, {1, "jamb .. cut|high"}, {1, "cut ~ jamb"}, {1, "gap # run|room|hall"}, {1, "plank .. meet"}, {1, "what last"}, {1, "^list .. cut"},
}))
