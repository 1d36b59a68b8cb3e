package room

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

const (
	in = length.Inch
	ft = length.Foot
	mm = length.Millimetre
)

func built(t *testing.T, p Plan) *Floor {
	f, broken := Build(p)
	require.Empty(t, broken)
	checkFloor(t, f)
	return f
}

// checkFloor holds the laws of a floor: rings that do not cross, edges that follow the rings, the laying area inside.
func checkFloor(t *testing.T, f *Floor) {
	require.Empty(t, f.Region.Crossings(1))
	require.Empty(t, f.Laying.Crossings(1))
	require.True(t, f.Region[0].Anticlockwise())
	checkLaying(t, f)
	i := 0
	for _, ring := range f.Region {
		for k, p := range ring {
			require.Equal(t, p, f.Edges[i].A)
			require.Equal(t, ring[(k+1)%len(ring)], f.Edges[i].B)
			require.NotEmpty(t, f.Edges[i].Wall)
			i++
		}
	}
}

// checkLaying holds that the laying area lies inside the floor, but for what runs on under the jambs.
func checkLaying(t *testing.T, f *Floor) {
	var under []geom.Ring
	ends := map[geom.Point]bool{}
	for _, e := range f.Edges {
		if e.Under > 0 {
			ends[e.A], ends[e.B] = true, true
			o := opening{e: e}
			under = append(under, geom.Ring{o.at(0, 0), o.at(0, e.Under), o.at(e.Len(), e.Under), o.at(e.Len(), 0)})
		}
	}
	for _, o := range f.Laying.Less(append(under, f.Region[0])) {
		require.Less(t, (geom.Region{o.Ring}).Area().M2(), 1e-8) // slivers of a nanometre along slanted walls
	}
	for _, hole := range f.Region[1:] {
		for _, p := range hole {
			require.False(t, !ends[p] && f.Laying.Contains(p))
		}
	}
}

func rect(w, h length.Length, cuts ...CutOut) Plan {
	return Plan{Rect: &Rect{EastWest: w, NorthSouth: h, CutOuts: cuts}}
}

func TestRectangle(t *testing.T) {
	f := built(t, rect(136*in, 150*in))
	require.Zero(t, f.Area().Cmp((136 * in).Times(150*in)))
	require.Equal(t, 2*(136+150)*in, f.Perimeter())
	require.Zero(t, f.Laying.Area().Cmp((136*in - in/2).Times(150*in-in/2)))
	require.Equal(t, []string{"south", "east", "north", "west"}, wallNames(f))
}

func wallNames(f *Floor) []string {
	var names []string
	for _, e := range f.Edges {
		names = append(names, e.Wall)
	}
	return names
}

// 15 x 12 ft less 4 x 5 ft is 160 sq ft (arithmetic); every corner alike.
func TestCutOut(t *testing.T) {
	for _, corner := range []string{"NE", "SE", "SW", "NW"} {
		f := built(t, rect(15*ft, 12*ft, CutOut{Corner: corner, EastWest: 4 * ft, NorthSouth: 5 * ft}))
		require.InDelta(t, 160, f.Area().SqFt(), 1e-9, corner)
		require.Equal(t, 54*ft, f.Perimeter(), corner)
	}
	all := built(t, rect(15*ft, 12*ft, CutOut{Corner: "NE", EastWest: ft, NorthSouth: ft}, CutOut{Corner: "SE", EastWest: ft, NorthSouth: ft}, CutOut{Corner: "SW", EastWest: ft, NorthSouth: ft}, CutOut{Corner: "NW", EastWest: ft, NorthSouth: ft}))
	require.InDelta(t, 176, all.Area().SqFt(), 1e-9)
}

func walk(legs ...any) Plan {
	var p Plan
	for i := 0; i < len(legs); i += 2 {
		p.Walk = append(p.Walk, Wall{To: legs[i].(Side), Len: legs[i+1].(length.Length)})
	}
	return p
}

func TestWalk(t *testing.T) {
	p := walk(East, 148*in, South, 9*ft, West, 3*ft, South, 30*in, West, 112*in, North, 138*in)
	f := built(t, p)
	require.InDelta(t, 12.479975, f.Area().M2(), 1e-6)
	require.Contains(t, wallNames(f), "north")
	require.Contains(t, wallNames(f), "west")
}

func TestWalkMiss(t *testing.T) {
	_, broken := Build(walk(North, 12*ft, East, 9*ft, South, 10*ft, West, 9*ft))
	require.Equal(t, "walls: they miss closing by 24 in going south", broken[0].String())
	f := built(t, walk(North, 12*ft, East, 9*ft, South, 12*ft-in/4, West, 9*ft))
	require.Equal(t, []string{"walls missed closing by 1/4 in going south; spread over the walls"}, f.Notes)
	require.InDelta(t, 9*(12-1.0/96), f.Area().SqFt(), 0.01)
}

// 3-4-5 and 15-20-25 triangles (framing texts): the diagonal of a square room makes it a rectangle again.
func TestQuadOfSquareRoom(t *testing.T) {
	for _, k := range []length.Length{1, 5} {
		q := Quad{North: 4 * k * ft, South: 4 * k * ft, East: 3 * k * ft, West: 3 * k * ft, NWSE: 5 * k * ft, SWNE: 5 * k * ft}
		f := built(t, Plan{Quad: &q})
		require.InDelta(t, float64(12*k*k), f.Area().SqFt(), 1e-6)
	}
}

func TestQuadOutOfSquare(t *testing.T) {
	one := Quad{North: 148 * in, East: 110 * in, South: 145 * in, West: 110 * in, NWSE: 183*in + in/2}
	f := built(t, Plan{Quad: &one})
	for i, want := range []length.Length{one.South, one.East, one.North, one.West} {
		require.InDelta(t, float64(want), float64(f.Edges[i].Len()), 2, i)
	}
	other := one
	other.NWSE, other.SWNE = 0, geom.Distance(f.Region[0][0], f.Region[0][2])
	g := built(t, Plan{Quad: &other})
	require.InDelta(t, f.Area().M2(), g.Area().M2(), 1e-6)
	_, broken := Build(Plan{Quad: &Quad{North: 12 * ft, East: 9 * ft, South: 12 * ft, West: 9 * ft, NWSE: 40 * ft}})
	require.NotEmpty(t, broken)
}

func TestClosetDoorwayPost(t *testing.T) {
	p := rect(12*ft, 10*ft)
	p.Closets = []Closet{{Wall: North, Wide: 5 * ft, Deep: 2 * ft, From: 3 * ft, FromEnd: West, Opening: 4 * ft}}
	p.Doorways = []Doorway{{Wall: South, Wide: 32 * in, From: 2 * ft, FromEnd: West}}
	p.Fixtures = []Fixture{{What: "post", Wide: 4 * in, Deep: 4 * in, FromX: 3 * ft, SideX: West, FromY: 5 * ft, SideY: South}}
	f := built(t, p)
	want := 120 + 10 + 4*4.5/12 + 32*2.25/144 - 16.0/144
	require.InDelta(t, want, f.Area().SqFt(), 1e-9)
	require.Len(t, f.Region, 2)
	require.Len(t, f.Doors(), 1)
	door := f.Doors()[0]
	require.Equal(t, 2*ft, door.A.X)
	require.Equal(t, 32*in, door.Len())
}

func TestHearthAgainstWallAndInCorner(t *testing.T) {
	for _, from := range []length.Length{0, 3 * ft} {
		p := rect(12*ft, 10*ft)
		p.Fixtures = []Fixture{{What: "hearth", Wide: 5 * ft, Deep: 18 * in, FromX: from, SideX: West, FromY: 0, SideY: North}}
		f := built(t, p)
		require.Len(t, f.Region, 1)
		require.InDelta(t, 112.5, f.Area().SqFt(), 1e-9)
	}
}

func TestTightWall(t *testing.T) {
	p := rect(12*ft, 10*ft)
	p.Gap, p.WallGaps = 3*in/8, map[Side]length.Length{South: 0}
	f := built(t, p)
	sw, _ := f.Laying.Box()
	require.Equal(t, geom.Point{X: 3 * in / 8, Y: 0}, sw)
}

func TestRefusesAllAtOnce(t *testing.T) {
	p := rect(11*ft, 12*ft)
	p.Doorways = []Doorway{{Wall: South, Wide: 32 * in, From: 40 * ft, FromEnd: West}, {Wall: South, Wide: 3 * ft, From: ft, FromEnd: South}}
	p.Closets = []Closet{{Wall: North, Wide: 20 * ft, Deep: 2 * ft}}
	p.Fixtures = []Fixture{{What: "post", Wide: ft, Deep: ft, FromX: 30 * ft, SideX: West, FromY: 0, SideY: South}}
	_, broken := Build(p)
	require.Len(t, broken, 4)
	for _, b := range broken {
		require.NotEmpty(t, b.Where)
	}
}

func TestOverlapsRefused(t *testing.T) {
	p := rect(12*ft, 10*ft)
	p.Doorways = []Doorway{{Wall: South, Wide: 3 * ft, From: ft, FromEnd: West}, {Wall: South, Wide: 3 * ft, From: 2 * ft, FromEnd: West}}
	_, broken := Build(p)
	require.Contains(t, broken[0].String(), "overlaps another opening")
	_, broken = Build(walk(North, 10*ft, East, 10*ft, South, 5*ft, West, 15*ft, South, 5*ft, East, 5*ft))
	require.NotEmpty(t, broken)
}

func TestLongWalksRefusedAtOnce(t *testing.T) {
	var p Plan
	for range 5000 {
		p.Walk = append(p.Walk, Wall{To: North, Len: ft}, Wall{To: East, Len: ft})
	}
	_, broken := Build(p)
	require.Contains(t, broken[0].String(), "10000 walls")
}

func TestGapsSwallowFloor(t *testing.T) {
	p := rect(7*in, 10*ft)
	p.Gap = 4 * in
	_, broken := Build(p)
	require.NotEmpty(t, broken)
}

// Generated floors keep the laws.
func TestGeneratedFloors(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	sides := []Side{North, East, South, West}
	pick := func(lo, hi int64) length.Length { return length.Length(lo+r.Int64N(hi-lo)) * in / 8 }
	n := 0
	for range 2000 {
		p := rect(pick(600, 2000), pick(600, 2000), CutOut{Corner: "NE", EastWest: pick(8, 250), NorthSouth: pick(8, 250), Angled: r.IntN(2) == 0})
		p.Closets = []Closet{{Wall: sides[r.IntN(4)], Wide: pick(200, 400), Deep: pick(100, 300), Opening: pick(100, 200)}}
		p.Doorways = []Doorway{{Wall: sides[r.IntN(4)], Wide: pick(200, 300)}}
		if r.IntN(2) == 0 {
			p.Fixtures = []Fixture{{What: "post", Wide: pick(10, 60), FromX: pick(0, 300), SideX: West, FromY: pick(0, 300), SideY: South}}
		}
		f, broken := Build(p)
		if broken != nil {
			require.NotEmpty(t, broken[0].Where)
			continue
		}
		n++
		checkFloor(t, f)
	}
	require.Greater(t, n, 1000)
}

// A walk in and out of bays, with a post in the middle and a door.
func BenchmarkBuild(b *testing.B) {
	for _, n := range []int{8, 48, 448} {
		p := comb(n)
		p.Fixtures = []Fixture{{What: "post", Wide: 4 * in, FromX: ft, SideX: West, FromY: ft, SideY: South}}
		p.Doorways = []Doorway{{Wall: West, Wide: 32 * in}}
		b.Run(fmt.Sprintf("walls=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, broken := Build(p)
				require.Empty(b, broken)
			}
		})
	}
}

// comb is a walk round a long room with bays along its north side.
func comb(walls int) Plan {
	bays := (walls - 4) / 4
	p := walk(North, 12*ft)
	for range bays {
		p.Walk = append(p.Walk, Wall{To: East, Len: 2 * ft}, Wall{To: North, Len: ft}, Wall{To: East, Len: 2 * ft}, Wall{To: South, Len: ft})
	}
	p.Walk = append(p.Walk, Wall{To: East, Len: 2 * ft}, Wall{To: South, Len: 12 * ft}, Wall{To: West, Len: length.Length(4*bays+2) * ft})
	return p
}
