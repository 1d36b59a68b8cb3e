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

// class is a class of floors, and how near the bound its layouts come: of a hundred floors so many meet it at least, and
// the planks over it are so many of a thousand at most.
type class struct {
	name      string
	along     Direction
	add       func(*rand.Rand, *room.Plan)
	met, over int
}

var classes = []class{
	{"rectangle", "", nil, 95, 2},
	{"L-shape", "", withCutOut, 80, 5},
	{"closet and doorways", "", withOpenings, 70, 8},
	{"post and hearth", "", withFixtures, 72, 8},
	{"out of square", "", outOfSquare, 65, 8},
	{"out of square, closet and doorways", "", func(rnd *rand.Rand, p *room.Plan) { outOfSquare(rnd, p); withOpenings(rnd, p) }, 45, 18},
	{"diagonal", Diagonal, nil, 70, 6},
	{"diagonal, L-shape", Diagonal, withCutOut, 60, 8},
}

// size is a length between two numbers of inches, in sixteenths.
func size(rnd *rand.Rand, least, most int) length.Length {
	return length.Length(16*least+rnd.Intn(16*(most-least))) * in / 16
}

func anyWall(rnd *rand.Rand) room.Side {
	return []room.Side{room.North, room.East, room.South, room.West}[rnd.Intn(4)]
}

func withCutOut(rnd *rand.Rand, p *room.Plan) {
	corner := []string{"NE", "SE", "SW", "NW"}[rnd.Intn(4)]
	p.Rect.CutOuts = []room.CutOut{{Corner: corner, EastWest: size(rnd, 12, 60), NorthSouth: size(rnd, 12, 60)}}
}

func withOpenings(rnd *rand.Rand, p *room.Plan) {
	p.Closets = []room.Closet{{Wall: anyWall(rnd), Wide: size(rnd, 30, 60), Deep: size(rnd, 20, 30)}}
	for range 2 {
		p.Doorways = append(p.Doorways, room.Doorway{Wall: anyWall(rnd), Wide: size(rnd, 28, 36), Into: size(rnd, 0, 4)})
	}
}

func withFixtures(rnd *rand.Rand, p *room.Plan) {
	p.Fixtures = []room.Fixture{
		{What: "post", Wide: size(rnd, 3, 8), Deep: size(rnd, 3, 8), FromX: size(rnd, 20, 60), FromY: size(rnd, 30, 60), SideX: room.West, SideY: room.South},
		{What: "hearth", Wide: size(rnd, 30, 50), Deep: size(rnd, 12, 24), FromX: size(rnd, 20, 40), SideX: room.West, SideY: room.North},
	}
}

func outOfSquare(rnd *rand.Rand, p *room.Plan) {
	w, h := p.Rect.EastWest, p.Rect.NorthSouth
	p.Rect = nil
	p.Quad = &room.Quad{North: w + size(rnd, 0, 4), East: h + size(rnd, 0, 3), South: w, West: h, NWSE: geom.Distance(geom.Point{}, geom.Point{X: w, Y: h})}
}

// draw makes up a bedroom of a class.
func (c class) draw(rnd *rand.Rand) Request {
	for {
		p := room.Plan{Rect: &room.Rect{EastWest: size(rnd, 96, 200), NorthSouth: size(rnd, 96, 200)}}
		if c.add != nil {
			c.add(rnd, &p)
		}
		f, broken := room.Build(p)
		if len(broken) > 0 {
			continue
		}
		return Request{
			Floor: f, Along: c.along, Mark: in / 16, Rules: usual,
			Plank: plank.Plank{Width: length.Length(40+rnd.Intn(30)) * in / 8, Length: length.Length(288+rnd.Intn(288)) * in / 8},
		}
	}
}

// How near the bound each class of floors comes: a table with -v.
func TestBoundByClass(t *testing.T) {
	t.Parallel()
	const floors = 60
	t.Logf("%-36s %5s %7s %7s %6s", "floors", "met", "planks", "bound", "over")
	for _, c := range classes {
		rnd := rand.New(rand.NewSource(31))
		met, planks, bound := 0, 0, 0
		for range floors {
			r := c.draw(rnd)
			l, err := Lay(r)
			require.NoError(t, err, c.name)
			planks, bound = planks+l.Planks, bound+l.Bound
			if l.Planks == l.Bound {
				met++
			}
		}
		t.Logf("%-36s %3d %% %7d %7d %4.1f %%", c.name, 100*met/floors, planks, bound, 100*float64(planks-bound)/float64(bound))
		require.GreaterOrEqual(t, 100*met, c.met*floors, c.name)
		require.LessOrEqual(t, 1000*(planks-bound), c.over*bound, c.name)
	}
}
