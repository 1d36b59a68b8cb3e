package sheet

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// inked gives the box of all pixels that are not paper.
func inked(s *Sheet) Box {
	img := s.Image()
	b := Box{s.W, s.H, 0, 0}
	for y := range s.H {
		for x := range s.W {
			if img.Pix[y*s.W+x] != 0 {
				b = Box{min(b.X0, x), min(b.Y0, y), max(b.X1, x+1), max(b.Y1, y+1)}
			}
		}
	}
	return b
}

// A text's box is what it inks, so that boxes that are apart are letters that are apart.
func TestTextInksItsBox(t *testing.T) {
	for _, text := range []Text{
		{Size: 22, S: "47 1/2"}, {Size: 22, S: "gjpqy ()[]|@", Bold: true}, {Size: 38, S: "Ekås, öl"},
		{Size: 24, S: "12 ft 6 in", Turned: true}, {Size: 22, S: "8/16", Tight: true, Bold: true}, {Size: 22, S: "8/16", Tight: true, Turned: true},
	} {
		text.At = Point{50, 60}
		s := &Sheet{W: 500, H: 400, Shapes: []Shape{text}}
		got := inked(s)
		require.True(t, got.Within(text.Box().Grow(2)), "%q inks %v, not %v", text.S, got, text.Box())
		if text.Tight {
			require.True(t, text.Box().Within(got.Grow(4)), "%q", text.S)
		}
	}
}

// A letter that the font lacks still shows, as a box.
func TestUnknownLetterShows(t *testing.T) {
	s := &Sheet{W: 100, H: 60, Shapes: []Shape{Text{At: Point{20, 10}, Size: 24, S: "床"}}}
	require.NotEqual(t, Box{100, 60, 0, 0}, inked(s))
}

func TestFillCoversItsPixels(t *testing.T) {
	for _, c := range []struct {
		name  string
		shape Fill
		want  int // pixels, counted by hand
	}{
		{"box", Fill{Rings: [][]Point{Box{10, 10, 30, 20}.Corners()}}, 200},
		{"half a square", Fill{Rings: [][]Point{{{10, 10}, {30, 10}, {10, 30}}}}, 200},
		{"box with a hole", Fill{Rings: [][]Point{Box{10, 10, 30, 30}.Corners(), Box{15, 15, 25, 25}.Corners()}}, 300},
		{"only within", Fill{Rings: [][]Point{Box{10, 10, 30, 30}.Corners()}, Within: Box{0, 0, 20, 15}}, 50},
		{"off the sheet", Fill{Rings: [][]Point{Box{-50, -50, -10, 400}.Corners()}}, 0},
	} {
		c.shape.Tone = Wall
		img := (&Sheet{W: 60, H: 50, Shapes: []Shape{c.shape}}).Image()
		require.InDelta(t, c.want, bytes.Count(img.Pix, []byte{uint8(Wall) << 4}), 10, c.name)
	}
}

func TestContainsAgreesWithPaint(t *testing.T) {
	f := Fill{Rings: [][]Point{{{5, 3}, {40, 12}, {30, 35}, {8, 28}}}, Tone: Wall}
	img := (&Sheet{W: 50, H: 40, Shapes: []Shape{f}}).Image()
	for y := range 40 {
		for x := range 50 {
			require.Equal(t, img.Pix[y*50+x] != 0, f.Contains(Point{x, y}), "%d,%d", x, y)
		}
	}
}

// Shapes off the sheet, of no size, or empty, draw without harm.
func TestOddShapesDraw(t *testing.T) {
	s := &Sheet{W: 40, H: 40, Shapes: []Shape{
		Line{A: Point{-100, -100}, B: Point{300, 290}, Width: 5, Dash: Chain}, Line{A: Point{3, 3}, B: Point{3, 3}, Width: 2, Dash: Dashed},
		Head{Tip: Point{5, 5}, From: Point{5, 5}, Size: 10}, Head{Tip: Point{-5, 500}, From: Point{90, 7}, Size: 14},
		Text{At: Point{-30, 35}, Size: 22, S: "off", Clear: true}, Text{Size: 22}, Line{A: Point{-9, 50}, B: Point{50, -7}, Width: 3},
	}}
	data, err := s.PNG()
	require.NoError(t, err)
	_, err = png.Decode(bytes.NewReader(data))
	require.NoError(t, err)
}

// A slanting line inks as much as its length and width say: 100 long (60, 80), 4 wide.
func TestSlantingLineIsAsWideAsSaid(t *testing.T) {
	img := (&Sheet{W: 120, H: 120, Shapes: []Shape{Line{A: Point{20, 10}, B: Point{80, 90}, Width: 4}}}).Image()
	sum := 0
	for _, p := range img.Pix {
		sum += int(p & 15)
	}
	require.InDelta(t, 400, float64(sum)/15, 20)
}

// The tones for whole, cut and spare planks differ in a grey picture too.
func TestTonesDifferInGrey(t *testing.T) {
	grey := func(tone Tone) int {
		c := tones[tone]
		return (299*int(c.r) + 587*int(c.g) + 114*int(c.b)) / 1000 // ITU-R BT.601 luma
	}
	require.Greater(t, grey(Whole)-grey(Cut), 25)
	require.Greater(t, grey(Cut)-grey(Spare), 10)
}

func TestPlacerKeepsApart(t *testing.T) {
	p := NewPlacer(Box{0, 0, 300, 100})
	a := Text{At: Point{10, 10}, Size: 22, S: "first"}
	_, ok := p.Place(a)
	require.True(t, ok)
	_, ok = p.Place(a)
	require.False(t, ok, "the same place twice")
	far := a
	far.At = Point{150, 10}
	got, ok := p.Place(a, far)
	require.True(t, ok)
	require.Equal(t, far, got, "the first free place")
	_, ok = p.Place(Text{At: Point{290, 10}, Size: 22, S: "over the side"})
	require.False(t, ok)
}

func TestWrapAndFit(t *testing.T) {
	text := strings.Repeat("lay the floor ", 20)
	lines := Wrap(text, 24, false, 300)
	require.Equal(t, strings.Fields(text), strings.Fields(strings.Join(lines, " ")))
	for _, line := range lines {
		w, _ := Measure(line, 24, false)
		require.LessOrEqual(t, w, 300)
	}
	w, _ := Measure(Fit(strings.Repeat("W", 90), 24, true, 200), 24, true)
	require.LessOrEqual(t, w, 200)
	require.Equal(t, "short", Fit("short", 24, true, 200))
}

func TestStringTellsEverything(t *testing.T) {
	s := &Sheet{Name: "x", Alt: "a picture", W: 10, H: 20}
	s.Add(Fill{Rings: [][]Point{{{1, 2}, {3, 4}}}, Tone: Cut, Texture: Rising, Within: Box{0, 0, 5, 5}},
		Line{Point{1, 2}, Point{3, 4}, 2, Dashed}, Head{Point{1, 1}, Point{2, 2}, 14},
		Text{At: Point{5, 6}, Size: 22, Bold: true, Turned: true, Clear: true, Tone: Whole, S: `7"`})
	require.Equal(t, `sheet x 10 x 20
alt a picture
fill cut rising 1,2 3,4 within 0,0 5,5
line 2 dashed 1,2 3,4
head 14 1,1 from 2,2
text 22 bold turned on whole 5,6 "7\""
`, s.String())
}
