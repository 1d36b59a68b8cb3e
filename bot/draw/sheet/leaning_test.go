package sheet

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func inkOf(s Shape) (sum int) {
	for _, p := range (&Sheet{W: 200, H: 200, Shapes: []Shape{s}}).Image().Pix {
		sum += int(p & 15)
	}
	return sum
}

// Lettering at a slant has as much ink as the same lying level, and lies within its outline and its boxes.
func TestLeaningIsTheSameLettering(t *testing.T) {
	level := inkOf(Text{At: Point{40, 80}, Size: 24, Bold: true, Tight: true, S: "47 1/2"})
	for _, turn := range []float64{0, 10, 45, -45, -70, 90} {
		y, x := math.Sincos(turn * math.Pi / 180)
		l := Leaning{Middle: Point{100, 100}, X: x, Y: y, Size: 24, Tone: Cut, S: "47 1/2"}
		require.InEpsilon(t, level, inkOf(l), 0.05, "%v degrees", turn)
		outline := Fill{Rings: [][]Point{l.Outline(2)}}
		img := (&Sheet{W: 200, H: 200, Shapes: []Shape{l}}).Image()
		for y := range 200 {
			for x := range 200 {
				if img.Pix[y*200+x] == 0 {
					continue
				}
				require.True(t, outline.Area().Grow(1).Meets(Box{x, y, x + 1, y + 1}))
				if img.Pix[y*200+x]&15 > 8 {
					require.True(t, covered(l, Point{x, y}), "%d,%d at %v", x, y, turn)
				}
			}
		}
	}
}

func covered(l Leaning, p Point) bool {
	for _, b := range l.Boxes() {
		if b.Grow(1).Meets(Box{p.X, p.Y, p.X + 1, p.Y + 1}) {
			return true
		}
	}
	return false
}

func TestLeaningWithNothingToSay(t *testing.T) {
	require.Zero(t, inkOf(Leaning{Middle: Point{5, 5}, X: 1, Size: 22}))
	require.Contains(t, Leaning{Middle: Point{5, 6}, X: 0.6, Y: 0.8, Size: 22, Tone: Cut, S: `7"`}.String(), `5,6 along 0.600,0.800 "7\""`)
}
