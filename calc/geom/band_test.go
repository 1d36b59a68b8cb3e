package geom

import (
	"math"
	"math/rand/v2"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

// An independent library (simplefeatures) takes a band off along each wall, with a kite at each outside corner of it; the
// inset must leave the same floor, for rooms with jogs shorter than the gap and walls with unlike gaps.
func TestInsetIsRoomLessBands(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	compared := 0
	for range 600 {
		ring, gaps := joggedRoom(r)
		if len(Region{ring}.Crossings(1)) > 0 || !ring.Anticlockwise() {
			continue
		}
		want, ok := lessBands(ring, gaps)
		if !ok {
			continue
		}
		got := Region{ring}.Inset([][]length.Length{gaps})
		require.InDelta(t, want, got.Area().M2()/(in.MM()*in.MM()*1e-6), 1e-3, "%v %v", ring, gaps)
		compared++
	}
	require.Greater(t, compared, 250)
}

// joggedRoom is a rectangle with a step or an alcove in each wall, some shorter than the gaps.
func joggedRoom(r *rand.Rand) (Ring, []length.Length) {
	w, h := 80+r.Int64N(60), 60+r.Int64N(60)
	var pts [][2]int64
	side := func(x, y, dx, dy, l int64) {
		pts = append(pts, [2]int64{x, y})
		at, wide, deep := 10+r.Int64N(20), 1+r.Int64N(15), r.Int64N(9)-4
		if deep == 0 || r.IntN(3) == 0 {
			return
		}
		ox, oy := dy*deep, -dx*deep
		a, b := [2]int64{x + dx*at, y + dy*at}, [2]int64{x + dx*(at+wide), y + dy*(at+wide)}
		pts = append(pts, a, [2]int64{a[0] + ox, a[1] + oy}, [2]int64{b[0] + ox, b[1] + oy}, b)
	}
	side(0, 0, 1, 0, w)
	side(w, 0, 0, 1, h)
	side(w, h, -1, 0, w)
	side(0, h, 0, -1, h)
	var ring Ring
	var gaps []length.Length
	for _, p := range pts {
		ring = append(ring, Point{length.Length(p[0]) * in, length.Length(p[1]) * in})
		gaps = append(gaps, length.Length(r.Int64N(5))*in/2)
	}
	return ring, gaps
}

// lessBands gives the area left, in square inches. The library's overlay now and then loses the floor: an answer that
// depends on the order of the walls is none.
func lessBands(ring Ring, gaps []length.Length) (float64, bool) {
	forth, back := poly(ring), poly(ring)
	n := len(ring)
	for i := range ring {
		forth = takeWall(forth, ring, gaps, i)
		back = takeWall(back, ring, gaps, n-1-i)
	}
	return forth.Area(), forth.Area() > 0 && math.Abs(forth.Area()-back.Area()) < 1e-6
}

func takeWall(left sf.Geometry, ring Ring, gaps []length.Length, i int) sf.Geometry {
	n := len(ring)
	a, b, c := ring[i], ring[(i+1)%n], ring[(i+2)%n]
	left = take(left, band(a, b, gaps[i]))
	if Orient(a, b, c) < 0 {
		left = take(left, kite(a, b, c, gaps[i], gaps[(i+1)%n]))
	}
	return left
}

func take(g sf.Geometry, r Ring) sf.Geometry {
	if r == nil {
		return g
	}
	out, err := sf.Difference(g, poly(r))
	if err != nil {
		return sf.Geometry{} // of no area: the other order of the walls tells
	}
	return out
}

func poly(r Ring) sf.Geometry {
	if !r.Anticlockwise() {
		r = r.Reversed()
	}
	p, err := reference(r)
	if err != nil {
		panic(err)
	}
	return p.AsGeometry()
}

// band is the rectangle to the left of a wall.
func band(a, b Point, gap length.Length) Ring {
	if gap == 0 {
		return nil
	}
	return Ring{a, b, off(a, b, b, gap), off(a, b, a, gap)}
}

func off(a, b, p Point, gap length.Length) Point {
	l := math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
	return Point{p.X - length.Length(float64(gap)*float64(b.Y-a.Y)/l), p.Y + length.Length(float64(gap)*float64(b.X-a.X)/l)}
}

// kite is the mitre of two bands at an outside corner b, square here.
func kite(a, b, c Point, g, h length.Length) Ring {
	if g == 0 || h == 0 {
		return nil
	}
	p, q := off(a, b, b, g), off(b, c, b, h)
	return Ring{b, p, {p.X + q.X - b.X, p.Y + q.Y - b.Y}, q}
}
