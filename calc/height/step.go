package height

import (
	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// Profile is a strip that bridges two floors.
type Profile string

// The profiles. A t-molding spans two floors near level; a reducer slopes from the higher new floor down to a hard one; an
// end-cap closes the new floor square against what stands higher, against carpet or against a sliding door's track; a
// ramp takes a step that no strip may.
const (
	TMolding Profile = "t-molding"
	Reducer  Profile = "reducer"
	EndCap   Profile = "end-cap"
	Ramp     Profile = "ramp"
)

// Edge is what the new floor meets.
type Edge int

// The edges. Hard is tile, vinyl, wood, stone or bare slab; Soft is carpet; Track is a sliding door or another thing
// that a strip must not reach over.
const (
	Hard Edge = iota
	Soft
	Track
)

// Crossing is how a step between two floors is bridged.
type Crossing struct {
	Step    length.Length // new floor less other; positive where the new floor is higher
	Profile Profile
	Bevel   length.Length // run that the slope needs; 0 where the step may stay upright
	Mixed   length.Length // run of the bevel alone where the first 1/4 in stays upright; 0 where there is no such choice
}

// Bridge picks the profile for a step. Which strip goes where is common practice, no source; the run of its bevel is
// that of the 2010 ADA Standards 303 and 405.2, which bind public places and are good practice in a house.
func Bridge(step length.Length, edge Edge) Crossing {
	return Crossing{Step: step, Profile: profile(step, edge), Bevel: Bevel(step), Mixed: mixed(step)}
}

func profile(step length.Length, edge Edge) Profile {
	switch near := limit.NearLevel.Inch; {
	case abs(step) > limit.StepBevelled.Inch:
		return Ramp
	case edge != Hard || step < -near:
		return EndCap
	case step > near:
		return Reducer
	}
	return TMolding
}

// Bevel is the least run of the slope for a step: none up to 1/4 in, twice the step up to 1/2 in, twelve times above.
func Bevel(step length.Length) length.Length {
	switch step = abs(step); {
	case step <= limit.StepVertical.Inch:
		return 0
	case step <= limit.StepBevelled.Inch:
		return slope(step, limit.BevelSlope)
	}
	return slope(step, limit.RampSlope)
}

// mixed is the run of a bevel over an upright 1/4 in, which advisory 303.3 of the 2010 ADA Standards accepts. The 1/2 in
// includes the upright part.
func mixed(step length.Length) length.Length {
	step = abs(step)
	if step <= limit.StepVertical.Inch || step > limit.StepBevelled.Inch {
		return 0
	}
	return slope(step-limit.StepVertical.Inch, limit.BevelSlope)
}

// OldThreshold says whether a threshold that was there before may stay, and the bevel that each side then needs.
func OldThreshold(rise length.Length) (bevel length.Length, ok bool) {
	if rise > limit.ThresholdOld.Inch {
		return 0, false
	}
	return slope(rise, limit.BevelSlope), true
}

// slope is a whole number of runs for a rise.
func slope(rise length.Length, l *limit.Limit) length.Length {
	return rise * length.Length(l.Rat().Num().Int64())
}

func abs(l length.Length) length.Length { return max(l, -l) }
