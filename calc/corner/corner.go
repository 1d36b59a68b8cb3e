// Package corner checks corners with a tape: diagonals, tapers and mitres.
//
// Lengths are exact; a root is rounded once, to the nanometre. Angles are in degrees, as float64.
package corner

import (
	"errors"
	"math"
	"math/big"

	"lastrow/calc/length"
)

// Diagonal is the diagonal of a rectangle of the two sides, to the nanometre: the root of a² + b².
func Diagonal(a, b length.Length) length.Length {
	s := new(big.Int).Add(squared(a), squared(b))
	return root(s)
}

// root is the square root of s, rounded half up.
func root(s *big.Int) length.Length {
	r := new(big.Int).Sqrt(new(big.Int).Lsh(s, 2)) // the floor of twice the root
	return length.Length((r.Int64() + 1) / 2)
}

func squared(l length.Length) *big.Int {
	n := big.NewInt(int64(l))
	return n.Mul(n, n)
}

// ErrNoTriangle is three lengths that meet in no triangle.
var ErrNoTriangle = errors.New("these three lengths make no triangle")

// Angle is the angle between sides a and b where c is the length from end to end: acos((a² + b² - c²) / 2ab).
func Angle(a, b, c length.Length) (float64, error) {
	if a <= 0 || b <= 0 || c <= 0 || a+b <= c || a+c <= b || b+c <= a {
		return 0, ErrNoTriangle
	}
	top := new(big.Int).Add(squared(a), squared(b))
	top.Sub(top, squared(c))
	bottom := big.NewInt(int64(a))
	bottom.Mul(bottom, big.NewInt(2*int64(b)))
	cos, _ := new(big.Rat).SetFrac(top, bottom).Float64()
	return degrees(math.Acos(cos)), nil
}

// OutOfSquare is how far the end of side b lies from square to side a at their corner, to the nanometre: b times the
// cosine of the corner. It is positive where the corner is wider than square.
func OutOfSquare(a, b, c length.Length) length.Length {
	top := new(big.Int).Add(squared(a), squared(b))
	top.Sub(squared(c), top)
	half := new(big.Rat).SetFrac(top, big.NewInt(2*int64(a)))
	f, _ := half.Float64()
	return length.Length(math.Round(f))
}

// Taper is the angle of an edge that comes in by so much over a length.
func Taper(by, over length.Length) float64 {
	return degrees(math.Atan2(float64(by), float64(over)))
}

// WidthAt is the width of a tapered piece at a distance from its near end, to the nanometre.
func WidthAt(near, far, over, at length.Length) length.Length {
	n := big.NewInt(int64(far - near))
	n.Mul(n, big.NewInt(2*int64(at)))
	n.Add(n, big.NewInt(int64(over)))
	n.Div(n, big.NewInt(2*int64(over)))
	return near + length.Length(n.Int64())
}

// Mitre is the saw's setting for each of two pieces that share a corner, 0 being a square cut: (180 - corner) / 2.
func Mitre(corner float64) float64 { return (180 - corner) / 2 }

// Opening is how far a mitre cut for one corner opens in another, on stock of a thickness: 2 t tan of half the difference.
func Opening(stock length.Length, corner, cutFor float64) length.Length {
	half := (corner - cutFor) / 2 * math.Pi / 180
	return length.Length(math.Round(2 * float64(stock) * math.Abs(math.Tan(half))))
}

func degrees(radians float64) float64 { return radians * 180 / math.Pi }
