package room

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

// A ring of rooms round a core: a hall off each end of the main room's east wall, a second room off the end of the one, and
// the end of the other opened into that. The core is 8 ft and two walls of 4 1/2 in east-west, and 20 ft less two halls of 4 ft
// and 1 ft at each end, 10 ft, north-south; beside the four openings it reaches 6 in into the halls' ends.
func loop() Plan {
	p := rect(10*ft, 20*ft)
	p.Closets = []Closet{
		{What: "hall", Wall: East, Wide: 4 * ft, Deep: 8 * ft, From: ft, FromEnd: South, Opening: 3 * ft},
		{What: "annex", Off: "hall", Wall: East, Wide: 20 * ft, Deep: 9 * ft, Opening: 3 * ft, OpeningFrom: ft + ft/2},
		{What: "hall", Wall: East, Wide: 4 * ft, Deep: 8 * ft, From: ft, FromEnd: North, Opening: 3 * ft},
	}
	p.Openings = []Opening{{Off: "hall", Wall: East, Wide: 3 * ft, To: "annex"}}
	return p
}

func TestLoop(t *testing.T) {
	f := built(t, loop())
	require.Len(t, f.Region, 2, "the floor has a hole in its middle")
	wall := 4.5 / 12
	require.InDelta(t, 10*20+2*4*8+20*9+4*3*wall, f.Area().SqFt(), 1e-6)
	core := f.Region[1:]
	require.InDelta(t, (8+2*wall)*10+4*0.5*wall, -core.Area().SqFt(), 1e-6)
	require.Contains(t, f.Notes, "opening: the wall comes out 4 1/2 in thick")
	var out length.Length
	for _, e := range f.Outline() {
		out += e.Len()
	}
	require.Equal(t, f.Perimeter(), out, "the core's walls count as the rooms' do")
}

// Posts stand in the ring, but not in the core.
func TestFixturesInLoop(t *testing.T) {
	p := loop()
	p.Fixtures = []Fixture{{What: "post", Wide: 4 * in, FromX: 3 * ft, SideX: West, FromY: 10 * ft, SideY: South}}
	f := built(t, p)
	require.Len(t, f.Region, 3)
	p.Fixtures[0].FromX = 14 * ft
	_, broken := Build(p)
	require.Equal(t, []Broken{{"it lies outside the floor, or partly so", "post"}}, broken)
	p.Fixtures[0].FromX, p.Fixtures[0].In = ft, "annex"
	built(t, p)
}

// A door into the core is a door in a wall of the ring.
func TestDoorIntoTheCore(t *testing.T) {
	p := loop()
	p.Doorways = []Doorway{{Wall: East, Wide: 30 * in, From: 9 * ft, FromEnd: South}}
	f := built(t, p)
	require.Len(t, f.Doors(), 1)
	require.NotZero(t, f.Edges[len(f.Region[0])].Wall)
	under := 0
	for _, e := range f.Edges {
		if e.Under > 0 {
			under++
		}
	}
	require.Equal(t, 2, under)
}

// Places that disagree beyond the tape's error are refused with the miss; within it the wall takes it up.
func TestLoopMiss(t *testing.T) {
	p := loop()
	p.Closets[2].Deep -= 3 * in
	_, broken := Build(p)
	require.Equal(t, []Broken{{"its two walls come 7 1/2 in apart, where a wall is taken as 4 1/2 in thick: the rooms miss each other by 3 in going east", "opening"}}, broken)
	p.Closets[2].Deep += 3*in - in/4
	require.Contains(t, built(t, p).Notes, "opening: the wall comes out 4 3/4 in thick")
	p.Closets[2].Deep += in/4 + 6*in
	_, broken = Build(p)
	require.Equal(t, "its two walls come -1 1/2 in apart, where a wall is taken as 4 1/2 in thick: the rooms miss each other by 6 in going west", broken[0].Rule)
}

// The opening's place in the other wall, where told too, agrees or is refused.
func TestLoopPlaceInBothWalls(t *testing.T) {
	p := loop()
	p.Openings[0].From, p.Openings[0].FromEnd = ft/2, North
	p.Openings[0].ToFrom, p.Openings[0].ToEnd = ft+ft/2, North
	built(t, p)
	p.Openings[0].ToFrom += 4 * in
	_, broken := Build(p)
	require.Equal(t, []Broken{{"its places in the two walls miss each other by 4 in", "opening"}}, broken)
	p.Openings[0].ToEnd = East
	_, broken = Build(p)
	require.Equal(t, []Broken{{"the wall of the annex has no east corner", "opening"}}, broken)
}

func TestLoopRefused(t *testing.T) {
	for want, o := range map[string]Opening{
		"opening: there is no closet for it: say that one first":  {Wall: East, Wide: ft, To: "closet"},
		"opening: there is no attic for it: say that one first":   {Off: "attic", Wall: East, Wide: ft},
		"opening: no wall of the annex faces it":                  {Wall: North, Wide: ft, To: "annex"},
		"opening: it lies off the east wall, which is 48 in long": {Off: "hall", Wall: East, Wide: 5 * ft, To: "annex"},
		"opening: its two walls come 8 ft 9 in apart, where a wall is taken as 4 1/2 in thick: the rooms miss each other by 8 ft 4 1/2 in going east": {Wall: East, Wide: ft, To: "annex"},
	} {
		p := loop()
		p.Openings = []Opening{o}
		_, broken := Build(p)
		require.NotEmpty(t, broken, want)
		require.Equal(t, want, broken[0].String())
	}
	p := loop()
	p.Openings = append(p.Openings, p.Openings[0])
	_, broken := Build(p)
	require.NotEmpty(t, broken, "one opening over another")
}

// Rings made up keep the laws, and their areas add up.
func TestGeneratedLoops(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 9))
	pick := func(lo, hi int64) length.Length { return length.Length(lo+r.Int64N(hi-lo)) * in / 8 }
	n := 0
	for range 500 {
		p := loop()
		deep := pick(500, 1200)
		p.Closets[0].Deep, p.Closets[2].Deep = deep, deep+pick(-5, 6)
		p.Closets[1].Deep, p.Closets[1].OpeningFrom = pick(300, 900), pick(140, 149)
		p.Openings[0].Wide = pick(200, 300)
		f, broken := Build(p)
		if broken != nil {
			require.NotEmpty(t, broken[0].Where)
			continue
		}
		n++
		checkFloor(t, f)
		require.Len(t, f.Region, 2)
	}
	require.Greater(t, n, 300)
}
