package grammar

// signs lists the dangers that a message mentions, by caution id.
func (m *message) signs() []string {
	var out []string
	for _, s := range dangers {
		for i := range s.patterns {
			if s.patterns[i].in(m.seq) {
				out = append(out, s.id)
				break
			}
		}
	}
	if m.year > 0 && m.year < 1980 && (m.has("trimoff", "oldfloor", "rip", "leadpaint") || m.hasWord("painted", "paint", "sanding", "scraping", "pulling", "ripping", "tearing")) {
		out = append(out, "old-coatings")
	}
	for _, w := range []string{"grinder", "grinding", "grind"} {
		if m.hasWord(w) && m.has("tile") && !m.has("concrete") {
			return append(out, "old-coatings")
		}
	}
	return out
}

type danger struct {
	id       string
	patterns []pattern
}

var dangers = []danger{
	{"silica-dust", compile([]cue{{1, "grinder ~ concrete"}, {1, "concrete ~ grinder"}, {1, "cut ~ concrete"}, {1, "drill ~ concrete"}, {1, "concrete ~ drill"}, {1, "grinder ~ tile"}, {1, "cut ~ tile"}, {1, "hammerdrill"}})},
	{"combustion-air", compile([]cue{{1, "furnace"}})},
	{"old-coatings", compile([]cue{{1, "asbestos"}, {1, "leadpaint"}, {1, "oldfloor"}, {1, "grinder ~ tile"}, {1, "# ~ oldfloor"}})},
	{"slab-moisture", compile([]cue{{1, "skip ~ moisture|test|rh"}, {1, "no ~ moisture test"}})},
	{"wet-room", compile([]cue{{1, "wet"}})},
	{"heated-floor", compile([]cue{{1, "heated"}})},
	{"buried-lines", compile([]cue{{1, "drill ~ heated"}, {1, "heated ~ drill"}, {1, "screw ~ heated"}, {1, "heated ~ screw"}, {1, "posttension"}})},
	{"saw-safety", compile([]cue{{1, "noguard"}, {1, "tablesaw"}, {1, "freehand"}})},
	{"wood-dust", compile([]cue{{1, "cut ~ inside"}})},
}
