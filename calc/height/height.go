// Package height works out how high a floating floor stands on its subfloor and what follows from it: the step to the
// floor next door and the profile that bridges it, undercut jambs, doors that rub, stairs, ceilings, sills and hearths.
//
// Everything is in exact lengths, so that an edge such as 10 mm against 3/8 in falls on its true side. The limits are
// those of package limit. Codes differ from place to place; what is computed here is a reading, not a permit.
package height

import (
	"fmt"

	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// Layers are what lies on the subfloor, by thickness. Underlay is as compressed under load where that is known.
type Layers struct {
	Leveler, Underlay, Plank length.Length
}

// BuildUp is how much the layers raise the walking surface.
func (l Layers) BuildUp() length.Length { return l.Leveler + l.Underlay + l.Plank }

// Check lists what no floating floor measures: an underlay or a plank out of bounds, or a build-up too high for one.
func (l Layers) Check() []error {
	var errs []error
	if l.Plank < limit.PlankThickLeast.Inch || l.Plank > limit.PlankThickMost.Inch {
		errs = append(errs, within("plank", l.Plank, limit.PlankThickLeast.Inch, limit.PlankThickMost.Inch))
	}
	if l.Underlay < 0 || l.Underlay > limit.UnderlayMost.Inch {
		errs = append(errs, within("underlay", l.Underlay, 0, limit.UnderlayMost.Inch))
	}
	if l.Leveler < 0 || l.Leveler > limit.LevelerMost.Inch {
		errs = append(errs, within("leveler", l.Leveler, 0, limit.LevelerMost.Inch))
	}
	return errs
}

// CheckBuildUp refuses a floor that is said to stand higher than any floating floor does, or not at all.
func CheckBuildUp(h length.Length) error {
	return bounds("floor height", h, 1, limit.BuildUpMost.Inch)
}

// CheckOther refuses a neighbouring floor that stands higher over the subfloor than any does. None at all is a bare slab.
func CheckOther(h length.Length) error {
	return bounds("height of the other floor", h, 0, limit.OtherFloorMost.Inch)
}

// CheckDoorGap refuses a gap that no door hangs over.
func CheckDoorGap(gap length.Length) error {
	return bounds("gap under the door", gap, 0, limit.DoorGapMost.Inch)
}

func bounds(what string, got, least, most length.Length) error {
	if got < least || got > most {
		return within(what, got, least, most)
	}
	return nil
}

func within(what string, got, least, most length.Length) error {
	if got < 1 {
		return fmt.Errorf("%s of %s is no height to work with", what, got)
	}
	if least <= 1 {
		return fmt.Errorf("%s of %s is more than is ever laid: %s at most", what, got, most)
	}
	return fmt.Errorf("%s of %s is out of bounds: %s to %s", what, got, least, most)
}

// Undercut is how high a jamb or casing is cut above the subfloor, for plank and underlay to slide under it with play.
func Undercut(l Layers, play length.Length) length.Length { return l.BuildUp() + play }
