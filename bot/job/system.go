package job

import (
	"lastrow/calc/length"
	"lastrow/grammar"
)

// systemOf gives the system of the first length or area that a statement says. Thicknesses are left out: inch jobs buy
// their planks in millimetres.
func systemOf(s grammar.Statement) (length.System, bool) {
	switch s := s.(type) {
	case grammar.Room:
		return s.EastWest.System, true
	case grammar.Walls:
		return s.Legs[0].Long.System, true
	case grammar.Closet:
		return s.Wide.System, true
	case grammar.Doorway:
		return s.Wide.System, true
	case grammar.Fixture:
		return s.Wide.System, true
	case grammar.Plank:
		return plankSystem(s)
	case grammar.Underlay:
		return first(s.RollWidth, s.RollLong, s.Overlap)
	case grammar.Trim:
		return first(s.Stick)
	case grammar.Gap:
		return s.Size.System, s.Size.Len != 0
	case grammar.Limit:
		return s.Size.System, true
	case grammar.Height:
		return s.Size.System, true
	case grammar.Measured:
		return first(s.Dip, s.Straightedge)
	}
	return length.Imperial, false
}

func plankSystem(p grammar.Plank) (length.System, bool) {
	if sys, known := first(p.Width, p.Length); known {
		return sys, true
	}
	if p.BoxArea == nil {
		return length.Imperial, false
	}
	if p.BoxArea.Unit == "sq m" {
		return length.Metric, true
	}
	return length.Imperial, true
}

func first(sizes ...*grammar.Size) (length.System, bool) {
	for _, s := range sizes {
		if s != nil {
			return s.System, true
		}
	}
	return length.Imperial, false
}
