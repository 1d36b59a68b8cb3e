package material

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/term"
)

func in(f float64) length.Length { return length.Length(f * float64(length.Inch)) }
func ft(f float64) length.Length { return length.Length(f * float64(length.Foot)) }
func mm(n int64) length.Length   { return length.Length(n) * length.Millimetre }

func sqft(num, den int64) length.Area {
	return length.Number{Num: num, Den: den}.OfArea(length.SquareFoot)
}
func m2(num, den int64) length.Area {
	return length.Number{Num: num, Den: den}.OfArea(length.SquareMetre)
}

// boxes = area x (1 + waste) / box, rounded up once. 200 sq ft and 10 % is 220 exactly: 10 boxes of 22, 11 of 20, where a
// binary float makes it 220.00000000000003 and one box more.
func TestBoxesByArea(t *testing.T) {
	for _, c := range []struct {
		area  length.Area
		waste term.Percent
		box   length.Area
		want  int64
	}{
		{sqft(180, 1), 5000, sqft(20, 1), 10}, {sqft(180, 1), 10000, sqft(20, 1), 10}, {sqft(200, 1), 10000, sqft(20, 1), 11},
		{sqft(200, 1), 10000, sqft(22, 1), 10}, {sqft(216, 1), 10000, sqft(2369, 100), 11}, {sqft(180, 1), 15000, sqft(1718, 100), 13},
		{sqft(400, 1), 10000, sqft(20, 1), 22}, {m2(167, 10), 10000, m2(213, 100), 9}, {m2(20, 1), 5000, m2(199, 100), 11}, {m2(12, 1), 10000, m2(24, 10), 6},
	} {
		require.Equal(t, c.want, BoxesByArea(c.area, c.waste, c.box))
	}
}

func TestPlanksAndBoxes(t *testing.T) {
	require.Equal(t, int64(63), Planks(60, 5000))
	require.Equal(t, int64(65), Planks(61, 5000)) // 64.05
	require.Equal(t, int64(4), Planks(3, 5000))   // one spare at least
	require.Equal(t, int64(60), Planks(60, 0))
	require.Equal(t, int64(8), Boxes(64, 8))
	require.Equal(t, int64(9), Boxes(65, 8))
	require.Equal(t, int64(2), Returnable(10, 60, 4, 8))
	require.Equal(t, int64(1), Returnable(10, 60, 5, 8))
	require.Equal(t, int64(0), Returnable(10, 90, 5, 8))
}

// strips = 1 if across <= width, else 1 + (across - width) / (width - lap) rounded up.
func TestStripCount(t *testing.T) {
	for _, c := range []struct {
		across, width, lap length.Length
		want               int64
	}{
		{ft(12), ft(4), 0, 3}, {ft(12), ft(4), in(8), 4}, {ft(12), in(40), 0, 4}, {ft(12), ft(10), in(8), 2}, {ft(14), ft(4), in(3), 4},
		{mm(3600), mm(1000), 0, 4}, {mm(3600), mm(2000), mm(200), 2}, {ft(4), ft(4), in(8), 1}, {ft(4) + 1, ft(4), in(8), 2},
	} {
		require.Equal(t, c.want, StripCount(c.across, c.width, c.lap))
	}
}

// 15 x 12 ft with rolls of 4 x 25 ft: two rolls by area, three where strips may not be pieced, two with end seams.
func TestUnderlay(t *testing.T) {
	roll := plank.Roll{Width: ft(4), Length: ft(25)}
	require.Equal(t, int64(2), RollsByArea(sqft(180, 1), roll))
	s := Underlay([]Part{{ft(15), ft(12)}}, roll, false)
	require.Equal(t, int64(3), s.Rolls)
	require.Equal(t, int64(3), s.N)
	require.False(t, s.Pieced)
	require.Equal(t, ft(45), s.Run)
	require.Equal(t, ft(30), s.Tape)
	s = Underlay([]Part{{ft(15), ft(12)}}, roll, true)
	require.Equal(t, int64(2), s.Rolls)
	require.Equal(t, int64(1), s.Joins)
	require.Equal(t, ft(34), s.Tape)
	s = Underlay([]Part{{ft(60), ft(4)}}, roll, false)
	require.True(t, s.Pieced)
	require.Equal(t, []int64{3, 2}, []int64{s.Rolls, s.Joins})
	s = Underlay([]Part{{ft(48), ft(4)}}, plank.Roll{Width: ft(4), Length: ft(25), Overlap: ft(1)}, false)
	require.Equal(t, []int64{2, 1}, []int64{s.Rolls, s.Joins}) // 25 + 24: 49 ft
}

// A closet of 6 x 2 ft off the 15 x 12 ft room: its strip comes from what the third roll leaves.
func TestUnderlayOfACloset(t *testing.T) {
	roll := plank.Roll{Width: ft(4), Length: ft(25)}
	s := Underlay([]Part{{ft(15), ft(12)}, {ft(6), ft(2)}}, roll, false)
	require.Equal(t, []int64{4, 3}, []int64{s.N, s.Rolls})
	require.Equal(t, ft(30), s.Tape)
	s = Underlay([]Part{{ft(15), ft(12)}, {ft(11), ft(2)}}, roll, false) // 10 ft left of each roll is too short
	require.Equal(t, int64(4), s.Rolls)
	s = Underlay([]Part{{ft(15), ft(12)}, {ft(5), ft(2)}}, roll, true)
	require.Equal(t, int64(2), s.Rolls) // 50 ft to the foot
	s = Underlay([]Part{{ft(15), ft(2400)}, {ft(11), ft(2)}}, roll, false)
	require.Equal(t, int64(601), s.Rolls)
}

// However strips are cut, the rolls hold at least the run, and one roll fewer would not hold the pieced run.
func TestPiecedRollsAreEnoughAndNoMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		along := ft(float64(rapid.IntRange(1, 90).Draw(t, "along")))
		across := ft(float64(rapid.IntRange(1, 60).Draw(t, "across")))
		roll := plank.Roll{Width: in(float64(rapid.IntRange(24, 80).Draw(t, "width"))), Length: ft(float64(rapid.IntRange(5, 70).Draw(t, "roll")))}
		whole, piece := Underlay([]Part{{along, across}}, roll, false), Underlay([]Part{{along, across}}, roll, true)
		require.LessOrEqual(t, piece.Rolls, whole.Rolls)
		require.GreaterOrEqual(t, length.Length(piece.Rolls)*roll.Length, piece.Run)
		require.Less(t, length.Length(piece.Rolls-1)*roll.Length, piece.Run)
		require.GreaterOrEqual(t, length.Length(piece.N)*roll.Width, across)
		require.GreaterOrEqual(t, whole.Rolls, RollsByArea(along.Times(across), roll))
	})
}

func TestCheckRoll(t *testing.T) {
	require.NoError(t, CheckRoll(plank.Roll{Width: ft(4), Length: ft(25), Overlap: ft(2)}))
	require.ErrorContains(t, CheckRoll(plank.Roll{Width: ft(4), Length: ft(25), Overlap: ft(2) + 2}), "next to nothing")
	require.ErrorContains(t, CheckRoll(plank.Roll{Width: mm(40), Length: ft(25)}), "no underlay")
}

// The lengths that a 10.1 fl oz tube and a 310 mL tube fill, by volume over area. A full square bead of 1/4 in is 24.3 ft;
// the 50 ft that tables print for it is the fillet's. 10 ft of 1/4 x 1/4 joint is 7.5 cu in and a tube 18.3 cu in (a
// supplier's printed example, of 18.2273).
func TestBeads(t *testing.T) {
	for _, c := range []struct {
		shape        term.Word
		width, depth float64
		feet, metres float64
	}{
		{RoundBead, .125, 0, 123.8, 39.2}, {RoundBead, .1875, 0, 55, 17.4}, {RoundBead, .25, 0, 30.9, 9.79}, {RoundBead, .375, 0, 13.75, 4.35},
		{SquareBead, .25, .25, 24.3, 7.69}, {SquareBead, .375, .25, 16.2, 5.13}, {SquareBead, .375, .375, 10.8, 3.42}, {SquareBead, .5, .25, 12.15, 3.84},
		{FilletBead, .25, .25, 48.6, 15.4}, {FilletBead, .375, .375, 21.6, 6.83},
	} {
		perFoot := BeadVolume(ft(1), c.shape, in(c.width), in(c.depth))
		feet, _ := Cartridge(length.Imperial).Over(perFoot).Float64()
		require.InDelta(t, c.feet, feet, 0.051, c)
		metres, _ := Cartridge(length.Metric).Over(BeadVolume(mm(1000), c.shape, in(c.width), in(c.depth))).Float64()
		require.InDelta(t, c.metres, metres, 0.051, c)
	}
	joint := BeadVolume(ft(10), SquareBead, in(.25), in(.25))
	require.Equal(t, "15/2", joint.Over(length.CubicInch).String())
	require.Equal(t, int64(1), Tubes(joint, Cartridge(length.Imperial), 10000))
	require.Equal(t, int64(3), Tubes(BeadVolume(ft(60), SquareBead, in(.25), in(.25)), Cartridge(length.Imperial), 0))
	cubic, _ := Cartridge(length.Imperial).Over(length.CubicInch).Float64()
	require.InDelta(t, 18.2273, cubic, 0.0001)
}

// Studs met on a 12 ft wall at 16 in on centre, counting both ends: 10.
func TestLine(t *testing.T) {
	require.Equal(t, Spaced{10, in(16)}, Line(ft(12), in(16), 0))
	require.Equal(t, Spaced{11, in(14.4)}, Line(ft(12), in(15.99), 0))
	require.Equal(t, Spaced{5, in(7.625)}, Line(in(32.5), in(10), in(1)))
	require.Equal(t, Spaced{N: 1}, Line(in(2), in(10), in(1)))
}

// Fixture and embedment add up; the shop's length is the next quarter inch.
func TestScrewLength(t *testing.T) {
	for _, c := range []struct{ fixture, embed, exact, stock float64 }{
		{.25, 1, 1.25, 1.25}, {.125, 1, 1.125, 1.25}, {.75, 1.25, 2, 2}, {.75, 1.3125, 2.0625, 2.25},
	} {
		exact, stock := ScrewLength(in(c.fixture), in(c.embed), length.Imperial)
		require.Equal(t, in(c.exact), exact)
		require.Equal(t, in(c.stock), stock)
	}
	exact, stock := ScrewLength(mm(3), mm(25), length.Metric)
	require.Equal(t, []length.Length{mm(28), mm(30)}, []length.Length{exact, stock})
	bit, ok := Bit(in(.25))
	require.True(t, ok)
	require.Equal(t, in(.1875), bit)
	bit, _ = Bit(in(.1875))
	require.Equal(t, 5*length.Inch/32, bit)
	_, ok = Bit(in(.5))
	require.False(t, ok)
}

// Nail lengths of the carpentry textbooks: each penny a quarter inch up to 10d.
func TestNails(t *testing.T) {
	for size, want := range map[string]float64{"2d": 1, "3d": 1.25, "4d": 1.5, "5d": 1.75, "6d": 2, "7d": 2.25, "8d": 2.5, "9d": 2.75, "10d": 3, "12d": 3.25, "16d": 3.5, "20d": 4, "60d": 6} {
		for _, p := range Pennies {
			if p.Size == size {
				require.Equal(t, in(want), p.Length)
			}
		}
	}
	require.Equal(t, in(1), Penetration(in(2), in(.5), in(.5)))
	require.Equal(t, in(.9375), Penetration(in(2), in(.5625), in(.5)))
	require.Equal(t, in(1.25), Penetration(in(2.5), in(.625), in(.625)))
	require.Equal(t, in(.5), Penetration(in(1.5), in(.5), in(.5)))
	require.Zero(t, Penetration(in(1), in(1), in(.5)))
	p, ok := NailFor(in(.5), in(.5))
	require.True(t, ok)
	require.Equal(t, "5d", p.Size) // a 4d would go 1/2 in into the stud, which is weak
	p, _ = NailFor(in(.75), in(.5))
	require.Equal(t, "7d", p.Size) // three times 3/4 in
	p, _ = NailFor(in(.5625), in(.625))
	require.Equal(t, "6d", p.Size)
	_, ok = NailFor(in(3), in(.5))
	require.False(t, ok)
}

// Mass = thickness x 850 kg/m³ (the density of EN 16354's reference floor): 8 mm is 6.80 kg/m², 12 mm 10.20; a box of
// 20 sq ft of 8 mm is 12.63 kg, one of 23.69 sq ft 14.97 kg.
func TestWeight(t *testing.T) {
	for thick, want := range map[int64]float64{6: 5.10, 7: 5.95, 8: 6.80, 10: 8.50, 12: 10.20} {
		kg, _ := Weight(length.SquareMetre, mm(thick), Density).Float64()
		require.InDelta(t, want, kg, 1e-9)
	}
	box, _ := Weight(sqft(20, 1), mm(8), Density).Float64()
	require.InDelta(t, 12.63, box, 0.005)
	box, _ = Weight(sqft(2369, 100), mm(8), Density).Float64()
	require.InDelta(t, 14.97, box, 0.005)
	trips, per := Trips(30, big.NewRat(125, 10), big.NewRat(250, 1))
	require.Equal(t, []int64{2, 20}, []int64{trips, per})
	trips, _ = Trips(30, big.NewRat(125, 10), big.NewRat(12, 1))
	require.Zero(t, trips)
}
