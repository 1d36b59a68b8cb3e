// Package plank holds goods as they are sold: planks by the box, underlay by the roll.
package plank

import "lastrow/calc/length"

// Plank is the product laid. A zero field is not known.
type Plank struct {
	Width, Length, Thickness length.Length // of the face, without the tongue
	PerBox                   int
	BoxArea                  length.Area // as printed on the box; zero where only the count is known
}

// Roll is underlay, or film, as sold. A zero field is not known.
type Roll struct {
	Thickness, Width, Length, Overlap length.Length
}
