package calc

// Signs that answers on heights and subfloors put into Result.Signs, for cautions to look at. A sign is true where its
// circumstance holds and absent where not.
const (
	SignStepQuarter = "step-over-quarter" // a step over 1/4 in: upright no more
	SignStepHalf    = "step-over-half"    // a step over 1/2 in: a ramp
	SignDoorRubs    = "door-rubs"         // a door has less than its working clearance
	SignDoorTrim    = "door-trimmed"      // something comes off a door
	SignJambCut     = "jamb-cut"          // jambs or casings are undercut
	SignStair       = "stair"             // the raised floor meets a stair
	SignStairFails  = "stair-fails"       // and its risers break a limit
	SignCeiling     = "ceiling-asked"     // a ceiling's height over the raised floor was asked
	SignCeilingLow  = "ceiling-low"       // and it is under the limit
	SignSill        = "sill-asked"        // a window sill's height over the raised floor was asked
	SignSillHigh    = "sill-high"         // too high to escape by
	SignSillLow     = "sill-low"          // too low over a deep drop
	SignNotFlat     = "not-flat"          // a reading over the tolerance
	SignSlab        = "slab"              // the subfloor is a slab or screed
	SignSlabUnread  = "slab-unread"       // with no moisture reading
	SignSlabWet     = "slab-wet"          // or one over its limit
	SignWoodWet     = "wood-wet"          // a wood subfloor over its limit, or too far from the planks
	SignHeated      = "heated"            // a heated subfloor
	SignLongRun     = "run-over-limit"    // a floor in one piece longer than the limit
	SignAcclimate   = "acclimate-asked"   // the rest of the boxes was asked
	SignTestDryOnly = "sheet-proves-less" // a dry plastic sheet, which proves no dry slab
)

// signs collects the true ones.
type signs map[string]bool

func (s signs) when(holds bool, sign string) {
	if holds {
		s[sign] = true
	}
}
