package sheet

// canvas is an index image: each pixel holds a tone in its high four bits and ink in its low four. Ink only ever darkens.
type canvas struct {
	w, h int
	pix  []uint8
	runs []int // scratch: where a scan line crosses edges
}

func newCanvas(w, h int, pix []uint8) *canvas {
	clear(pix)
	return &canvas{w: w, h: h, pix: pix}
}

// span sets a tone from x0 up to x1, and takes the ink away.
func (c *canvas) span(x0, x1, y int, tone Tone, texture Texture) {
	x0, x1 = max(x0, 0), min(x1, c.w)
	if y < 0 || y >= c.h || x0 >= x1 {
		return
	}
	row := c.pix[y*c.w+x0 : y*c.w+x1]
	base := uint8(tone) << 4
	for i := range row {
		row[i] = base
	}
	if texture != Plain {
		hatch(row, x0, y, texture)
	}
}

// The hatch: a line every hatchStep pixels, hatchInk dark.
const (
	hatchStep = 12
	hatchInk  = 7
)

// hatch inks the pattern on a row of pixels that starts at x0. It is fixed to the sheet, so that neighbours match.
func hatch(row []uint8, x0, y int, texture Texture) {
	if texture == Rising || texture == Crossed {
		every(row, hatchStep-1-(x0+y)%hatchStep, hatchStep, hatchInk)
		every(row, (hatchStep-(x0+y)%hatchStep)%hatchStep, hatchStep, hatchInk/2)
	}
	if texture == Falling || texture == Crossed {
		from := ((y-x0)%hatchStep + hatchStep) % hatchStep
		every(row, from, hatchStep, hatchInk)
		every(row, (from+1)%hatchStep, hatchStep, hatchInk/2)
	}
	if texture == Dotted && y%8 < 2 {
		shift := y / 8 % 2 * 4
		from := ((shift-x0)%8 + 8) % 8
		every(row, from, 8, hatchInk)
		every(row, (from+1)%8, 8, hatchInk)
	}
}

func every(row []uint8, from, step int, ink uint8) {
	for i := from; i < len(row); i += step {
		row[i] = row[i]&0xf0 | max(row[i]&15, ink)
	}
}

// ink darkens one pixel.
func (c *canvas) ink(x, y int, ink uint8) {
	if x < 0 || y < 0 || x >= c.w || y >= c.h {
		return
	}
	p := &c.pix[y*c.w+x]
	*p = *p&0xf0 | max(*p&15, ink)
}

// block darkens an upright rectangle to black.
func (c *canvas) block(b Box) {
	b = Box{max(b.X0, 0), max(b.Y0, 0), min(b.X1, c.w), min(b.Y1, c.h)}
	for y := b.Y0; y < b.Y1; y++ {
		for x := b.X0; x < b.X1; x++ {
			c.pix[y*c.w+x] |= 15
		}
	}
}
