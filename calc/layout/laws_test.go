package layout

import (
	"fmt"
	"math/big"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

// anyPlan makes up a floor: a rectangle with corners cut out or off, an out-of-square room or one with a bay, with closets, doorways, posts and
// pipes where they fit.
func anyPlan(rnd *rand.Rand) room.Plan {
	size := func(least, most int) length.Length {
		return length.Length(16*least+rnd.Intn(16*(most-least))) * in / 16
	}
	w, h := size(60, 200), size(60, 200)
	p := room.Plan{Rect: &room.Rect{EastWest: w, NorthSouth: h}, Metric: rnd.Intn(2) == 0}
	switch rnd.Intn(5) {
	case 0:
		n, e := w+size(0, 4), h+size(0, 4)
		p = room.Plan{Quad: &room.Quad{North: n, East: e, South: w, West: h, NWSE: geom.Distance(geom.Point{}, geom.Point{X: w, Y: h})}}
	case 1:
		out, sill := size(8, 20), size(10, 20)
		p = room.Plan{Walk: []room.Wall{{To: room.North, Len: h}, {To: room.East, Len: sill}, {To: room.NorthEast, Len: out, Across: out}, {To: room.East, Len: w - 2*(out+sill)},
			{To: room.SouthEast, Len: out, Across: out}, {To: room.East, Len: sill}, {To: room.South, Len: h}, {To: room.West, Len: w}}}
	default:
		for _, c := range []string{"NE", "SE", "SW", "NW"} {
			if rnd.Intn(4) == 0 {
				p.Rect.CutOuts = append(p.Rect.CutOuts, room.CutOut{Corner: c, EastWest: size(4, 29), NorthSouth: size(4, 29), Angled: rnd.Intn(2) == 0})
			}
		}
	}
	sides := []room.Side{room.North, room.East, room.South, room.West}
	end := map[room.Side]room.Side{room.North: room.West, room.South: room.East, room.East: room.North, room.West: room.South}
	if s := sides[rnd.Intn(4)]; rnd.Intn(3) == 0 {
		p.Doorways = append(p.Doorways, room.Doorway{Wall: s, Wide: size(24, 36), From: size(1, 20), FromEnd: end[s], Into: size(0, 5)})
	}
	if s := sides[rnd.Intn(4)]; rnd.Intn(4) == 0 {
		p.Closets = append(p.Closets, room.Closet{Wall: s, Wide: size(30, 50), Deep: size(20, 30), From: size(2, 20), FromEnd: end[s]})
	}
	if rnd.Intn(4) == 0 {
		p.Fixtures = append(p.Fixtures, room.Fixture{What: "post", Wide: size(3, 10), Deep: size(3, 10), FromX: size(12, 50), FromY: size(12, 50), SideX: room.West, SideY: room.South})
	}
	return p
}

// anyWay is a direction of rows: told or not, and in two of five along some wall, however it slants.
func anyWay(rnd *rand.Rand, f *room.Floor) Direction {
	if rnd.Intn(5) < 2 {
		return Along(f.Main[rnd.Intn(len(f.Main))].Side)
	}
	return []Direction{"", EastWest, NorthSouth, Diagonal}[rnd.Intn(4)]
}

func anyRequest(rnd *rand.Rand) Request {
	for {
		f, broken := room.Build(anyPlan(rnd))
		if len(broken) > 0 {
			continue
		}
		r := Request{
			Floor: f,
			Plank: plank.Plank{Width: length.Length(40+rnd.Intn(50)) * in / 8, Length: length.Length(240+rnd.Intn(320)) * in / 8},
			Along: anyWay(rnd, f),
			Rules: Rules{LeastRow: 2 * in, LeastEnd: 8 * in, LeastStagger: length.Length(6+rnd.Intn(7)) * in, Kerf: in / 8, Lip: in / 8},
		}
		if rnd.Intn(4) == 0 {
			r.FirstRow = length.Length(1+rnd.Intn(5)) * in
		}
		return r
	}
}

// law is a layout held to its laws.
type law struct {
	t    *testing.T
	l    *Layout
	what string
}

func check(t *testing.T, l *Layout, what string) {
	c := law{t, l, what}
	c.covers()
	c.named()
	c.given()
	require.GreaterOrEqual(t, l.Planks, l.Bound, what)
	require.Len(t, l.Stock, l.Planks, what)
}

func (c law) each(f func(row Row, run Run, p Piece)) {
	for _, row := range c.l.Rows {
		for _, run := range row.Runs {
			for _, p := range run.Pieces {
				f(row, run, p)
			}
		}
	}
}

// covers: no piece leaves its rectangle, rectangles of one run follow each other, and the pieces add up to the laying
// area: exactly where walls are square to the rows, to a nanometre along each cut and wall elsewhere.
func (c law) covers() {
	f := c.l.start().frame
	laying := f.floor(c.l.Request.Floor.Laying)
	area := boxOf(laying)
	sum, slack := new(big.Int), int64(0)
	c.each(func(row Row, run Run, p Piece) {
		b := boxOf(turned(p.Shape, f.in))
		require.GreaterOrEqual(c.t, b.left, p.Left+area.left-2, c.what)
		require.LessOrEqual(c.t, b.right, p.Right+area.left+2, c.what)
		require.GreaterOrEqual(c.t, b.near, row.Near+area.near-2, c.what)
		require.LessOrEqual(c.t, b.far, row.Near+row.Width+area.near+2, c.what)
		require.LessOrEqual(c.t, p.Right-p.Left, c.l.Request.Plank.Length, c.what)
		require.Positive(c.t, p.Right-p.Left, c.what)
		sum.Add(sum, p.Shape.Area().Nm2())
		slack += int64(p.Shape.Perimeter())
	})
	for _, row := range c.l.Rows {
		require.LessOrEqual(c.t, row.Width, c.l.Request.Plank.Width, c.what)
		for _, run := range row.Runs {
			at := run.Left
			for _, p := range run.Pieces {
				require.Equal(c.t, at, p.Left, c.what)
				at = p.Right
			}
			require.Equal(c.t, run.Right, at, c.what)
		}
	}
	if wall, ok := c.l.Along.Wall(); ok {
		e, _ := c.l.Request.Floor.Wall(wall)
		require.LessOrEqual(c.t, abs(f.in(e.A).Y-f.in(e.B).Y), length.Nanometre, "%s: the rows lie along their wall", c.what)
	}
	off := sum.Sub(sum, c.l.Request.Floor.Laying.Area().Nm2())
	if plain(laying) && !f.slanted() {
		require.Zero(c.t, off.Sign(), "%s: off by %s", c.what, off)
		return
	}
	require.LessOrEqual(c.t, off.CmpAbs(big.NewInt(2*slack)), 0, "%s: off by %s of %d", c.what, off, slack)
}

func (c law) names(rule, where string) bool {
	return slices.ContainsFunc(c.l.Broken, func(b Broken) bool { return b.Rule == rule && b.Where == where && b.Why != "" })
}

// named: every rule is kept, or named with its place.
func (c law) named() {
	rules, rows := c.l.Request.Rules, c.l.Rows
	for i, row := range rows {
		where := fmt.Sprintf("row %d", row.N)
		if (i == 0 || i == len(rows)-1) && row.Width < rules.LeastRow {
			require.True(c.t, c.names("narrow-row", where), c.what)
		}
		for _, run := range row.Runs {
			first, last := run.Pieces[0], run.Pieces[len(run.Pieces)-1]
			if len(run.Pieces) > 1 && min(first.Right-first.Left, last.Right-last.Left) < rules.LeastEnd {
				require.True(c.t, c.names("short-end", where), c.what)
			}
			if i > 0 && c.close(run, rows[i-1]) {
				require.True(c.t, c.names("close-joints", where), c.what)
			}
		}
	}
}

// close says whether a joint of the run lies too near one of the row before, both on a stretch where the runs meet.
func (c law) close(run Run, before Row) bool {
	for _, other := range before.Runs {
		if other.Right <= run.Left || run.Right <= other.Left || !c.meet(run, other) {
			continue
		}
		for _, p := range run.Pieces[1:] {
			for _, q := range other.Pieces[1:] {
				if abs(p.Left-q.Left) < c.l.Request.Rules.LeastStagger {
					return true
				}
			}
		}
	}
	return false
}

// meet says whether two runs touch: their shapes share a point of the line between their rows.
func (c law) meet(run, other Run) bool {
	f := c.l.start().frame
	far := func(r Run) (near, far length.Length) {
		var all geom.Region
		for _, p := range r.Pieces {
			all = append(all, turned(p.Shape, f.in)...)
		}
		b := boxOf(all)
		return b.near, b.far
	}
	near, _ := far(run)
	_, end := far(other)
	return near <= end
}

// given: every plank can give its pieces. Lengths with a cut between two fit the plank; no two need the same end's lock;
// a piece that lies beside another's length is a strip ripped off it, of the other long edge and narrow enough.
func (c law) given() {
	pieces := map[Ref]Piece{}
	ends := map[Ref]lock{}
	c.each(func(_ Row, run Run, p Piece) {
		ref := Ref{p.Row, p.N}
		pieces[ref] = p
		if p.Right < run.Right {
			ends[ref] |= rightEnd
		}
		if p.Left > run.Left {
			ends[ref] |= leftEnd
		}
	})
	kerf, long := c.l.Request.Rules.Kerf, c.l.Request.Plank.Length
	seen := 0
	for i, s := range c.l.Stock {
		var got lock
		sum := -kerf
		for _, ref := range s.Pieces {
			seen++
			require.Equal(c.t, i, pieces[ref].Plank, c.what)
			if c.fromStrip(pieces[ref], s, pieces) {
				continue
			}
			require.Zero(c.t, got&ends[ref], "%s: plank %d", c.what, i)
			got |= ends[ref]
			sum += pieces[ref].Right - pieces[ref].Left + kerf
		}
		require.LessOrEqual(c.t, sum, long, "%s: plank %d", c.what, i)
		for _, left := range s.Left {
			require.LessOrEqual(c.t, left, long-sum, c.what)
		}
	}
	require.Len(c.t, pieces, seen, c.what)
}

// fromStrip says whether a piece can be the strip ripped off another of its plank: one laid before, or a longer one.
func (c law) fromStrip(p Piece, s Stock, pieces map[Ref]Piece) bool {
	f := c.l.start().frame
	wide := func(p Piece) length.Length { b := boxOf(turned(p.Shape, f.in)); return b.far - b.near }
	for _, ref := range s.Pieces {
		o := pieces[ref]
		fits := wide(p)+wide(o)+c.l.Request.Rules.Kerf <= c.l.Request.Plank.Width+2
		shorter := p.Right - p.Left - (o.Right - o.Left)
		if fits && (shorter < 0 || shorter == 0 && o.Row < p.Row) {
			return true
		}
	}
	return false
}

func TestLaws(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewSource(1))
	proven, planks, bound, broken := 0, 0, 0, 0
	const floors = 2000
	for i := range floors {
		r := anyRequest(rnd)
		l, err := Lay(r)
		what := fmt.Sprintf("floor %d: %+v along %s, plank %s x %s", i, r.Floor.Plan, r.Along, r.Plank.Width, r.Plank.Length)
		require.NoError(t, err, what)
		check(t, l, what)
		planks, bound, broken = planks+l.Planks, bound+l.Bound, broken+len(l.Broken)
		if l.Planks == l.Bound {
			proven++
		}
		if i%40 == 0 {
			again, err := Lay(r)
			require.NoError(t, err)
			require.Equal(t, l, again, what)
		}
	}
	t.Logf("bound met on %d of %d floors of every shape and direction, %d planks against %d, %d rules named", proven, floors, planks, bound, broken)
}
