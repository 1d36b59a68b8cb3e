package material

import (
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// The shapes of a bead of sealant.
const (
	RoundBead  term.Word = "round"  // a round string of sealant, by its diameter
	FilletBead term.Word = "fillet" // a triangle in a corner, by its legs
	SquareBead term.Word = "joint"  // a joint filled full, by its width and depth
)

// pi to 20 digits, so that the area of a round bead is good to far more than a whole tube.
var pi, _ = new(big.Rat).SetString("3.14159265358979323846")

// BeadVolume is the sealant in a bead: round by width alone; fillet and joint by width and depth.
func BeadVolume(run length.Length, shape term.Word, width, depth length.Length) length.Volume {
	solid := new(big.Rat).SetInt(width.Times(depth).Deep(run).Nm3())
	switch shape {
	case RoundBead:
		solid.SetInt(width.Times(width).Deep(run).Nm3())
		solid.Mul(solid, pi).Quo(solid, big.NewRat(4, 1))
	case FilletBead:
		solid.Quo(solid, big.NewRat(2, 1))
	}
	return length.VolumeOf(new(big.Int).Quo(solid.Num(), solid.Denom()))
}

// Cartridge is the sealant in a tube as sold: 10.1 US fl oz, where a fluid ounce is 231/128 cu in (NIST Handbook 44,
// appendix C), or 310 mL.
func Cartridge(s length.System) length.Volume {
	if s == length.Metric {
		return times(length.Litre, big.NewRat(310, 1000))
	}
	return times(length.CubicInch, big.NewRat(101*231, 10*128))
}

func times(v length.Volume, by *big.Rat) length.Volume {
	q := new(big.Rat).Mul(new(big.Rat).SetInt(v.Nm3()), by)
	return length.VolumeOf(new(big.Int).Quo(q.Num(), q.Denom()))
}

// Tubes is the whole tubes that hold the sealant, with so much lost in the tube and on the finger.
func Tubes(bead length.Volume, tube length.Volume, loss term.Percent) int64 {
	return length.Up(With(bead.Over(tube), loss))
}
