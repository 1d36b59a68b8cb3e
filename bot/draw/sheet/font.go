package sheet

import (
	"image"
	"image/draw"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// The Go fonts are by Bigelow & Holmes, under the licence in FONTS.
var faces = [2]*sfnt.Font{parse(goregular.TTF), parse(gobold.TTF)}

func parse(ttf []byte) *sfnt.Font {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic(err) // the font is part of the program
	}
	return f
}

// glyph is one letter's ink, w by h steps of 0 to 15, with its top left corner (x, y) from the pen on the base line.
type glyph struct {
	x, y, w, h, advance int
	ink                 []uint8
}

type glyphKey struct {
	r    rune
	size int
	bold bool
}

// glyphs keeps every letter drawn so far; all sheets share it.
var glyphs sync.Map // glyphKey to *glyph

func letter(r rune, size int, bold bool) *glyph {
	key := glyphKey{r, size, bold}
	if g, ok := glyphs.Load(key); ok {
		return g.(*glyph)
	}
	g, _ := glyphs.LoadOrStore(key, drawLetter(key))
	return g.(*glyph)
}

func drawLetter(key glyphKey) *glyph {
	face, ppem := faces[0], fixed.I(key.size)
	if key.bold {
		face = faces[1]
	}
	var buf sfnt.Buffer
	index, _ := face.GlyphIndex(&buf, key.r) // 0, the box of an unknown letter, where there is none
	advance, err := face.GlyphAdvance(&buf, index, ppem, font.HintingNone)
	if err != nil {
		return &glyph{}
	}
	g := &glyph{advance: advance.Round()}
	segments, err := face.LoadGlyph(&buf, index, ppem, nil)
	if err != nil || len(segments) == 0 {
		return g
	}
	g.rasterise(segments)
	return g
}

// rasterise fills the outline's box, which is small enough for vector's whole-number path, the same on every machine.
func (g *glyph) rasterise(segments sfnt.Segments) {
	b := segments.Bounds()
	g.x, g.y = b.Min.X.Floor(), b.Min.Y.Floor()
	g.w, g.h = b.Max.X.Ceil()-g.x, b.Max.Y.Ceil()-g.y
	v := vector.NewRasterizer(g.w, g.h)
	v.DrawOp = draw.Src
	at := func(p fixed.Point26_6) (float32, float32) {
		return float32(p.X)/64 - float32(g.x), float32(p.Y)/64 - float32(g.y)
	}
	for _, s := range segments {
		x, y := at(s.Args[0])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			v.MoveTo(x, y)
		case sfnt.SegmentOpLineTo:
			v.LineTo(x, y)
		case sfnt.SegmentOpQuadTo:
			x2, y2 := at(s.Args[1])
			v.QuadTo(x, y, x2, y2)
		case sfnt.SegmentOpCubeTo:
			x2, y2 := at(s.Args[1])
			x3, y3 := at(s.Args[2])
			v.CubeTo(x, y, x2, y2, x3, y3)
		}
	}
	v.ClosePath()
	mask := image.NewAlpha(image.Rect(0, 0, g.w, g.h))
	v.Draw(mask, mask.Bounds(), image.Opaque, image.Point{})
	g.ink = make([]uint8, g.w*g.h)
	for i := range g.ink {
		g.ink[i] = uint8((int(mask.Pix[i])*(inks-1) + 127) / 255)
	}
}
