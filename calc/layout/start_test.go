package layout

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

func floorOf(t *testing.T, p room.Plan) Request {
	f, broken := room.Build(p)
	require.Empty(t, broken)
	return Request{Floor: f, Plank: plank.Plank{Width: 61 * in / 8, Length: 95 * in / 2}, Rules: usual}
}

// A room 3 in out of square over its length: the west wall leans.
func leaning() room.Plan {
	d := geom.Distance(geom.Point{}, geom.Point{X: 120*in - 3*in, Y: 160 * in})
	return room.Plan{Quad: &room.Quad{North: 120 * in, South: 120 * in, West: 160 * in, East: 160 * in, NWSE: d}}
}

func angled() room.Plan {
	return room.Plan{Rect: &room.Rect{EastWest: 168 * in, NorthSouth: 144 * in, CutOuts: []room.CutOut{{Corner: "NE", EastWest: 48 * in, NorthSouth: 48 * in, Angled: true}}}}
}

// Rows along a wall begin at it, or at the wall across; where none lies there, in the corner.
func TestStartsAlongAWall(t *testing.T) {
	for _, c := range []struct {
		plan        room.Plan
		along       Direction
		wall        room.Side
		start, from string
	}{
		{angled(), Along(room.NorthEast), "", "north-east wall", "south-east"},
		{angled(), Along(room.Slanted), room.SouthWest, "south-west corner", "north-west"},
		{angled(), "", room.Slanted, "north-east wall", "south-east"},
		{angled(), "", "", "south wall", "west"},
		{angled(), "", room.West, "west wall", "north"},
		{angled(), Along(room.West), "", "west wall", "north"},
		{angled(), Diagonal, "", "south-east corner", "south-west"},
		{angled(), Diagonal, room.North, "north-west corner", "north-east"},
		{leaning(), "", "", "east wall", "south"},
		{leaning(), Along(room.West), room.East, "east wall", "south"},
		{leaning(), "", room.West, "west wall", "north"},
	} {
		r := floorOf(t, c.plan)
		r.Along, r.StartWall = c.along, c.wall
		l, err := Lay(r)
		require.NoError(t, err)
		require.Equal(t, c.start, l.Start(), "%s, %s", c.along, c.wall)
		require.Equal(t, c.from, l.From, "%s, %s", c.along, c.wall)
	}
}

// Along its own wall the first row of a leaning room is no wedge: every piece of it is whole in width. Laid north-south, it is.
func TestFirstRowAlongALeaningWall(t *testing.T) {
	for along, wedges := range map[Direction]bool{Along(room.West): false, NorthSouth: true} {
		r := floorOf(t, leaning())
		r.Along, r.StartWall, r.FirstRow = along, room.West, r.Plank.Width
		l, err := Lay(r)
		require.NoError(t, err)
		tapers := 0
		for _, p := range l.Rows[0].pieces() {
			for _, c := range p.Cuts {
				if c.What == "taper" {
					tapers++
				}
			}
		}
		require.Equal(t, wedges, tapers > 0, along)
	}
}

// The ways that can't be are refused with what would work.
func TestWaysRefused(t *testing.T) {
	for want, c := range map[string]Request{
		"rows that run east-west start at the south wall or the north wall, not at the west one":                    {Along: EastWest, StartWall: room.West},
		"rows along the north-east wall start at the north-east wall or the south-west corner, not at the east one": {Along: Along(room.NorthEast), StartWall: room.East},
		"rows along the north-west wall: there is no north-west wall":                                               {Along: Along(room.NorthWest)},
		`"up" is no direction of rows`: {Along: "up"},
	} {
		r := floorOf(t, angled())
		r.Along, r.StartWall = c.Along, c.StartWall
		_, err := Lay(r)
		require.EqualError(t, err, want)
		require.EqualError(t, Check(r.Floor, c.Along, c.StartWall), want)
	}
}

// Square to a wall at 45 degrees a 14 x 12 ft floor with that corner cut off 4 ft reaches (14 + 12 - 4) ft over the root of
// two, 15 ft 6 11/16 in: by arithmetic.
func TestAcross(t *testing.T) {
	r := floorOf(t, angled())
	got, err := Across(r.Floor, Along(room.NorthEast))
	require.NoError(t, err)
	require.InDelta(t, 22*12/1.4142135623730951, float64(got)/float64(length.Inch), 1e-6)
}

// The wall across leans: the first row is ripped so that the last does not run out along it, but is at its narrow end as wide
// as a row must be. Without a choice that is named.
func TestLastRowAtALeaningWall(t *testing.T) {
	r := floorOf(t, room.Plan{Quad: &room.Quad{North: 148 * in, East: 110 * in, South: 145 * in, West: 112 * in, NWSE: 183*in + in/2}})
	r.Along = Along(room.West)
	l, err := Lay(r)
	require.NoError(t, err)
	require.Empty(t, l.Broken)
	last := l.Rows[len(l.Rows)-1]
	narrow := last.Width
	for _, p := range last.pieces() {
		for _, c := range p.Cuts {
			if c.What == "taper" {
				narrow = min(narrow, c.Near, c.Far)
			}
		}
	}
	require.Less(t, narrow, last.Width)
	require.GreaterOrEqual(t, narrow, r.Rules.LeastRow)
	r.FirstRow = r.Plank.Width
	l, err = Lay(r)
	require.NoError(t, err)
	require.Equal(t, []Broken{{"narrow-row", "east", "a row runs out along it, since it leans: the first row is as told"}}, l.Broken)
}

// In front of a doorway in a slanted wall the pieces that end at its line are held there, and no others near it.
func TestHeldAtASlantedDoor(t *testing.T) {
	p := angled()
	p.Doorways = []room.Doorway{{Wall: room.NorthEast, Wide: 32 * in, Into: 2 * in}}
	r := floorOf(t, p)
	r.Along, r.StartWall = EastWest, room.South
	l, err := Lay(r)
	require.NoError(t, err)
	door := r.Floor.Doors()[0]
	held := 0
	for _, row := range l.Rows {
		for _, p := range row.pieces() {
			near := false
			for i, a := range p.Shape[0] {
				b := p.Shape[0][(i+1)%len(p.Shape[0])]
				near = near || min(fromSegment(a, door.A, door.B), fromSegment(b, door.A, door.B), fromSegment(door.A, a, b), fromSegment(door.B, a, b)) <= float64(door.Gap+hair)
			}
			require.Equal(t, near, p.Trapped != "", "row %d piece %d", p.Row, p.N)
			if near {
				held++
			}
		}
	}
	require.InDelta(t, 4, held, 1) // 32 in at 45 degrees is 22 5/8 in across, three rows, and one more where it begins within a row
}
