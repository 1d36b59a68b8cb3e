package calc

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

var goodsNames = []term.Name{
	term.Room, term.FloorArea, term.RollWidth, term.RollLength, term.Overlap, term.Piecing, term.TrimLength, term.Perimeter, term.Walls, term.Doors,
	term.StickLength, term.TrimThickness, term.TrimSpare, term.Kerf, term.Gap, term.Run, term.HumiditySwing, term.Track, term.Spacing, term.EndDistance,
	term.ScrewDiameter, term.Embedment, term.FixtureThickness, term.Bead, term.BeadShape, term.SealantLoss, term.SideA, term.SideB, term.Diagonal,
	term.WidthHere, term.WidthThere, term.Length, term.Corner, term.Boxes, term.BoxCoverage, term.PlanksPerBox, term.PlankWidth, term.PlankLength,
	term.PlankThickness, term.Density, term.Payload, term.Rate, term.Crew, term.Price, term.RollPrice, term.StickPrice, term.ProfileLength,
}

func anyGoods(t *rapid.T) term.Value {
	n := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-2, 300), rapid.Int64Range(0, 20_000_000_000)).Draw(t, "n")
	switch rapid.IntRange(0, 4).Draw(t, "goods") {
	case 0:
		return term.Money{Minor: n, Currency: rapid.SampledFrom([]string{"", "USD", "EUR"}).Draw(t, "currency")}
	case 1:
		return term.Mass(n)
	case 2:
		return term.Degrees(n)
	case 3:
		return term.Word(rapid.SampledFrom([]string{"whole", "pieced", "round", "fillet", "joint"}).Draw(t, "shape"))
	}
	return anyValue(t)
}

// fitting gives a value of the type that the name takes.
func fitting(t *rapid.T, n term.Name) term.Value {
	num := rapid.Int64Range(1, 20).Draw(t, "num")
	size := in(24) + length.Length(num)*in(12) + length.Millimetre/7
	switch n {
	case term.Gap, term.TrimThickness, term.ScrewDiameter, term.Embedment, term.FixtureThickness, term.Kerf, term.Overlap, term.PlankThickness:
		return term.Len(length.Length(num) * in(1) / 32)
	case term.Spacing, term.PlankWidth, term.EndDistance:
		return term.Len(in(3) + length.Length(num)*in(1)/4)
	case term.Bead:
		return term.Lens{length.Length(num) * in(1) / 16, in(.25)}
	case term.Room, term.Walls:
		return term.Lens{size, size / 2}
	case term.FloorArea, term.BoxCoverage, term.Rate:
		return term.Area{Area: size.Times(size)}
	case term.Boxes, term.PlanksPerBox, term.Crew, term.Doors:
		return term.Count(num)
	case term.TrimSpare, term.SealantLoss, term.HumiditySwing:
		return term.Percent(num * 1000)
	case term.Price, term.RollPrice, term.StickPrice:
		return term.Money{Minor: num * 333, Currency: "USD"}
	case term.Density:
		return term.Number{Rat: big.NewRat(300+num*50, 1)}
	case term.Payload:
		return term.Mass(num * 30)
	case term.Corner:
		return term.Degrees(num * 9)
	case term.Piecing, term.BeadShape:
		return term.Word(rapid.SampledFrom([]string{"whole", "pieced", "round", "fillet"}).Draw(t, "word"))
	}
	return term.Len(size)
}

// anyJob is a job that knows a plank and a floor, of any size.
func anyJob(t *rapid.T) *Job {
	j := &Job{Tape: length.Tape{System: rapid.SampledFrom([]length.System{length.Imperial, length.Metric}).Draw(t, "system")}}
	size := func(name string) length.Length {
		return length.Length(rapid.Int64Range(0, 30_000).Draw(t, name)) * length.Millimetre
	}
	if rapid.Bool().Draw(t, "planks") {
		j.Plank = plank.Plank{Width: mm(192), Length: mm(1285), Thickness: mm(8), PerBox: rapid.IntRange(0, 12).Draw(t, "box")}
		j.Underlay = plank.Roll{Width: size("roll width"), Length: size("roll"), Overlap: size("lap") / 100}
	}
	if rapid.Bool().Draw(t, "room") {
		j.Plan.Rect = &room.Rect{EastWest: size("ew"), NorthSouth: size("ns")}
		j.Plan.Doorways = []room.Doorway{{Wall: room.South, Wide: size("door")}}
		j.Plan.Closets = []room.Closet{{Wall: room.North, Wide: size("wide"), Deep: size("deep")}}
	}
	return j
}

// Whatever is said of whatever job, an answer has values and working, and anything else has its reason: nothing panics.
func TestAnyInputsOfGoods(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := Question{Kind: rapid.SampledFrom(goods).Draw(t, "kind")}
		for _, n := range goodsNames {
			if !rapid.Bool().Draw(t, "said") {
				continue
			}
			v := fitting(t, n)
			if rapid.IntRange(0, 99).Draw(t, "odd") == 0 {
				v = anyGoods(t)
			}
			q.Given = append(q.Given, term.Given{Name: n, Value: v, From: term.Message})
		}
		r, err := Answer(anyJob(t), q)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		require.NotEmpty(t, r.Values)
		require.NotEmpty(t, r.Working)
		for _, line := range r.Working {
			require.NotContains(t, line, "%!")
		}
	})
}
