package layout

import (
	"math"
	"math/rand"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// An independent library of geometry (simplefeatures) cuts the same strips from the same floors: the area of each agrees
// to a thousandth of a square millimetre, or to a nanometre along its outline where that slants, and all of a floor's strips together make it, exactly where its walls lie along the rows or square to them.
func TestStripsAgree(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewSource(21))
	strips, lost := 0, 0
	for range 250 {
		f, broken := room.Build(joinedPlan(rnd))
		if broken != nil {
			continue
		}
		fr := aFrame(rnd, f)
		laying := fr.floor(f.Laying)
		whole, ok := outside(laying)
		if !ok {
			continue
		}
		var sum length.Area
		for _, row := range slice(laying, length.Length(100+rnd.Intn(200))*mm, length.Length(20+rnd.Intn(80))*mm) {
			var area length.Area
			bend := 0.0 // where walls slant, a nanometre along the outline
			for _, p := range row.parts {
				area = area.Plus(p.Area())
				if !plain(p) {
					bend += p.Perimeter().MM() * 1e-6
				}
			}
			sum = sum.Plus(area)
			if want, ok := clipped(whole, row); ok {
				require.InDelta(t, want, area.M2()*1e6, max(1e-3, bend))
				strips++
			} else {
				lost++
			}
		}
		if !fr.slanted() && f.Plan.Quad == nil {
			require.Zero(t, sum.Cmp(laying.Area()))
			continue
		}
		// A cut slanted edge bends by less than the nanometre to which the cut is rounded.
		off, _ := sum.Minus(laying.Area()).Nm2().Float64()
		require.LessOrEqual(t, math.Abs(off), float64(laying.Perimeter()))
	}
	require.Greater(t, strips, 3000)
	require.Less(t, lost, strips/20)
}

// aFrame is that of rows in some direction.
func aFrame(rnd *rand.Rand, f *room.Floor) frame {
	ways := []Direction{EastWest, NorthSouth, Diagonal}
	for _, e := range f.Main {
		ways = append(ways, Along(e.Side))
	}
	both, _ := startsOf(f, ways[rnd.Intn(len(ways))])
	return both[rnd.Intn(2)].frame
}

// joinedPlan is a room, out of square or not, with a hall off it, a closet off the hall, a doorway and a post.
func joinedPlan(rnd *rand.Rand) room.Plan {
	size := func(least, most int) length.Length { return length.Length(8*least+rnd.Intn(8*(most-least))) * in / 8 }
	sides := []room.Side{room.North, room.East, room.South, room.West}
	w, h := size(110, 250), size(110, 250)
	p := room.Plan{Rect: &room.Rect{EastWest: w, NorthSouth: h}}
	if rnd.Intn(2) == 0 {
		diagonal := geom.Distance(geom.Point{}, geom.Point{X: w, Y: h})
		p = room.Plan{Quad: &room.Quad{North: w, South: w + size(0, 5), West: h, East: h + size(0, 5), NWSE: diagonal + size(0, 4)}}
	}
	p.Closets = []room.Closet{
		{What: "hall", Wall: sides[rnd.Intn(4)], Wide: size(32, 60), Deep: size(50, 110), Opening: size(24, 31)},
		{Off: "hall", Wall: sides[rnd.Intn(4)], Wide: size(18, 30), Deep: size(12, 30)},
	}
	p.Doorways = []room.Doorway{{Wall: sides[rnd.Intn(4)], Wide: size(24, 36)}}
	p.Fixtures = []room.Fixture{{What: "post", Wide: size(2, 7), FromX: size(1, 40), SideX: room.West, FromY: size(1, 40), SideY: room.South}}
	return p
}

// outside is a region of one outer ring as the library's polygon, in millimetres.
func outside(r geom.Region) (sf.Geometry, bool) {
	var rings []sf.LineString
	for k, ring := range r {
		if ring.Anticlockwise() != (k == 0) {
			return sf.Geometry{}, false
		}
		rings = append(rings, line(ring))
	}
	p := sf.NewPolygon(rings)
	return p.AsGeometry(), p.Validate() == nil
}

func line(r geom.Ring) sf.LineString {
	var xy []float64
	for i := range len(r) + 1 {
		xy = append(xy, r[i%len(r)].X.MM(), r[i%len(r)].Y.MM())
	}
	return sf.NewLineString(sf.NewSequence(xy, sf.DimXY))
}

// clipped is the area of a floor within a row's lines, in square millimetres. The library's overlay now and then loses the
// floor: an answer that differs from the floor less what lies outside the lines is none.
func clipped(whole sf.Geometry, row strip) (float64, bool) {
	const wide = 100 * length.Metre
	ring := geom.Ring{{X: -wide, Y: row.near}, {X: wide, Y: row.near}, {X: wide, Y: row.far}, {X: -wide, Y: row.far}}
	box := sf.NewPolygon([]sf.LineString{line(ring)}).AsGeometry()
	in, err1 := sf.Intersection(whole, box)
	out, err2 := sf.Difference(whole, box)
	return in.Area(), err1 == nil && err2 == nil && math.Abs(whole.Area()-out.Area()-in.Area()) < 1e-3
}
