package grammar

import "lastrow/calc/term"

// walkAsks are further turns of words for the rows as they are laid, and for the job.
var walkAsks = []cuesOf{
	{term.AskRows, []cue{{4, "^row # plank"}, {5, "^row # room|hall|wet|across|wide"}, {6, "lastrow ~ comes"}, {4, "^firstrow"}, {5, "sliver ~ end"}, {9, "plank # .. sliver"}, {9, "room # .. plank # .. sliver"}}},
	{term.AskBoxes, []cue{{4, "^box # spare"}, {4, "^box spare #"}}},
	{term.AskLongRun, []cue{{4, "need ~ fields"}, {5, "can run #"}, {5, "will # run ok"}}},
	{term.AskGap, []cue{{5, "what ~ leave ~ wall"}, {3, "leave ~ wall # run"}}},
	{term.AskStatus, []cue{{9, "howmany row laid"}}},
	{term.AskRow, []cue{{9, "cutlist ~ row #n"}, {9, "row #n ~ cutlist"}}},
	{term.AskStart, []cue{{7, "whichway"}, {6, "which|what direction"}}},
}

// walkTerse are turns that ask of the rows with no word of asking.
var walkTerse = []cue{
	{1, "^box # spare"}, {1, "^box spare #"},
	{1, "most .. fields"}, {1, "^stagger ~ joint|offcut|row|plank|check|ok"}, {1, "previous ~ joint"}, {1, "^row # plank"}, {1, "^row # room|hall|wet|across|wide"},
}

// together joins lists of cues kind by kind, in the order of the first that has each.
func together(lists ...[]cuesOf) []cuesOf {
	var out []cuesOf
	at := map[term.Kind]int{}
	for _, list := range lists {
		for _, c := range list {
			i, ok := at[c.kind]
			if !ok {
				at[c.kind], out = len(out), append(out, cuesOf{c.kind, nil})
				i = len(out) - 1
			}
			out[i].cues = append(out[i].cues, c.cues...)
		}
	}
	return out
}
