package geom

import (
	"fmt"
	"math/rand/v2"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

const in = length.Inch

// An independent library of geometry (simplefeatures): areas and validity of random rings.
func TestAreaAndValidityAgree(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	valid := 0
	for range 3000 {
		ring := make(Ring, 3+r.IntN(6))
		for i := range ring {
			ring[i] = Point{length.Length(r.Int64N(40)) * in, length.Length(r.Int64N(40)) * in}
		}
		p, err := reference(ring)
		ours := len(Region{ring}.Crossings(1)) == 0 && ring.twice().Sign() != 0 && distinct(ring)
		if !distinct(ring) {
			continue
		}
		require.Equal(t, err == nil, ours, "%v: %v", ring, err)
		if err == nil {
			valid++
			a := Region{ring}.Area().M2()
			require.InDelta(t, p.Area(), max(a, -a)*1e18/float64(in)/float64(in), 1e-6)
		}
	}
	require.Greater(t, valid, 300)
}

func distinct(r Ring) bool {
	seen := map[Point]bool{}
	for _, p := range r {
		seen[p] = true
	}
	return len(seen) == len(r)
}

// reference is the ring as the library's polygon, in inches.
func reference(r Ring) (sf.Polygon, error) {
	var xy []float64
	for i := range len(r) + 1 {
		p := r[i%len(r)]
		xy = append(xy, float64(p.X)/float64(in), float64(p.Y)/float64(in))
	}
	ring := sf.NewLineString(sf.NewSequence(xy, sf.DimXY))
	p := sf.NewPolygon([]sf.LineString{ring})
	return p, p.Validate()
}

func square(w, h length.Length) Ring { return Ring{{0, 0}, {w, 0}, {w, h}, {0, h}} }

func TestOrientIsExact(t *testing.T) {
	far := Point{9e14, 9e14 - 1}
	require.Equal(t, -1, Orient(Point{}, Point{9e14, 9e14}, far))
	require.Equal(t, 0, Orient(Point{}, far, far))
	require.Equal(t, 1, Orient(Point{}, far, Point{9e14, 9e14}))
}

func TestInsetOfRectangle(t *testing.T) {
	got := Region{square(100*in, 60*in)}.Inset([][]length.Length{{in, 2 * in, 3 * in, 4 * in}})
	require.Equal(t, Region{{{4 * in, in}, {98 * in, in}, {98 * in, 57 * in}, {4 * in, 57 * in}}}, rotated(got))
}

// rotated begins each ring at its lowest, then leftmost point.
func rotated(r Region) Region {
	var out Region
	for _, ring := range r {
		k := 0
		for i, p := range ring {
			if p.Y < ring[k].Y || p.Y == ring[k].Y && p.X < ring[k].X {
				k = i
			}
		}
		out = append(out, append(append(Ring{}, ring[k:]...), ring[:k]...))
	}
	return out
}

// A narrow alcove vanishes, a hole grows, a step with unlike gaps stays a step.
func TestInsetCases(t *testing.T) {
	alcove := Ring{{0, 0}, {100 * in, 0}, {100 * in, 50 * in}, {51 * in, 50 * in}, {51 * in, 60 * in}, {50 * in, 60 * in}, {50 * in, 50 * in}, {0, 50 * in}}
	gaps := make([]length.Length, len(alcove))
	for i := range gaps {
		gaps[i] = in
	}
	require.Equal(t, Region{square(98*in, 48*in).moved(in)}, rotated(Region{alcove}.Inset([][]length.Length{gaps})))
	hole := Ring{{40 * in, 20 * in}, {40 * in, 24 * in}, {44 * in, 24 * in}, {44 * in, 20 * in}}
	r := Region{square(100*in, 60*in), hole}.Inset([][]length.Length{{0, 0, 0, 0}, {in, in, in, in}})
	require.Zero(t, r.Area().Cmp((100 * in).Times(60*in).Minus((6 * in).Times(6*in))))
	split := Ring{{0, 0}, {50 * in, 0}, {100 * in, 0}, {100 * in, 60 * in}, {0, 60 * in}}
	s := Region{split}.Inset([][]length.Length{{in, 2 * in, 0, 0, 0}})
	require.Zero(t, s.Area().Cmp((100 * in).Times(60*in).Minus((50 * in).Times(3*in))))
	require.Empty(t, Region{square(10*in, 10*in)}.Inset([][]length.Length{{5 * in, 5 * in, 5 * in, 5 * in}}))
}

func (r Ring) moved(by length.Length) Ring {
	out := Ring{}
	for _, p := range r {
		out = append(out, Point{p.X + by, p.Y + by})
	}
	return out
}

// A slanted wall's band is as wide as said: every point of the inset lies the gap away from the wall's line.
func TestInsetOfSlant(t *testing.T) {
	ring := Ring{{0, 0}, {100 * in, 0}, {90 * in, 60 * in}, {0, 50 * in}}
	got := Region{ring}.Inset([][]length.Length{{in, in, in, in}})
	require.Len(t, got[0], 4)
	for i, a := range ring {
		b := ring[(i+1)%4]
		least := 1e18
		for _, p := range got[0] {
			cross := float64(b.X-a.X)*float64(p.Y-a.Y) - float64(b.Y-a.Y)*float64(p.X-a.X)
			least = min(least, cross/float64(Distance(a, b)))
		}
		require.InDelta(t, float64(in), least, 2, i)
	}
}

func TestContainsAndTidy(t *testing.T) {
	r := Region{square(10*in, 10*in), {{4 * in, 4 * in}, {4 * in, 6 * in}, {6 * in, 6 * in}, {6 * in, 4 * in}}}
	require.True(t, r.Contains(Point{in, in}))
	require.True(t, r.Contains(Point{0, 5 * in}))
	require.False(t, r.Contains(Point{5 * in, 5 * in}))
	require.False(t, r.Contains(Point{11 * in, 5 * in}))
	require.Equal(t, square(10*in, 10*in), Ring{{0, 0}, {5 * in, 0}, {10 * in, 0}, {10 * in, 10 * in}, {10 * in, 10 * in}, {0, 10 * in}}.Tidy())
	require.Equal(t, 40*in, Region{square(10*in, 10*in)}.Perimeter())
}

func BenchmarkCrossings(b *testing.B) {
	for _, n := range []int{100, 1000, 10000} {
		ring := Ring{}
		for i := range n / 2 {
			ring = append(ring, Point{length.Length(i) * in, length.Length(i%2) * in})
		}
		for i := n / 2; i > 0; i-- {
			ring = append(ring, Point{length.Length(i) * in, length.Length(i%2+5) * in})
		}
		b.Run(fmt.Sprintf("edges=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Region{ring}.Crossings(1)
			}
		})
	}
}
