// Package length holds exact lengths, areas and volumes, and how a tape shows them.
//
// A Length is a whole number of nanometres in 64 bits: 1/64 in is 396 875 nm and 1 mm is 1 000 000 nm, so every
// length that a tape can show is exact, and so is every sum of them. Nothing here knows what a length measures.
package length

// Length is a whole number of nanometres. The range is about 9.2 million kilometres; callers bound what they accept.
type Length int64

// The inch is 25.4 mm exactly (NIST SP 811, appendix B).
const (
	Nanometre   Length = 1
	Millimetre         = 1_000_000 * Nanometre
	Centimetre         = 10 * Millimetre
	Metre              = 1000 * Millimetre
	Inch               = 25_400_000 * Nanometre
	Foot               = 12 * Inch
	Yard               = 3 * Foot
	SixtyFourth        = Inch / 64
)

// System is the system of units that a person measures in.
type System int

// The two systems in use on a job.
const (
	Imperial System = iota // feet, inches and binary fractions of an inch
	Metric                 // millimetres and metres
)

// MM gives the length in millimetres, unrounded as far as a float64 holds it.
func (l Length) MM() float64 { return float64(l) / float64(Millimetre) }
