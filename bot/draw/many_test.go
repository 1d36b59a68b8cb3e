package draw

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

// maker makes floors up: rooms with corners cut out or out of square, closets, doorways, posts.
type maker struct{ *rand.Rand }

func (m maker) upTo(least, most int) length.Length {
	return length.Length(least+m.IntN(most-least+1)) * in / 2
}

var sides = []room.Side{room.North, room.East, room.South, room.West}

func (m maker) ends(s room.Side) room.Side {
	if s == room.North || s == room.South {
		return room.West
	}
	return room.South
}

func (m maker) plan() room.Plan {
	w, h := m.upTo(130, 290), m.upTo(130, 290)
	if m.IntN(12) == 0 {
		w, h = 2*w, 3*h
	}
	p := room.Plan{Rect: &room.Rect{EastWest: w, NorthSouth: h}, Metric: m.IntN(2) == 0}
	if m.IntN(3) == 0 {
		corner := []string{"NE", "SE", "SW", "NW"}[m.IntN(4)]
		p.Rect.CutOuts = []room.CutOut{{Corner: corner, EastWest: w / 3, NorthSouth: h / 4}}
	}
	if m.IntN(6) == 0 {
		d := length.Length(math.Hypot(float64(w), float64(h)))
		p.Rect, p.Quad = nil, &room.Quad{North: w + m.upTo(0, 6), East: h, South: w, West: h + m.upTo(0, 4), NWSE: d}
	}
	if m.IntN(6) == 0 {
		out := m.upTo(30, 60)
		p.Rect, p.Quad = nil, nil
		p.Walk = []room.Wall{{To: room.North, Len: h}, {To: room.East, Len: w / 4}, {To: room.NorthEast, Len: out, Across: out}, {To: room.East, Len: w - 2*out - 2*(w/4)},
			{To: room.SouthEast, Len: out, Across: out}, {To: room.East, Len: w / 4}, {To: room.South, Len: h}, {To: room.West, Len: w}}
	}
	for range m.IntN(3) {
		s := sides[m.IntN(4)]
		p.Doorways = append(p.Doorways, room.Doorway{Wall: s, Wide: 32 * in, From: m.upTo(10, 60), FromEnd: m.ends(s), Into: 2 * in})
	}
	if m.IntN(3) == 0 {
		s := sides[m.IntN(4)]
		p.Closets = []room.Closet{{Wall: s, Wide: m.upTo(72, 130), Deep: 2 * ft, From: m.upTo(0, 40), FromEnd: m.ends(s), Opening: 30 * in}}
	}
	for range m.IntN(3) {
		p.Fixtures = append(p.Fixtures, room.Fixture{
			What: "post", Wide: m.upTo(8, 40), Deep: m.upTo(8, 20), FromX: m.upTo(60, 120), SideX: room.West, FromY: m.upTo(60, 120), SideY: room.South,
		})
	}
	return p
}

func (m maker) request(f *room.Floor) layout.Request {
	r := layout.Request{Floor: f, Rules: rules, Plank: plank.Plank{Width: m.upTo(11, 20), Length: m.upTo(80, 160)}}
	r.Along = []layout.Direction{layout.EastWest, layout.NorthSouth}[m.IntN(2)]
	walls := [2]room.Side{room.South, room.North}
	if r.Along == layout.NorthSouth {
		walls = [2]room.Side{room.West, room.East}
	}
	r.StartWall, r.FirstRow = walls[m.IntN(2)], r.Plank.Width-m.upTo(0, 4)
	switch m.IntN(6) {
	case 0:
		r.Along, r.StartWall = layout.Diagonal, ""
	case 1:
		r.Along, r.StartWall = layout.Along(f.Main[m.IntN(len(f.Main))].Side), ""
	}
	return r
}

// floors gives n floors made up, the same each time; plans that break a rule of building are passed over.
func floors(t testing.TB, n int) []*layout.Layout {
	m := maker{rand.New(rand.NewPCG(20, 26))}
	var out []*layout.Layout
	for tries := 0; len(out) < n; tries++ {
		require.Less(t, tries, 20*n)
		f, broken := room.Build(m.plan())
		if len(broken) > 0 {
			continue
		}
		if l, err := layout.Lay(m.request(f)); err == nil {
			out = append(out, l)
		}
	}
	return out
}

// On 200 floors no label lies over another, leaves the sheet or is too small, on any drawing of them.
func TestManyFloorsAreLegible(t *testing.T) {
	for i, l := range floors(t, 200) {
		title := alderTitle(l)
		title.Plank = l.Request.Plank
		if i%2 == 1 {
			title.Tape.System = length.Metric
		}
		sound(t, Plan(l, title))
		row := &l.Rows[i%len(l.Rows)]
		s, ok := Row(l, row.N, title)
		require.True(t, ok)
		sound(t, s)
		eachIn(row, func(p *layout.Piece) {
			s, ok := Piece(l, p.Row, p.N, title)
			require.True(t, ok)
			sound(t, s)
		})
		if Crowded(l) || i%20 == 0 {
			for _, s := range RowSheets(l, title) {
				sound(t, s)
			}
		}
		if i%4 == 0 {
			sound(t, Trim(l.Request.Floor, Stick{Length: 8 * ft, Kerf: in / 8}, title))
			sound(t, Underlay(l.Request.Floor, plank.Roll{Width: 4 * ft, Length: 25 * ft}, false, title))
		}
	}
}
