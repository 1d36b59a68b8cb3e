package grammar

import "lastrow/calc/term"

// goodsAsks are the turns of words for what is to be bought, and for the work.
var goodsAsks = []cuesOf{
	{term.AskBoxes, []cue{
		{6, "howmany box"}, {6, "box count"}, {6, "count ~ box"}, {5, "howmany ~ box"}, {4, "howmuch plank"}, {4, "howmuch floor"}, {3, "box need"}, {3, "need .. box"}, {3, "order .. box"}, {3, "box ~ order"}, {3, "pallet"}, {2, "#  box cover"},
		{3, "enough box"}, {4, "# ~ box|each .. enough"}, {2, "box"}, {5, "howmany plank"}, {3, "howmany order"}, {4, "howmuch need ~ floor|room"}, {3, "box .. room"}, {4, "# ~ cover"}, {3, "# cover"}, {5, "howmany pallet"}, {2, "box cover"}, {3, "^box"},
		{4, "howmany ~ order"}, {5, "order count"}, {5, "count ~ plank|floor|order"}, {4, "box .. howmany ~ order"}, {4, "#a .. box .. howmany|what"},
		{3, "work .. box"}, {2, "# # .. box"}, {3, "what ~ box"}, {4, "box #a .. howmany"}, {4, "box .. #a .. howmany"},
	}},
	{term.AskUnderlay, []cue{
		{4, "!underlay"}, {1, "underlay"}, {5, "howmuch|howmany underlay"}, {6, "howmany roll"}, {5, "roll ~ need"}, {3, "roll"}, {4, "howmuch tape"}, {3, "tape"}, {5, "howmuch underlay .. room"}, {2, "howmuch ~ underlay"}, {3, "howmany ~ roll"}, {3, "underlay strip"}, {2, "howmany strip"},
		{5, "howmuch of underlay"}, {4, "roll .. howmany"}, {5, "roll count"}, {5, "count ~ roll"}, {4, "underlay|roll .. howmany"}, {2, "underlay ~ room"},
	}},
	{term.AskTrim, []cue{
		{3, "trim"}, {5, "howmuch trim"}, {5, "howmany stick"}, {5, "stick ~ howmany"}, {3, "stick"}, {4, "howmany ~ trim"}, {4, "trim ~ need"}, {3, "howmany long"}, {3, "need ~ trim"}, {2, "trim ~ room"}, {3, "room ~ howmuch trim"},
		{5, "howmuch of trim"}, {4, "howmany # trim|stick"}, {2, "howmany .. trim|stick"}, {4, "trim|stick count"}, {4, "count ~ trim|stick"}, {3, "work ~ trim"}, {2, "trim .. stick"}, {2, "stick ~ trim"}, {3, "^trim"},
		{4, "trim area"}, {4, "stick .. room .. how|howmany"}, {4, "^stick # room|# stick"}, {4, "^stick ~ # room"},
	}},
	{term.AskTrimCover, []cue{
		{6, "trim .. cover"}, {6, "cover .. gap"}, {3, "trim .. gap"}, {7, "trimoff"}, {4, "gap .. cover"}, {6, "take|pull|remove ~ trim"},
		{4, "trim .. thick .. gap|leave"},
		{6, "trim ~ shave"}, {8, "trim .. stay"}, {3, "stay"}, {6, "trim .. gap .. show"}, {6, "gap .. show"},
	}},
	{term.AskScrews, []cue{
		{5, "screw"}, {6, "howmany screw"}, {3, "track"}, {4, "howdeep ~ drill"}, {3, "drill ~ hole"}, {3, "hole"}, {4, "howlong ~ screw"},
		{4, "screw count"}, {4, "count ~ screw"},
	}},
	{term.AskNails, []cue{{11, "nail"}, {6, "howmany nail"}}},
	{term.AskCaulk, []cue{
		{11, "caulk"}, {5, "howmany tube"}, {5, "tube"},
		{5, "tube count"}, {5, "bead"}, {5, "fillet"},
	}},
	{term.AskLeveler, []cue{
		{7, "leveler"}, {6, "howmuch leveler"}, {6, "howmany bag"}, {4, "bag"}, {3, "patch"}, {3, "fill ~ dip"}, {3, "howmuch ~ fill"},
		{6, "bag count"}, {6, "count ~ bag"},
	}},
	{term.AskHours, []cue{
		{6, "howlong .. take"}, {6, "howmany time"}, {5, "hours"}, {5, "how long ~ take"}, {4, "howlong job"}, {4, "when ~ finish|laid"}, {5, "howlong .. lay"}, {3, "howlong"}, {4, "finish ~ day"}, {4, "time ~ take"}, {5, "howmany day"},
		{2, "crew"}, {4, "howlong .. #a"}, {4, "howlong .. crew"}, {2, "hours .. #a"},
		{4, "time .. #a"}, {4, "time .. crew"}, {4, "work ~ time"}, {4, "#a .. day"}, {3, "crew .. day"}, {2, "time ~ job"},
	}},
	{term.AskCost, []cue{
		{6, "cost"}, {7, "what .. comes"}, {5, "^price ~ #"}, {5, "price .. box #"}, {5, "what ~ price"}, {4, "total ~ price"}, {4, "howmuch total"}, {4, "howmuch ~ money"}, {4, "howmuch ~ set"}, {4, "price ~ total|job"},
		{8, "# box ~ #m"}, {8, "#m .. # box"}, {6, "price .. #a"}, {6, "howmuch .. box #m"}, {2, "cost .. #m"},
		{5, "box #m .. total"}, {18, "#m box .. total"}, {6, "total # box #m"}, {9, "what .. job .. box #m"}, {6, "work|can ~ price"}, {5, "price ~ room|job|floor"}, {6, "#m .. need .. total"},
	}},
	{term.AskWeight, []cue{
		{11, "weigh"}, {11, "howheavy"}, {4, "lift"},
		{4, "load .. box"},
	}},
	{term.AskLeftover, []cue{
		{5, "leftover"}, {3, "leftover .. closet"}, {9, "enough .. closet"}, {9, "closet .. enough"}, {8, "offcut .. closet"}, {9, "plank remaining .. closet"}, {5, "closet .. do"}, {9, "plank .. closet"}, {3, "# plank leftover"}, {3, "closet ~ enough"}, {4, "enough ~ closet"}, {3, "# plank remaining ~ closet"},
		{9, "closet .. # spare|plank|leftover"}, {9, "spare|remaining|leftover .. closet"}, {9, "piece # .. closet"},
	}},
	{term.AskShopping, []cue{{12, "shopping"}, {6, "what ~ order"}, {5, "what ~ need ~ order"}, {7, "everything ~ need|order"}, {5, "list ~ order|need"}, {5, "what ~ pick"},
		{5, "need list"}, {5, "list need"}, {4, "everything ~ order"},
	}},
}

// goodsTerse are turns that ask of goods with no word of asking.
var goodsTerse = []cue{
	{1, "^cost"}, {1, "^price .. #a"}, {1, "^price ~ job|room|floor"}, {1, "^price .. # box"}, {1, "^# box #m"}, {1, "trim|caulk|leveler need"}, {1, "^stick # room"},
	{1, "bag|nail|screw|stick|tube|plank|trim|order count"}, {1, "^count"}, {1, "^tube"}, {1, "^leveler"}, {1, "roll .. howmany"}, {1, "^bag .. #a"}, {1, "^box #a #"}, {1, "need count"}, {1, "count of"}, {1, "^time .. #a"}, {1, "need list"}, {1, "^everything"}, {1, "^list ~ everything"}, {1, "^trim area"}, {1, "^total # box"}, {1, "track ~ screw"}, {1, "^underlay .. #a"}, {1, "^roll .. #a"},
}
