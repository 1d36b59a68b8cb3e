package sheet

import "math"

func (l Line) paint(c *canvas) {
	if dashRuns[l.Dash] == nil {
		c.stroke(l.A, l.B, l.Width)
		return
	}
	length := math.Hypot(float64(l.B.X-l.A.X), float64(l.B.Y-l.A.Y))
	at := func(d float64) Point {
		t := min(d/length, 1)
		return Point{l.A.X + int(math.Round(float64(l.B.X-l.A.X)*t)), l.A.Y + int(math.Round(float64(l.B.Y-l.A.Y)*t))}
	}
	d := 0.0
	for i := 0; d < length; i++ {
		run := float64(dashRuns[l.Dash][i%len(dashRuns[l.Dash])] * l.Width)
		if i%2 == 0 {
			c.stroke(at(d), at(d+run), l.Width)
		}
		d += run
	}
}

// stroke draws a line. An upright or level one is a rectangle about its middle; a slanting one is smoothed.
func (c *canvas) stroke(a, b Point, width int) {
	half := width / 2
	switch {
	case a.X == b.X:
		c.block(Box{a.X - half, min(a.Y, b.Y), a.X - half + width, max(a.Y, b.Y)})
	case a.Y == b.Y:
		c.block(Box{min(a.X, b.X), a.Y - half, max(a.X, b.X), a.Y - half + width})
	default:
		c.slant(a, b, width)
	}
}

func (c *canvas) slant(a, b Point, width int) {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	k := fine * float64(width) / 2 / math.Hypot(dx, dy)
	ox, oy := int(math.Round(-dy*k)), int(math.Round(dx*k))
	c.smooth([]Point{
		{a.X*fine + ox, a.Y*fine + oy}, {b.X*fine + ox, b.Y*fine + oy},
		{b.X*fine - ox, b.Y*fine - oy}, {a.X*fine - ox, a.Y*fine - oy},
	})
}

func (h Head) paint(c *canvas) {
	if h.Tip == h.From {
		return
	}
	dx, dy := float64(h.From.X-h.Tip.X), float64(h.From.Y-h.Tip.Y)
	k := fine * float64(h.Size) / math.Hypot(dx, dy)
	at := func(along, across float64) Point {
		return Point{h.Tip.X*fine + int(math.Round(dx*k*along-dy*k*across)), h.Tip.Y*fine + int(math.Round(dy*k*along+dx*k*across))}
	}
	c.smooth([]Point{at(0, 0), at(1, 0.28), at(1, -0.28)})
}

// fine is the number of steps in a pixel when slanting edges are smoothed; subRows is the number of lines looked at in each.
const (
	fine    = 16
	subRows = 4
)

// smooth inks a polygon given in fine steps, each pixel as far as it is covered.
func (c *canvas) smooth(ring []Point) {
	b := Bounds(ring...)
	x0, x1 := floorDiv(b.X0, fine), floorDiv(b.X1, fine)+1
	cover := make([]int, x1-x0)
	for y := max(floorDiv(b.Y0, fine), 0); y <= min(floorDiv(b.Y1, fine), c.h-1); y++ {
		clear(cover)
		for sub := range subRows {
			c.runs = cross(c.runs[:0], ring, y*fine+(2*sub+1)*fine/(2*subRows))
			if len(c.runs) == 2 {
				addCover(cover, min(c.runs[0], c.runs[1])-x0*fine, max(c.runs[0], c.runs[1])-x0*fine)
			}
		}
		for i, v := range cover {
			if ink := v * (inks - 1) / (fine * subRows); ink > 0 {
				c.ink(x0+i, y, uint8(ink))
			}
		}
	}
}

// addCover adds to each pixel the fine steps of it that lie between two places.
func addCover(cover []int, from, to int) {
	for i := from / fine; i <= min(to/fine, len(cover)-1); i++ {
		cover[i] += min(to, (i+1)*fine) - max(from, i*fine)
	}
}
