package layout

import (
	"math"
	"math/rand"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"

	"lastrow/calc/geom"
)

// The library of geometry cuts the same pieces: the laying area within each piece's rectangle, as the rows and the joints
// give it, has the piece's area to a thousandth of a square millimetre, and no corner of either outline is further than a
// thousandth of a millimetre from the other.
func TestPiecesAgree(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewSource(41))
	pieces, lost, worst := 0, 0, 0.0
	for i := range 180 {
		r := anyRequest(rnd)
		if i%5 == 0 {
			r.Floor, r.Along = aslant(rnd), []Direction{EastWest, NorthSouth, Diagonal}[rnd.Intn(3)]
		}
		l, err := Lay(r)
		require.NoError(t, err)
		f := l.start().frame
		laying := f.floor(r.Floor.Laying)
		whole, ok := outside(laying)
		if !ok {
			continue
		}
		area := boxOf(laying)
		law{t, l, ""}.each(func(row Row, _ Run, p Piece) {
			at := box{area.left + p.Left, area.left + p.Right, area.near + row.Near, area.near + row.Near + row.Width}
			want, ok := inBox(whole, at)
			if !ok {
				lost++
				return
			}
			got := turned(p.Shape, f.in)
			want = ofRun(want, got)
			slack := 1e-3 + got.Perimeter().MM()*2e-6 // a diagonal's corners are rounded to the nanometre there and back
			require.InDelta(t, want.Area(), got.Area().M2()*1e6, slack, "floor %d row %d piece %d", i, p.Row, p.N)
			off := outlineOf(want).off(regionOutline(got))
			require.Less(t, off, 1e-3, "floor %d row %d piece %d", i, p.Row, p.N)
			worst = max(worst, off)
			pieces++
		})
	}
	t.Logf("%d pieces agree, corners to %.2g mm; the library lost %d", pieces, worst, lost)
	require.Greater(t, pieces, 8_000)
	require.Less(t, lost, pieces/20)
}

// ofRun leaves out what belongs to another run of the row: a part with no corner on the piece.
func ofRun(g sf.Geometry, piece geom.Region) sf.Geometry {
	var parts []sf.Polygon
	for _, d := range g.Dump() {
		poly, ok := d.AsPolygon()
		if ok && regionOutline(piece).distance(poly.ExteriorRing().Coordinates().GetXY(0)) < 1e-3 {
			parts = append(parts, poly)
		}
	}
	return sf.NewMultiPolygon(parts).AsGeometry()
}

// inBox is the part of a floor in a box. The library's overlay now and then loses the floor: an answer that differs from
// the floor less what lies outside is none.
func inBox(whole sf.Geometry, b box) (sf.Geometry, bool) {
	g := sf.NewPolygon([]sf.LineString{line(b.ring())}).AsGeometry()
	in, err1 := sf.Intersection(whole, g)
	out, err2 := sf.Difference(whole, g)
	return in, err1 == nil && err2 == nil && math.Abs(whole.Area()-out.Area()-in.Area()) < 1e-3
}
