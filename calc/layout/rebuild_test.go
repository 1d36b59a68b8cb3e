package layout

import (
	"fmt"
	"math"
	"math/rand"
	"regexp"
	"slices"
	"strings"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// sawyer has a plank and the words of a cut list, and nothing else: no layout, no floor. Millimetres, from the plank's left
// end and its near edge.
type sawyer struct {
	long, wide float64
	kept       []sf.XY // what straight cuts have left of the plank, anticlockwise
	out        []sf.Geometry
}

func newSawyer(long, wide length.Length) *sawyer {
	s := &sawyer{long: long.MM(), wide: wide.MM()}
	s.kept = []sf.XY{{}, {X: s.long}, {X: s.long, Y: s.wide}, {Y: s.wide}}
	return s
}

const measured = `((?:\d+ ft ?)?(?:[\d/ .]+ (?:in|mm))?)`

var (
	ends         = `(left end|right end)`
	edges        = `(near edge|far edge)`
	saidCrosscut = regexp.MustCompile(`^crosscut at ` + measured + ` from the ` + ends + `$`)
	saidRip      = regexp.MustCompile(`^rip at ` + measured + ` from the ` + edges + `$`)
	saidRipOff   = regexp.MustCompile(`^rip ` + measured + ` off the ` + edges + `$`)
	saidTaper    = regexp.MustCompile(`^rip tapered, ` + measured + ` at (?:the left end|` + measured + ` from the right end) and ` + measured + ` at (?:the right end|` + measured + ` from the left end), (from|off) the ` + edges + `$`)
	saidAngle    = regexp.MustCompile(`^cut the ` + ends + ` at an angle, ` + measured + ` on the near edge and ` + measured + ` on the far, from the ` + ends + `$`)
	saidBox      = regexp.MustCompile(`^(notch|cut out a hole) from ` + measured + ` to ` + measured + ` along and ` + measured + ` to ` + measured + ` across, from the ` + ends + ` and the ` + edges + `$`)
	saidMarks    = regexp.MustCompile(`^(cut off the|notch off the|cut out what lies between) ?([a-z ]*?)(?:, joining )?(\d.*), from the ` + ends + ` and the ` + edges + `$`)
	saidMark     = regexp.MustCompile(`^` + measured + ` along ` + measured + ` across$`)
	saidDrill    = regexp.MustCompile(`^drill a hole ` + measured + ` wide, its centre ` + measured + ` along and ` + measured + ` across, from the ` + ends + ` and the ` + edges + `$`)
)

func read(s string) float64 {
	if s == "" {
		return 0
	}
	l, err := length.Parse(s)
	if err != nil {
		panic(err)
	}
	return l.MM()
}

// do makes one cut as told. It is false where the words tell no cut.
func (s *sawyer) do(words string) bool {
	if m := saidCrosscut.FindStringSubmatch(words); m != nil {
		x := s.along(m[2], read(m[1]))
		s.keepEnd(m[2], x, x, 0, s.wide)
	} else if m := saidRip.FindStringSubmatch(words); m != nil {
		y := s.across(m[2], read(m[1]))
		s.keepEdge(m[2], 0, y, s.long, y)
	} else if m := saidRipOff.FindStringSubmatch(words); m != nil {
		y := s.across(m[2], read(m[1]))
		s.keepEdge(other(m[2]), 0, y, s.long, y)
	} else if m := saidTaper.FindStringSubmatch(words); m != nil {
		s.taper(m)
	} else if m := saidAngle.FindStringSubmatch(words); m != nil {
		s.angle(m)
	} else if m := saidBox.FindStringSubmatch(words); m != nil {
		x0, x1 := s.along(m[6], read(m[2])), s.along(m[6], read(m[3]))
		y0, y1 := s.across(m[7], read(m[4])), s.across(m[7], read(m[5]))
		s.take(s.outward([]sf.XY{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}))
	} else if m := saidMarks.FindStringSubmatch(words); m != nil {
		return s.join(m)
	} else if m := saidDrill.FindStringSubmatch(words); m != nil {
		r := read(m[1]) / 2
		x, y := s.along(m[4], read(m[2])), s.across(m[5], read(m[3]))
		s.take([]sf.XY{{X: x - r, Y: y - r}, {X: x + r, Y: y - r}, {X: x + r, Y: y + r}, {X: x - r, Y: y + r}})
	} else {
		return strings.HasPrefix(words, "cut the lip off the ")
	}
	return true
}

func other(edge string) string {
	if edge == "near edge" {
		return "far edge"
	}
	return "near edge"
}

func (s *sawyer) along(end string, l float64) float64 {
	if end == "right end" {
		return s.long - l
	}
	return l
}

func (s *sawyer) across(edge string, w float64) float64 {
	if edge == "far edge" {
		return s.wide - w
	}
	return w
}

// keepEnd cuts through two points, the second further from the near edge, and keeps the end named.
func (s *sawyer) keepEnd(end string, x0, x1, y0, y1 float64) {
	if end == "left end" {
		s.saw(sf.XY{X: x0, Y: y0}, sf.XY{X: x1, Y: y1})
	} else {
		s.saw(sf.XY{X: x1, Y: y1}, sf.XY{X: x0, Y: y0})
	}
}

// keepEdge cuts through two points, the second further to the right, and keeps the edge named.
func (s *sawyer) keepEdge(edge string, x0, y0, x1, y1 float64) {
	if edge == "far edge" {
		s.saw(sf.XY{X: x0, Y: y0}, sf.XY{X: x1, Y: y1})
	} else {
		s.saw(sf.XY{X: x1, Y: y1}, sf.XY{X: x0, Y: y0})
	}
}

// saw keeps what lies to the left of the line from a to b.
func (s *sawyer) saw(a, b sf.XY) {
	side := func(p sf.XY) float64 { return (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X) }
	var out []sf.XY
	for i, p := range s.kept {
		q := s.kept[(i+1)%len(s.kept)]
		sp, sq := side(p), side(q)
		if sp >= 0 {
			out = append(out, p)
		}
		if sp*sq < 0 {
			t := sp / (sp - sq)
			out = append(out, sf.XY{X: p.X + t*(q.X-p.X), Y: p.Y + t*(q.Y-p.Y)})
		}
	}
	s.kept = out
}

func (s *sawyer) bounds() (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range s.kept {
		x0, x1, y0, y1 = min(x0, p.X), max(x1, p.X), min(y0, p.Y), max(y1, p.Y)
	}
	return x0, y0, x1, y1
}

func (s *sawyer) taper(m []string) {
	x0, _, x1, _ := s.bounds()
	if m[2] != "" {
		x0 = s.long - read(m[2])
	}
	if m[4] != "" {
		x1 = read(m[4])
	}
	keep := m[6]
	if m[5] == "off" {
		keep = other(keep)
	}
	s.keepEdge(keep, x0, s.across(m[6], read(m[1])), x1, s.across(m[6], read(m[3])))
}

// angle marks both edges as they are now and cuts from mark to mark.
func (s *sawyer) angle(m []string) {
	near, far := s.along(m[4], read(m[2])), s.along(m[4], read(m[3]))
	keep := "left end"
	if m[1] == "left end" {
		keep = "right end"
	}
	y0, _ := s.edgesAt(near)
	_, y1 := s.edgesAt(far)
	s.keepEnd(keep, near, far, y0, y1)
}

// edgesAt gives the near and the far edge of what is kept, at a place along it.
func (s *sawyer) edgesAt(x float64) (near, far float64) {
	x0, _, x1, _ := s.bounds()
	x = min(max(x, x0), x1)
	near, far = math.Inf(1), math.Inf(-1)
	for i, p := range s.kept {
		q := s.kept[(i+1)%len(s.kept)]
		if x < min(p.X, q.X) || x > max(p.X, q.X) {
			continue
		}
		y := p.Y
		if p.X != q.X {
			y += (x - p.X) / (q.X - p.X) * (q.Y - p.Y)
		} else {
			near, far = min(near, q.Y), max(far, q.Y)
		}
		near, far = min(near, y), max(far, y)
	}
	return near, far
}

// join cuts along marks: a corner off straight, or what lies between them and the corners of the end or edge named.
func (s *sawyer) join(m []string) bool {
	var marks []sf.XY
	for _, one := range strings.Split(m[3], ", ") {
		mark := saidMark.FindStringSubmatch(one)
		if mark == nil {
			return false
		}
		marks = append(marks, sf.XY{X: s.along(m[4], read(mark[1])), Y: s.across(m[5], read(mark[2]))})
	}
	if m[2] == "" {
		s.take(s.outward(marks))
		return true
	}
	off := s.corners(m[2])
	if m[1] == "cut off the" {
		a, b := marks[0], marks[1]
		left := 0.0
		for _, p := range off {
			left += (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)
		}
		if left > 0 {
			a, b = b, a
		}
		s.saw(a, b)
		return len(marks) == 2 && len(off) > 0
	}
	if first, last := marks[0], marks[len(marks)-1]; len(off) == 2 && (same(first.X, last.X) && same(first.X, off[0].X) && same(first.X, off[1].X) || same(first.Y, last.Y) && same(first.Y, off[0].Y) && same(first.Y, off[1].Y)) {
		off = nil // it opens to that edge, whose corners stay
	}
	off = s.outward(s.inOrder(off, marks))
	n := len(marks)
	marks[0], marks[n-1] = on(marks[1], marks[0]), on(marks[n-2], marks[n-1])
	s.take(append(marks, off...))
	return true
}

func same(a, b float64) bool { return math.Abs(a-b) < 1 }

// corners are those of what is kept that the words name.
func (s *sawyer) corners(words string) []sf.XY {
	x0, y0, x1, y1 := s.bounds()
	var out []sf.XY
	for name, p := range map[string]sf.XY{"near left": {X: x0, Y: y0}, "near right": {X: x1, Y: y0}, "far right": {X: x1, Y: y1}, "far left": {X: x0, Y: y1}} {
		edge, end, _ := strings.Cut(name, " ")
		if strings.Contains(words, name+" corner") || strings.Contains(words, edge+" edge") || strings.Contains(words, end+" end") {
			out = append(out, p)
		}
	}
	return out
}

// inOrder walks corners from the last mark on: first the one in line with it.
func (s *sawyer) inOrder(corners, marks []sf.XY) []sf.XY {
	var out []sf.XY
	at := marks[len(marks)-1]
	for len(corners) > 0 {
		i := slices.IndexFunc(corners, func(c sf.XY) bool { return same(c.X, at.X) || same(c.Y, at.Y) })
		if i < 0 {
			i = 0
		}
		at = corners[i]
		out, corners = append(out, at), slices.Delete(corners, i, i+1)
	}
	return out
}

// The saw goes on through the edges that it reaches, by so much.
const through = 0.9

// on is a point beyond the end of a line.
func on(from, to sf.XY) sf.XY {
	long := math.Hypot(to.X-from.X, to.Y-from.Y)
	return sf.XY{X: to.X + (to.X-from.X)/long*through, Y: to.Y + (to.Y-from.Y)/long*through}
}

// outward moves the corners that lie on the outline of what is kept off it.
func (s *sawyer) outward(figure []sf.XY) []sf.XY {
	x0, y0, x1, y1 := s.bounds()
	for i := range figure {
		figure[i] = sf.XY{X: off(figure[i].X, x0, x1), Y: off(figure[i].Y, y0, y1)}
	}
	return figure
}

func off(l, least, most float64) float64 {
	switch {
	case l < least+0.8:
		return least - through
	case l > most-0.8:
		return most + through
	}
	return l
}

// take takes a figure off.
func (s *sawyer) take(figure []sf.XY) {
	var xy []float64
	for _, p := range append(figure, figure[0]) {
		xy = append(xy, p.X, p.Y)
	}
	s.out = append(s.out, sf.NewPolygon([]sf.LineString{sf.NewLineString(sf.NewSequence(xy, sf.DimXY))}).AsGeometry())
}

// piece is what is left of the plank.
func (s *sawyer) piece() (outline, error) {
	var xy []float64
	for _, p := range append(s.kept, s.kept[0]) {
		xy = append(xy, p.X, p.Y)
	}
	g := sf.NewPolygon([]sf.LineString{sf.NewLineString(sf.NewSequence(xy, sf.DimXY))}).AsGeometry()
	for _, o := range s.out {
		var err error
		if g, err = sf.Difference(g, o); err != nil {
			return nil, err
		}
	}
	return outlineOf(g), nil
}

// outline is rings of points in millimetres, on the plank.
type outline [][]sf.XY

func outlineOf(g sf.Geometry) outline {
	var out outline
	for _, p := range g.Dump() {
		poly, ok := p.AsPolygon()
		if !ok {
			continue
		}
		for _, ring := range poly.DumpRings() {
			c := ring.Coordinates()
			var pts []sf.XY
			for i := range c.Length() - 1 {
				pts = append(pts, c.GetXY(i))
			}
			out = append(out, pts)
		}
	}
	return out
}

func regionOutline(r geom.Region) outline {
	var out outline
	for _, ring := range r {
		var pts []sf.XY
		for _, p := range ring {
			pts = append(pts, sf.XY{X: p.X.MM(), Y: p.Y.MM()})
		}
		out = append(out, pts)
	}
	return out
}

// onPlank lays a piece on the plank, at the end and the edge that its cuts are measured from: those stay.
func (s *sawyer) onPlank(r geom.Region, told []string) outline {
	words := strings.Join(told, "; ")
	sw, ne := r.Box()
	x, y := sw.X.MM(), sw.Y.MM()
	if strings.Contains(words, "from the right end") {
		x = ne.X.MM() - s.long
	}
	switch {
	case strings.Contains(words, "from the far edge") || strings.Contains(words, "and the far edge"):
		y = ne.Y.MM() - s.wide
	case strings.Contains(words, "off the near edge") && !strings.Contains(words, "lip off the near edge"):
		_, near, _, _ := s.bounds()
		y -= near
	}
	return regionOutline(r).moved(x, y)
}

func (o outline) moved(x, y float64) outline {
	for _, ring := range o {
		for i := range ring {
			ring[i].X, ring[i].Y = ring[i].X-x, ring[i].Y-y
		}
	}
	return o
}

// off is how far a corner of either outline lies from the other one.
func (o outline) off(q outline) float64 { return max(o.furthest(q), q.furthest(o)) }

func (o outline) furthest(q outline) float64 {
	most := 0.0
	for _, ring := range o {
		for _, p := range ring {
			most = max(most, q.distance(p))
		}
	}
	return most
}

func (o outline) distance(p sf.XY) float64 {
	least := math.Inf(1)
	for _, ring := range o {
		for i, a := range ring {
			least = min(least, toSegment(p, a, ring[(i+1)%len(ring)]))
		}
	}
	return least
}

func toSegment(p, a, b sf.XY) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := 0.0
	if long := dx*dx + dy*dy; long > 0 {
		t = min(1, max(0, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/long))
	}
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}

// agrees says whether neither outline has anything that the other has not, but for slivers thinner than twice the tolerance:
// every point deeper in the one than that lies in the other.
func (o outline) agrees(q outline, tolerance float64) bool {
	return o.off(q) < tolerance || o.deep(q, tolerance) && q.deep(o, tolerance)
}

func (o outline) deep(q outline, tolerance float64) bool {
	wide, deep := 0.0, 0.0
	for _, p := range slices.Concat(o...) {
		wide, deep = max(wide, p.X), max(deep, p.Y)
	}
	for x := 0.0; x <= wide; x += tolerance / 2 {
		for y := 0.0; y <= deep; y += tolerance / 2 {
			p := sf.XY{X: x, Y: y}
			if o.holds(p) && !q.holds(p) && o.distance(p) > tolerance {
				return false
			}
		}
	}
	return true
}

func (o outline) holds(p sf.XY) bool {
	in := false
	for _, ring := range o {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
				in = !in
			}
		}
	}
	return in
}

// A piece made from a whole plank by the words of its cut list alone is the piece of the layout, as near as the tape reads
// and a saw cuts: the cut list is all that one needs.
func TestCutListMakesThePiece(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewSource(31))
	kinds, made := map[string]int{}, 0
	for i := range 400 {
		r := anyRequest(rnd)
		if i%4 == 0 {
			r.Floor, r.Along = aslant(rnd), []Direction{EastWest, NorthSouth, Diagonal}[rnd.Intn(3)]
		}
		tape := []length.Tape{{}, {Parts: 64}, {System: length.Metric}}[i%3]
		l, err := Lay(r)
		require.NoError(t, err)
		law{t, l, ""}.each(func(_ Row, _ Run, p Piece) {
			what := fmt.Sprintf("floor %d: %+v %s %s\nrow %d piece %d of planks %s x %s: %v", i, r.Floor.Plan, l.Along, l.StartWall, p.Row, p.N, r.Plank.Width, r.Plank.Length, said(p, tape))
			s, got := sawn(t, l, p, tape, kinds, what)
			want := s.onPlank(l.Local(p.Shape), said(p, tape))
			require.True(t, want.agrees(got, tolerance(tape)), "%s\n%v\n%v", what, want, got)
			made++
		})
	}
	t.Logf("%d pieces made by %v", made, kinds)
	for _, kind := range []string{"crosscut", "rip", "taper", "angle", "notch", "hole", "lip"} {
		require.Positive(t, kinds[kind], kind)
	}
}

// aslant is a floor of four walls of which none is square to another, and no two nearly so.
func aslant(rnd *rand.Rand) *room.Floor {
	off := func() float64 { return float64(rnd.Intn(16*40)) / 16 }
	w, h := 80+off(), 70+off()
	return gapless([2]float64{off(), off()}, [2]float64{w + off(), off()}, [2]float64{w + off(), h + off()}, [2]float64{off(), h + off()})
}

// tolerance is twice what is too slight to mark and what the tape rounds off.
func tolerance(t length.Tape) float64 { return (2*slight + t.Division()/2).MM() }

func said(p Piece, tape length.Tape) []string {
	var out []string
	for _, c := range p.Cuts {
		out = append(out, c.Text(tape))
	}
	return out
}

// sawn makes a piece as told, and counts the cuts.
func sawn(t *testing.T, l *Layout, p Piece, tape length.Tape, kinds map[string]int, what string) (*sawyer, outline) {
	s := newSawyer(l.Request.Plank.Length, l.Request.Plank.Width)
	for i, words := range said(p, tape) {
		kinds[p.Cuts[i].What]++
		require.True(t, s.do(words), "%s\nnot understood: %s", what, words)
	}
	got, err := s.piece()
	require.NoError(t, err, what)
	return s, got
}
