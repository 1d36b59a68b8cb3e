package sheet

import (
	"bytes"
	"image"
	"image/png"
	"sync"
)

// Image draws the sheet.
func (s *Sheet) Image() *image.Paletted {
	return s.image(make([]uint8, s.W*s.H))
}

func (s *Sheet) image(pix []uint8) *image.Paletted {
	c := newCanvas(s.W, s.H, pix)
	for _, shape := range s.Shapes {
		shape.paint(c)
	}
	return &image.Paletted{Pix: pix, Stride: s.W, Rect: image.Rect(0, 0, s.W, s.H), Palette: palette}
}

// PNG draws the sheet and gives the file's bytes.
func (s *Sheet) PNG() ([]byte, error) {
	pix := bitmaps.get(s.W * s.H)
	defer bitmaps.put(pix)
	return Encode(s.image(pix))
}

// Encode gives an index image as a PNG file, with working memory that is kept for the next.
func Encode(img *image.Paletted) ([]byte, error) {
	var b bytes.Buffer
	b.Grow(96 << 10)
	enc := png.Encoder{CompressionLevel: png.BestSpeed, BufferPool: &encoders}
	err := enc.Encode(&b, img)
	return b.Bytes(), err
}

// encoders keeps the encoder's working memory for the next picture.
var encoders encoderPool

type encoderPool struct{ sync.Pool }

func (p *encoderPool) Get() *png.EncoderBuffer {
	b, _ := p.Pool.Get().(*png.EncoderBuffer)
	return b
}

func (p *encoderPool) Put(b *png.EncoderBuffer) { p.Pool.Put(b) }

// bitmaps keeps pixels for the next picture.
var bitmaps bitmapPool

type bitmapPool struct{ pool sync.Pool }

func (p *bitmapPool) get(n int) []uint8 {
	if b, ok := p.pool.Get().(*[]uint8); ok && cap(*b) >= n {
		return (*b)[:n]
	}
	return make([]uint8, n)
}

func (p *bitmapPool) put(b []uint8) { p.pool.Put(&b) }
