package room

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

// A 12 x 10 ft room with a corner cut off 2 x 2 ft at an angle: 120 less 2 sq ft, the wall across it 2 ft times the root of
// two (arithmetic).
func TestAngledCorner(t *testing.T) {
	for corner, wall := range corners {
		f := built(t, rect(12*ft, 10*ft, CutOut{Corner: corner, EastWest: 2 * ft, NorthSouth: 2 * ft, Angled: true}))
		require.InDelta(t, 118, f.Area().SqFt(), 1e-9)
		e, why := f.Wall(wall)
		require.Empty(t, why)
		require.InDelta(t, 24*math.Sqrt2, float64(e.Len())/float64(in), 1e-6)
		require.Equal(t, wall, e.Side)
		slanted, why := f.Wall(Slanted)
		require.Empty(t, why)
		require.Equal(t, e, slanted)
	}
}

// A bay: two flanks of 3 ft at 45 degrees, between them 6 ft, stand 3 ft over the root of two out of a 12 ft wall.
func bay() Plan {
	out := 36 * in * 70711 / 100000
	sill := 72*in + 2*out
	return walk(North, 10*ft, East, (12*ft-sill)/2, NorthEast, 3*ft, East, 6*ft, SouthEast, 3*ft, East, (12*ft-sill)/2, South, 10*ft, West, 12*ft)
}

func TestBay(t *testing.T) {
	f := built(t, bay())
	side := 3 / math.Sqrt2
	require.InDelta(t, 120+side*(6+side), f.Area().SqFt(), 1e-3)
	require.Empty(t, f.Notes, "what 45 degrees leaves over is no miss")
	for _, side := range []Side{NorthEast, NorthWest} {
		e, why := f.Wall(side)
		require.Empty(t, why)
		require.InDelta(t, 36, float64(e.Len())/float64(in), 1e-3)
	}
	_, why := f.Wall(Slanted)
	require.Equal(t, "there are several slanted walls: name one, north-east, north-west", why)
}

// A walk goes the same either way round, whatever way its walls slant.
func TestSlantedWalkBackwards(t *testing.T) {
	p := bay()
	f := built(t, p)
	var back Plan
	for i := len(p.Walk) - 1; i >= 0; i-- {
		back.Walk = append(back.Walk, Wall{To: p.Walk[i].To.Opposite(), Len: p.Walk[i].Len})
	}
	g := built(t, back)
	require.Zero(t, f.Area().Cmp(g.Area()))
	for _, side := range []Side{NorthEast, NorthWest, South} {
		e, _ := f.Wall(side)
		h, why := g.Wall(side)
		require.Empty(t, why)
		require.Equal(t, e.Len(), h.Len())
	}
}

// A wall told by its two ways is exact: a 3-4-5 triangle of feet is 6 sq ft.
func TestRiseAndRun(t *testing.T) {
	f := built(t, Plan{Walk: []Wall{{To: East, Len: 4 * ft}, {To: NorthWest, Len: 4 * ft, Across: 3 * ft}, {To: South, Len: 3 * ft}}})
	require.InDelta(t, 6, f.Area().SqFt(), 1e-12)
	e, why := f.Wall(NorthEast)
	require.Empty(t, why)
	require.Equal(t, 5*ft, e.Len())
}

func TestSlantedWalkMiss(t *testing.T) {
	p := bay()
	p.Walk[0].Len -= 5 * in
	_, broken := Build(p)
	require.Equal(t, []Broken{{"they miss closing by 5 in going north", "walls"}}, broken)
	p.Walk[0].Len += 5*in - in/2
	f := built(t, p)
	require.Equal(t, []string{"walls missed closing by 1/2 in going north; spread over the walls"}, f.Notes)
	e, _ := f.Wall(NorthEast)
	require.Equal(t, abs(e.B.X-e.A.X), abs(e.B.Y-e.A.Y), "the flank stays at 45 degrees")
}

func abs(l length.Length) length.Length { return max(l, -l) }

// A doorway and a closet in a slanted wall stand square to it: areas by arithmetic, the wall's ends by either side they face.
func TestOpeningsInSlantedWall(t *testing.T) {
	p := rect(12*ft, 10*ft, CutOut{Corner: "NE", EastWest: 5 * ft, NorthSouth: 5 * ft, Angled: true})
	base := 120 - 12.5
	p.Doorways = []Doorway{{Wall: NorthEast, Wide: 2 * ft, From: ft, FromEnd: North, Into: 3 * in}}
	require.InDelta(t, base+2*0.25, built(t, p).Area().SqFt(), 1e-6)
	p.Closets = []Closet{{Wall: Slanted, Wide: 3 * ft, Deep: 2 * ft, From: ft / 2, FromEnd: SouthEast}}
	f := built(t, p)
	require.InDelta(t, base+2*0.25+6, f.Area().SqFt(), 1e-6)
	require.Contains(t, wallNames(f), "closet back")
	p.WallGaps = map[Side]length.Length{NorthEast: 0, South: in}
	for _, e := range built(t, p).Edges {
		if e.Wall == "north-east" {
			require.Zero(t, e.Gap)
		}
	}
}

func TestSlantedRefused(t *testing.T) {
	cut := CutOut{Corner: "NE", EastWest: 5 * ft, NorthSouth: 5 * ft, Angled: true}
	for want, p := range map[string]func(*Plan){
		"doorway: there is no north-west wall":                           func(p *Plan) { p.Doorways = []Doorway{{Wall: NorthWest, Wide: 2 * ft}} },
		"doorway: the north-east wall has no south-west corner":          func(p *Plan) { p.Doorways = []Doorway{{Wall: NorthEast, Wide: 2 * ft, FromEnd: SouthWest}} },
		"doorway: it lies off the slanted wall, which is 84 7/8 in long": func(p *Plan) { p.Doorways = []Doorway{{Wall: Slanted, Wide: 8 * ft}} },
		"closet: there is no slanted wall":                               func(p *Plan) { p.Rect.CutOuts = nil; p.Closets = []Closet{{Wall: Slanted, Wide: ft, Deep: ft}} },
		"wall 2: a wall that runs east goes one way alone": func(p *Plan) {
			p.Rect, p.Walk = nil, []Wall{{To: North, Len: ft}, {To: East, Len: ft, Across: ft}, {To: South, Len: ft}, {To: West, Len: ft}}
		},
		"walls 1 and 2: the one runs back along the other": func(p *Plan) {
			p.Rect, p.Walk = nil, []Wall{{To: NorthEast, Len: ft}, {To: SouthWest, Len: ft}, {To: South, Len: ft}, {To: West, Len: ft}}
		},
	} {
		plan := rect(12*ft, 10*ft, cut)
		p(&plan)
		_, broken := Build(plan)
		require.NotEmpty(t, broken, want)
		require.Equal(t, want, broken[0].String())
	}
}
