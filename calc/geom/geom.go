// Package geom holds plane figures on whole nanometres: points, rings, regions, and what a floor needs done to them:
// area, validity, a band taken off along each edge, and cutting into strips.
//
// Signs are exact (128-bit products); a crossing is rounded to the nanometre once, where it is computed.
// X grows to the east, Y to the north.
package geom

import "lastrow/calc/length"

// Point is a place on the plane.
type Point struct{ X, Y length.Length }

// Ring is a closed walk through its points, the last joined to the first. Outer rings run anticlockwise, holes clockwise.
type Ring []Point

// Region is a set of points bounded by rings: outer ones anticlockwise and holes clockwise, none crossing another.
type Region []Ring
