package room

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// A hall off the room, a closet off the hall, a door at the hall's far end, a post in the hall: areas by arithmetic.
func joined() Plan {
	p := rect(12*ft, 10*ft)
	p.Closets = []Closet{
		{What: "hall", Wall: East, Wide: 4 * ft, Deep: 15 * ft, From: 2 * ft, FromEnd: South, Opening: 3 * ft},
		{Off: "hall", Wall: North, Wide: 5 * ft, Deep: 2 * ft, From: 6 * ft, FromEnd: East},
	}
	p.Doorways = []Doorway{{Off: "hall", Wall: East, Wide: 32 * in, Into: 2 * in}}
	p.Fixtures = []Fixture{{What: "post", In: "hall", Wide: 4 * in, Deep: 6 * in, FromX: ft, SideX: East, FromY: ft, SideY: South}}
	return p
}

func TestJoinedRooms(t *testing.T) {
	f := built(t, joined())
	require.InDelta(t, 120+60+3*4.5/12+10+32*2/144.0-24/144.0, f.Area().SqFt(), 1e-9)
	require.Contains(t, wallNames(f), "hall north")
	door := f.Doors()[0]
	require.Equal(t, "hall", door.Room)
	require.Equal(t, 12*ft+9*in/2+15*ft+2*in, door.A.X)
	sw, _ := geom.Region{f.Region[1]}.Box()
	require.Equal(t, geom.Point{X: 26*ft + 9*in/2 - 4*in, Y: 3 * ft}, sw)
}

// A wall's own gap is the main room's, not that of every wall that faces the same way.
func TestWallGapIsTheRoomsOwn(t *testing.T) {
	p := joined()
	p.WallGaps = map[Side]length.Length{South: 0}
	for _, e := range built(t, p).Edges {
		if e.Side == South {
			require.Equal(t, e.Room == "", e.Gap == 0, e.Wall)
		}
	}
}

func TestJoinedRoomsRefused(t *testing.T) {
	p := joined()
	p.Closets[1].Off = "den"
	p.Doorways[0].Wide = 5 * ft
	p.Fixtures[0].In = "porch"
	_, broken := Build(p)
	require.Equal(t, []Broken{
		{"there is no den for it: say that one first", "closet"},
		{"it lies off the east wall, which is 48 in long", "doorway"},
		{"there is no porch for it: say that one first", "post"},
	}, broken)
	p = joined()
	p.Closets = append(p.Closets, Closet{What: "den", Wall: East, Wide: 2 * ft, Deep: 3 * ft, From: ft, FromEnd: North})
	require.Empty(t, second(Build(p)))
	p.Closets[2].Deep = 20 * ft // runs into the closet off the hall
	require.NotEmpty(t, second(Build(p)))
}

func second(_ *Floor, broken []Broken) []Broken { return broken }

// Fixtures flush with each other, with walls and in corners: the floor is what is left, and no wall loses its name.
func TestFlushFixtures(t *testing.T) {
	p := rect(12*ft, 10*ft)
	p.Fixtures = []Fixture{
		{What: "hearth", Wide: 5 * ft, Deep: 2 * ft, SideX: West, SideY: North},
		{What: "fixture", Wide: ft, Deep: ft, FromX: 5 * ft, SideX: West, SideY: North},
		{What: "post", Wide: ft, Deep: ft, FromX: 4 * ft, SideX: West, FromY: 2 * ft, SideY: North},
		{What: "post", Wide: ft, Deep: ft, FromX: 3 * ft, SideX: East, FromY: 3 * ft, SideY: South},
		{What: "post", Wide: ft, Deep: ft, FromX: 4 * ft, SideX: East, FromY: 3*ft + 6*in, SideY: South},
	}
	f := built(t, p)
	require.InDelta(t, 120-10-4, f.Area().SqFt(), 1e-9)
	require.Len(t, f.Region, 2)
	for _, wall := range []string{"north", "west", "south", "east", "hearth", "post 3"} {
		require.Contains(t, wallNames(f), wall)
	}
}

func TestFixturesRefused(t *testing.T) {
	for want, fs := range map[string][]Fixture{
		"it overlaps post": {
			{What: "post", Wide: 4 * in, FromX: 5 * ft, SideX: West, FromY: 5 * ft, SideY: South},
			{What: "hearth", Wide: 5 * ft, Deep: 4 * ft, FromX: 3 * ft, SideX: West, FromY: 3 * ft, SideY: South}},
		"it lies outside the floor, or partly so": {{What: "post", Wide: 4 * in, FromX: -2 * in, SideX: West, FromY: 5 * ft, SideY: South}},
		"they part the floor, or leave none: tell each part as a job of its own": {
			{What: "hearth", Wide: 12 * ft, Deep: ft, SideX: West, FromY: 3 * ft, SideY: South}},
	} {
		p := rect(12*ft, 10*ft)
		p.Fixtures = fs
		_, broken := Build(p)
		require.Len(t, broken, 1)
		require.Equal(t, want, broken[0].Rule)
	}
}

// A walk too long to be a floor, and the longest that may be, crossing itself all over, are refused at once.
func TestCrossingWalksRefusedInTime(t *testing.T) {
	var p Plan
	for i := range mostWalls/2 - 2 {
		p.Walk = append(p.Walk, Wall{To: North, Len: length.Length(1+i%7) * ft}, Wall{To: East, Len: ft}, Wall{To: South, Len: length.Length(1+i%7) * ft}, Wall{To: West, Len: ft / 2})
	}
	p.Walk = p.Walk[:mostWalls-2]
	var at step
	for _, l := range p.Walk {
		at.x, at.y = at.x+l.step().x, at.y+l.step().y
	}
	p.Walk = append(p.Walk, Wall{To: South, Len: at.y}, Wall{To: West, Len: at.x})
	start := time.Now()
	_, broken := Build(p)
	require.NotEmpty(t, broken)
	require.Less(t, time.Since(start), time.Second)
}

// Numbers of any size are answered or refused.
func TestAnySizes(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	sizes := []length.Length{0, 1, -1, in, ft, 10 * ft, 12 * ft, 1000 * length.Metre, math.MaxInt64, math.MinInt64, math.MaxInt64 / 2}
	pick := func() length.Length { return sizes[r.IntN(len(sizes))] }
	sides := append(compass[:], Slanted, "")
	side := func() Side { return sides[r.IntN(len(sides))] }
	leg := func() Wall { return Wall{side(), pick(), sizes[r.IntN(3)]} }
	n := 0
	for range 20000 {
		p := rect(12*ft, 10*ft, CutOut{Corner: "NE", EastWest: pick(), NorthSouth: pick(), Angled: r.IntN(2) == 0})
		switch r.IntN(4) {
		case 0:
			p.Rect.EastWest, p.Rect.NorthSouth = pick(), pick()
		case 1:
			p.Rect, p.Quad = nil, &Quad{pick(), pick(), pick(), pick(), pick(), pick()}
		case 2:
			p.Rect, p.Walk = nil, []Wall{leg(), leg(), leg(), leg()}
		}
		if r.IntN(2) == 0 {
			p.Closets = []Closet{{Wall: side(), Wide: pick(), Deep: pick(), From: pick(), FromEnd: side(), Opening: pick(), OpeningFrom: pick()}}
		}
		if r.IntN(3) == 0 {
			p.Closets = append(p.Closets, Closet{What: "hall", Wall: side(), Wide: pick(), Deep: pick(), Opening: pick(), OpeningFrom: pick()})
			p.Openings = []Opening{{Off: "hall", Wall: side(), Wide: pick(), From: pick(), FromEnd: side(), ToFrom: pick(), ToEnd: side()}}
		}
		if r.IntN(2) == 0 {
			p.Doorways = []Doorway{{Wall: side(), Wide: pick(), From: pick(), FromEnd: side(), Into: pick()}}
		}
		if r.IntN(2) == 0 {
			p.Fixtures = []Fixture{{Wide: pick(), Deep: pick(), Diameter: pick(), FromX: pick(), FromY: pick(), SideX: side(), SideY: side()}}
		}
		if r.IntN(2) == 0 {
			p.Gap, p.WallGaps = pick(), map[Side]length.Length{South: pick()}
		}
		if f, broken := Build(p); broken == nil {
			n++
			checkFloor(t, f)
		}
	}
	require.Positive(t, n)
}

// Generated floors of joined rooms, out of square ones among them, keep the laws; along the axes their areas add up exactly.
func TestGeneratedJoinedFloors(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 18))
	n := 0
	for range 3000 {
		p, want := randomJoined(r)
		f, broken := Build(p)
		if broken != nil {
			require.NotEmpty(t, broken[0].Where)
			continue
		}
		n++
		checkFloor(t, f)
		if p.Quad == nil {
			require.Zero(t, f.Area().Cmp(want), "%+v", p)
		}
		again, _ := Build(p)
		require.Equal(t, f, again)
	}
	require.Greater(t, n, 1500)
}

func randomJoined(r *rand.Rand) (Plan, length.Area) {
	pick := func(lo, hi int64) length.Length { return length.Length(lo+r.Int64N(hi-lo)) * in / 8 }
	sides := []Side{North, East, South, West}
	w, h := pick(900, 2000), pick(900, 2000)
	p, area := rect(w, h), w.Times(h)
	if r.IntN(3) == 0 {
		south, east := w+pick(0, 40), h+pick(0, 40)
		p = Plan{Quad: &Quad{North: w, South: south, West: h, East: east, NWSE: geom.Distance(geom.Point{}, geom.Point{X: south, Y: h}) + pick(-30, 30)}}
	}
	hall := Closet{What: "hall", Wall: sides[r.IntN(4)], Wide: pick(250, 500), Deep: pick(400, 900), Opening: pick(200, 249)}
	thick := 9 * in / 2
	area = area.Plus(hall.Wide.Times(hall.Deep)).Plus(hall.Opening.Times(thick))
	off := slices.DeleteFunc(slices.Clone(sides), func(s Side) bool { return s == opposite[hall.Wall] })
	closet := Closet{Off: "hall", Wall: off[r.IntN(3)], Wide: pick(150, 240), Deep: pick(100, 250)}
	area = area.Plus(closet.Wide.Times(closet.Deep))
	p.Closets = []Closet{hall, closet}
	post := Fixture{What: "post", In: []string{"", "hall"}[r.IntN(2)], Wide: pick(10, 50), Deep: pick(10, 50),
		FromX: pick(0, 190), SideX: West, FromY: pick(0, 190), SideY: North}
	p.Fixtures = []Fixture{post}
	return p, area.Minus(post.Wide.Times(post.Deep))
}

var opposite = map[Side]Side{North: South, South: North, East: West, West: East}

// The floor runs under both jambs of a door, but not where a corner of the room takes a jamb's place.
func TestUnderJambs(t *testing.T) {
	p := rect(12*ft, 10*ft)
	p.Gap = in / 2
	p.Doorways = []Doorway{{Wall: South, Wide: 32 * in, From: 2 * ft, FromEnd: West, Into: 2 * in}}
	laid := func(wide length.Length) length.Area { // the door's own gap is at its track
		return (143 * in).Times(119 * in).Plus(wide.Times(2 * in))
	}
	require.Zero(t, built(t, p).Laying.Area().Cmp(laid(32*in+3*in/4)))
	p.Doorways[0].From = 0
	require.Zero(t, built(t, p).Laying.Area().Cmp(laid(32*in+3*in/8-in/2).Plus((3 * in / 2).Times(in/2))))
}
