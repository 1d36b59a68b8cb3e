package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

// simpleRing is a random ring that does not cross itself, on a coarse lattice so that edges touch and lie on each other.
func simpleRing(r *rand.Rand, most int64) Ring {
	for {
		ring := make(Ring, 3+r.IntN(6))
		for i := range ring {
			ring[i] = Point{length.Length(r.Int64N(most)) * in, length.Length(r.Int64N(most)) * in}
		}
		if !distinct(ring) || ring.twice().Sign() == 0 || len(Region{ring}.Crossings(1)) > 0 {
			continue
		}
		if !ring.Anticlockwise() {
			ring = ring.Reversed()
		}
		return ring
	}
}

// An independent library (simplefeatures) takes random figures off random rings: the areas agree, the outlines do not
// cross, and every piece of outline lies along the edge that it names.
func TestLessAgrees(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 2000 {
		ring := simpleRing(r, 30)
		figures := make([]Ring, 1+r.IntN(3))
		want := poly(ring)
		for i := range figures {
			figures[i] = simpleRing(r, 30)
			want = take(want, figures[i])
		}
		got := Region{ring}.Less(figures)
		require.InDelta(t, want.Area(), squareInches(got), 1e-3, "%v less %v", ring, figures)
		checkOutlines(t, append([]Ring{ring}, figures...), got)
	}
}

func squareInches(os []Outline) float64 {
	sum := 0.0
	for _, o := range os {
		sum += (Region{o.Ring}).Area().M2()
	}
	return sum / (in.MM() * in.MM() * 1e-6)
}

func checkOutlines(t *testing.T, sources []Ring, os []Outline) {
	for _, o := range os {
		require.Len(t, o.From, len(o.Ring))
		for i, p := range o.Ring {
			s := sources[o.From[i].Ring]
			a, b := s[o.From[i].Edge], s[(o.From[i].Edge+1)%len(s)]
			require.LessOrEqual(t, offLine(a, b, p), 1.0)
			require.LessOrEqual(t, offLine(a, b, o.Ring[(i+1)%len(o.Ring)]), 1.0)
		}
	}
}

// offLine is how far p lies off the line through a and b, in nanometres.
func offLine(a, b, p Point) float64 {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	return math.Abs(dx*float64(p.Y-a.Y)-dy*float64(p.X-a.X)) / math.Hypot(dx, dy)
}

// Figures along the axes are taken off exactly: the area is that of the squares left, counted one by one.
func TestLessAlongAxesIsExact(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	const n = 24
	for range 3000 {
		var left [n][n]bool
		for i := range left {
			for j := range left {
				left[i][j] = true
			}
		}
		var figures []Ring
		for range 1 + r.IntN(6) {
			x, y, w, h := r.IntN(n), r.IntN(n), 1+r.IntN(n), 1+r.IntN(n)
			figures = append(figures, square(length.Length(w)*in, length.Length(h)*in).at(x, y))
			for i := x; i < min(n, x+w); i++ {
				for j := y; j < min(n, y+h); j++ {
					left[i][j] = false
				}
			}
		}
		count := length.Length(0)
		for i := range left {
			for j := range left {
				if left[i][j] {
					count++
				}
			}
		}
		got := region(Region{square(n*in, n*in)}.Less(figures))
		require.Zero(t, got.Area().Cmp((count * in).Times(in)), "%v", figures)
	}
}

func (r Ring) at(x, y int) Ring {
	var out Ring
	for _, p := range r {
		out = append(out, Point{p.X + length.Length(x)*in, p.Y + length.Length(y)*in})
	}
	return out
}

func region(os []Outline) Region {
	var r Region
	for _, o := range os {
		r = append(r, o.Ring)
	}
	return r
}

// Parts that touch at a corner alone stay apart, and a hole that touches the outline is no hole.
func TestLessKeepsTouchingPartsApart(t *testing.T) {
	got := Region{square(10*in, 10*in)}.Less([]Ring{square(5*in, 5*in), square(5*in, 5*in).at(5, 5)})
	require.Len(t, got, 2)
	for _, o := range got {
		require.Len(t, o.Ring, 4)
	}
	got = Region{square(10*in, 10*in)}.Less([]Ring{square(2*in, 2*in).at(4, 0)})
	require.Len(t, got, 1)
	got = Region{square(10*in, 10*in)}.Less([]Ring{square(2*in, 2*in).at(4, 4), square(1*in, 1*in).at(4, 4)})
	require.Len(t, got, 2)
	require.Empty(t, Region{square(10*in, 10*in)}.Less([]Ring{square(10*in, 10*in)}))
}

// The short way of an inset and the long one agree point for point where both serve.
func TestInsetBothWays(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	both := 0
	for range 4000 {
		ring, gaps := joggedRoom(r)
		if len(Region{ring}.Crossings(1)) > 0 {
			continue
		}
		short, ok := Region{ring}.mitred([][]length.Length{gaps})
		if !ok {
			continue
		}
		both++
		var long Region
		for _, o := range (Region{ring}).Less(Region{ring}.bands([][]length.Length{gaps})) {
			long = append(long, o.Ring.Tidy())
		}
		require.Equal(t, rotated(short), rotated(long))
	}
	require.Greater(t, both, 500)
}

// A room turned by any angle keeps its laying area, jogs shorter than the gap and unlike gaps and all.
func TestInsetTurned(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	n := 0
	for range 1500 {
		ring, gaps := joggedRoom(r)
		if len(Region{ring}.Crossings(1)) > 0 {
			continue
		}
		n++
		want := Region{ring}.Inset([][]length.Length{gaps}).Area().M2()
		turned := ring.turned(r.Float64() * 2 * math.Pi)
		got := Region{turned}.Inset([][]length.Length{gaps})
		require.InDelta(t, want, got.Area().M2(), 1e-6, "%v %v", turned, gaps)
	}
	require.Greater(t, n, 500)
}

func (r Ring) turned(by float64) Ring {
	sin, cos := math.Sincos(by)
	var out Ring
	for _, p := range r {
		x, y := float64(p.X), float64(p.Y)
		out = append(out, Point{length.Length(math.Round(x*cos - y*sin)), length.Length(math.Round(x*sin + y*cos))})
	}
	return out
}

// Every corner of an inset lies at least the gap away from every wall, by the library's distance.
func TestInsetKeepsItsDistance(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	for range 1500 {
		ring := simpleRing(r, 60)
		gaps := make([]length.Length, len(ring))
		for i := range gaps {
			gaps[i] = in * 3 / 8
		}
		for _, left := range (Region{ring}).Inset([][]length.Length{gaps}) {
			for _, p := range left {
				require.GreaterOrEqual(t, wallDistance(ring, p), 0.375-1e-6, "%v at %v", ring, p)
			}
		}
	}
}

// wallDistance is the distance from p to the nearest edge, in inches.
func wallDistance(ring Ring, p Point) float64 {
	at := sf.NewPoint(sf.Coordinates{XY: sf.XY{X: float64(p.X) / float64(in), Y: float64(p.Y) / float64(in)}}).AsGeometry()
	boundary := poly(ring).MustAsPolygon().Boundary().AsGeometry()
	d, _ := sf.Distance(at, boundary)
	return d
}

func BenchmarkInset(b *testing.B) {
	for _, n := range []int{8, 40, 200} {
		var ring Ring
		for i := range n {
			far := length.Length(100+7*(i%2)) * in
			s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			ring = append(ring, Point{length.Length(c * float64(far)), length.Length(s * float64(far))})
		}
		gaps := make([]length.Length, n)
		for i := range gaps {
			gaps[i] = in / 4
		}
		b.Run(fmt.Sprintf("edges=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Region{ring}.Inset([][]length.Length{gaps})
			}
		})
	}
}
