package layout

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

const (
	in = length.Inch
	mm = length.Millimetre
)

var usual = Rules{LeastRow: 2 * in, LeastEnd: 8 * in, LeastStagger: 12 * in, Kerf: in / 8, Lip: in / 8}

// rectangle is a floor of one rectangle with the same gap at each wall.
func rectangle(eastWest, northSouth, gap length.Length) *room.Floor {
	corner := func(x, y length.Length) geom.Point { return geom.Point{X: x, Y: y} }
	ring := func(g length.Length) geom.Ring {
		return geom.Ring{corner(g, g), corner(eastWest-g, g), corner(eastWest-g, northSouth-g), corner(g, northSouth-g)}
	}
	wall := ring(0)
	f := &room.Floor{Region: geom.Region{wall}, Laying: geom.Region{ring(gap)}}
	for i, side := range []room.Side{room.South, room.East, room.North, room.West} {
		f.Edges = append(f.Edges, room.Edge{A: wall[i], B: wall[(i+1)%4], Wall: string(side), Gap: gap, Cover: "trim"})
	}
	return f
}

func bedroom() Request {
	return Request{
		Floor: rectangle(150*in, 136*in, in/4),
		Plank: plank.Plank{Width: 61 * in / 8, Length: 95 * in / 2, PerBox: 8},
		Rules: usual,
	}
}

// An 11 ft 4 in floor of 7 5/8 in planks takes 18 rows, and the last is 5 7/8 in: 135 1/2 less 17 times 7 5/8.
func TestBedroom(t *testing.T) {
	l, err := Lay(bedroom())
	require.NoError(t, err)
	require.Len(t, l.Rows, 18)
	require.Equal(t, 47*in/8, l.Rows[17].Width)
	require.Empty(t, l.Broken)
	require.GreaterOrEqual(t, l.Planks, l.Bound)
	for _, r := range l.Rows {
		sum := length.Length(0)
		for _, p := range r.pieces() {
			sum += p.Right - p.Left
		}
		require.Equal(t, 299*in/2, sum, "row %d", r.N)
	}
}

// askew is a floor whose east wall leans out by so much, and whose north wall rises by half of it.
func askew(eastWest, northSouth, by length.Length) Request {
	r := bedroom()
	r.Floor = tight(geom.Ring{{}, {X: eastWest}, {X: eastWest + by, Y: northSouth + by/2}, {Y: northSouth}})
	return r
}

func BenchmarkLay(b *testing.B) {
	hall := func(eastWest, northSouth length.Length) Request {
		r := bedroom()
		r.Floor = rectangle(eastWest, northSouth, in/4)
		return r
	}
	ell, broken := room.Build(room.Plan{
		Rect:     &room.Rect{EastWest: 180 * in, NorthSouth: 150 * in, CutOuts: []room.CutOut{{Corner: "NE", EastWest: 50 * in, NorthSouth: 40 * in}}},
		Closets:  []room.Closet{{Wall: room.South, Wide: 60 * in, Deep: 24 * in, From: 30 * in, FromEnd: room.West}},
		Doorways: []room.Doorway{{Wall: room.West, Wide: 32 * in, From: 20 * in, FromEnd: room.South, Into: 2 * in}, {Wall: room.North, Wide: 32 * in, From: 20 * in, FromEnd: room.West, Into: 2 * in}},
	})
	require.Empty(b, broken)
	l := bedroom()
	l.Floor = ell
	for _, c := range []struct {
		name string
		r    Request
	}{{"bedroom", bedroom()}, {"out-of-square", askew(148*in, 110*in, 3*in)}, {"m2=10000-out-of-square", askew(100_000*mm, 100_000*mm, 900*mm)}, {"L-closet-doors", l}, {"m2=1000", hall(40_000*mm, 25_000*mm)}, {"m2=10000", hall(100_000*mm, 100_000*mm)}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				l, err := Lay(c.r)
				require.NoError(b, err)
				b.ReportMetric(float64(l.Planks-l.Bound), "over-bound")
			}
		})
	}
}

// The engine and the general solver on the same floors, beside each other.
func BenchmarkAgainstSolver(b *testing.B) {
	rnd := rand.New(rand.NewSource(11))
	var floors []puzzle
	for len(floors) < 20 {
		if p := puzzleOf(rnd, 4, 10); p.model().solve() >= 0 {
			floors = append(floors, p)
		}
	}
	b.Run("engine", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			for _, p := range floors {
				_, err := Lay(p.request())
				require.NoError(b, err)
			}
		}
	})
	b.Run("solver", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			for _, p := range floors {
				p.model().solve()
			}
		}
	})
}

// pieces lists the pieces of a row from the left.
func (r Row) pieces() []Piece {
	var out []Piece
	for _, run := range r.Runs {
		out = append(out, run.Pieces...)
	}
	return out
}
