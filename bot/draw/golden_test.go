package draw

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/geom"
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// hall is laid by hand, so that its drawings change only when drawing does: 100 by 30 in, 4 rows from the south wall,
// the last one ripped to 7 in, and a notch in row 2 piece 2.
func hall(t testing.TB) *layout.Layout {
	f := build(t, room.Plan{
		Rect: &room.Rect{EastWest: 100 * in, NorthSouth: 30 * in}, Gap: in / 4,
		Doorways: []room.Doorway{{Wall: room.West, Wide: 20 * in, From: 5 * in, FromEnd: room.South, Into: in}},
	})
	l := &layout.Layout{
		Request: layout.Request{Floor: f, Plank: plank.Plank{Width: 7*in + in/2, Length: 47*in + in/2}, Rules: rules},
		Along:   layout.EastWest, StartWall: room.South, From: "west", To: "east", Planks: 11,
	}
	for i, first := range []length.Length{30 * in, 12 * in, 40*in + in/8, 20 * in} {
		l.Rows = append(l.Rows, handRow(i+1, first))
	}
	p := &l.Rows[1].Runs[0].Pieces[1]
	p.Cuts = []layout.Cut{{What: "notch", Edge: "left end, near edge", Left: 10 * in, Right: 14 * in, Bottom: 5*in + in/2, Top: 7*in + in/2}}
	p.Whole, p.Trapped, p.WayIn = false, "it goes under the door jambs", "slide it in"
	p.Shape = geom.Region{{
		{X: 12*in + in/4, Y: 7*in + 3*in/4}, {X: 59*in + 3*in/4, Y: 7*in + 3*in/4}, {X: 59*in + 3*in/4, Y: 15*in + in/4},
		{X: 26*in + in/4, Y: 15*in + in/4}, {X: 26*in + in/4, Y: 13*in + in/4}, {X: 22*in + in/4, Y: 13*in + in/4},
		{X: 22*in + in/4, Y: 15*in + in/4}, {X: 12*in + in/4, Y: 15*in + in/4},
	}}
	stockOf(l)
	return l
}

func handRow(n int, first length.Length) layout.Row {
	row := layout.Row{N: n, Near: length.Length(n-1) * (7*in + in/2), Width: 7*in + in/2}
	if n == 4 {
		row.Width = 7 * in
	}
	run := layout.Run{Right: 99*in + in/2}
	for left, long := length.Length(0), first; left < run.Right; left, long = left+long, 47*in+in/2 {
		right := min(left+long, run.Right)
		p := layout.Piece{Row: n, N: len(run.Pieces) + 1, Left: left, Right: right}
		p.Shape = geom.Region{{
			{X: left + in/4, Y: row.Near + in/4}, {X: right + in/4, Y: row.Near + in/4},
			{X: right + in/4, Y: row.Near + row.Width + in/4}, {X: left + in/4, Y: row.Near + row.Width + in/4},
		}}
		if edge := "left end"; right-left < 47*in+in/2 {
			if left == 0 {
				edge = "right end"
			}
			p.Cuts = append(p.Cuts, layout.Cut{What: "crosscut", Edge: edge, Near: right - left, Far: right - left})
		}
		if n == 4 {
			p.Cuts = append(p.Cuts, layout.Cut{What: "rip", Edge: "near edge", Near: row.Width, Far: row.Width})
		}
		p.Whole = len(p.Cuts) == 0
		run.Pieces = append(run.Pieces, p)
	}
	row.Runs = []layout.Run{run}
	return row
}

// stockOf gives each piece a plank, but row 3's first piece the offcut of row 1's last.
func stockOf(l *layout.Layout) {
	for i := range l.Rows {
		eachIn(&l.Rows[i], func(p *layout.Piece) {
			if p.Row == 2 && p.N == 1 {
				p.Plank, p.Offcut = 2, true
				l.Stock[2].Pieces = append(l.Stock[2].Pieces, layout.Ref{Row: 2, N: 1})
				return
			}
			p.Plank = len(l.Stock)
			l.Stock = append(l.Stock, layout.Stock{Pieces: []layout.Ref{{Row: p.Row, N: p.N}}})
		})
	}
}

func goldens(t testing.TB) []*sheet.Sheet {
	l := hall(t)
	title := Title{Job: "Hall of row four", Plank: l.Request.Plank, Planks: 11, Boxes: 2, Doors: []Door{{"kitchen", "T-molding"}}}
	row, ok := Row(l, 2, title)
	require.True(t, ok)
	piece, ok := Piece(l, 2, 2, title)
	require.True(t, ok)
	metric := title
	metric.Tape.System = length.Metric
	rows := RowSheets(l, metric)[0]
	return []*sheet.Sheet{
		Plan(l, title), row, piece, rows,
		Underlay(l.Request.Floor, plank.Roll{Width: 1 * ft, Length: 25 * ft, Overlap: in}, false, title),
		Trim(l.Request.Floor, Stick{Length: 8 * ft, Thickness: in / 2, Kerf: in / 8}, title),
	}
}

func TestGoldenShapes(t *testing.T) {
	for _, s := range goldens(t) {
		sound(t, s)
		name := filepath.Join("testdata", s.Name+".txt")
		if *update {
			require.NoError(t, os.WriteFile(name, []byte(s.String()), 0o644))
		}
		want, err := os.ReadFile(name)
		require.NoError(t, err)
		require.Equal(t, string(want), s.String(), "run go test ./bot/draw -update, and look at the difference")
	}
}

func TestGoldenPictures(t *testing.T) {
	for _, s := range goldens(t) {
		if s.Name == "plan" || s.Name == "row-2-piece-2" {
			samePicture(t, s, filepath.Join("testdata", s.Name+".png"))
		}
	}
}

// samePicture compares a sheet with a picture, pixel by pixel: at most one in a thousand may differ by more than a
// shade. A picture that fails is left beside the golden one.
func samePicture(t testing.TB, s *sheet.Sheet, name string) {
	t.Helper()
	data, err := s.PNG()
	require.NoError(t, err)
	if *update {
		require.NoError(t, os.WriteFile(name, data, 0o644))
	}
	file, err := os.ReadFile(name)
	require.NoError(t, err)
	got, want := decode(t, data), decode(t, file)
	if off := differing(got, want); off*1000 > want.Bounds().Dx()*want.Bounds().Dy() {
		beside := name[:len(name)-len(".png")] + ".got.png"
		require.NoError(t, os.WriteFile(beside, data, 0o644))
		t.Fatalf("%s: %d pixels differ; see %s, or run with -update", name, off, beside)
	}
}

func decode(t testing.TB, data []byte) image.Image {
	img, err := png.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	return img
}

// differing counts the pixels that differ by more than a shade; all of them where the sizes do.
func differing(a, b image.Image) int {
	r := b.Bounds()
	if a.Bounds() != r {
		return r.Dx() * r.Dy()
	}
	n := 0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			p, q := color.GrayModel.Convert(a.At(x, y)).(color.Gray), color.GrayModel.Convert(b.At(x, y)).(color.Gray)
			if d := int(p.Y) - int(q.Y); d > 8 || d < -8 {
				n++
			}
		}
	}
	return n
}

// One moved line is more than the tolerance lets through.
func TestPictureTellsAMovedLine(t *testing.T) {
	a, b := goldens(t)[0], goldens(t)[0]
	b.Add(sheet.Line{A: sheet.Point{X: 100, Y: 300}, B: sheet.Point{X: 900, Y: 300}, Width: 4})
	require.Greater(t, differing(a.Image(), b.Image())*1000, a.W*a.H)
}

// The same layout gives the same bytes.
func TestSameBytes(t *testing.T) {
	first, err := goldens(t)[0].PNG()
	require.NoError(t, err)
	for range 3 {
		again, err := goldens(t)[0].PNG()
		require.NoError(t, err)
		require.True(t, bytes.Equal(first, again))
	}
}

func BenchmarkPlan(b *testing.B) {
	for _, size := range []struct {
		name string
		w, h length.Length
	}{{"bedroom", 12*ft + 6*in, 11*ft + 4*in}, {"hall", 60 * ft, 40 * ft}} {
		f := build(b, room.Plan{Rect: &room.Rect{EastWest: size.w, NorthSouth: size.h}})
		l := lay(b, layout.Request{Floor: f, Plank: oak, Rules: rules, Along: layout.EastWest, StartWall: room.South, FirstRow: oak.Width})
		title := alderTitle(l)
		b.Run(fmt.Sprintf("floor=%s/draw+png", size.name), func(b *testing.B) {
			b.ReportAllocs()
			n := 0
			for b.Loop() {
				data, err := Plan(l, title).PNG()
				require.NoError(b, err)
				n = len(data)
			}
			b.ReportMetric(float64(n), "file-bytes")
		})
		img := Plan(l, title).Image()
		b.Run(fmt.Sprintf("floor=%s/png-alone", size.name), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, err := sheet.Encode(img)
				require.NoError(b, err)
			}
		})
	}
}
