package layout

import (
	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// marking is a piece on its plank, while its cuts are worked out. Everything is in the frame.
type marking struct {
	box          // of the piece
	plank        box
	right0, far0 bool // lengths are measured from the plank's right end, widths from its far edge: those stay the factory's
	first, last  bool // it begins, it ends its run
	lip          bool
	nearWall     bool
	gone         [4]bool // by side: a straight cut takes it off whole
	chains       []cutLine
	parted       bool        // it hangs together by less than can be marked, or not at all
	voids        []geom.Ring // taken out between the parts of it
	holes        []geom.Ring
	pipes        []pipe
}

// cuts lists the cuts of a piece between two places of its row.
func (w *writer) cuts(here geom.Region, s strip, st *stretch, left, right length.Length) []Cut {
	m := marking{box: boxOf(here), first: left <= st.left, last: right >= st.right, lip: w.request.Rules.Lip > 0, nearWall: !st.nearLock, pipes: w.pipes}
	m.outline(here)
	for _, c := range m.chains {
		if side, ok := m.takes(c).through(c); ok {
			m.gone[side] = true
		}
	}
	m.place(w.supply.plank, w.width, s, st)
	return m.list()
}

// outline finds the cut lines and the holes. A piece in parts, that something standing in the floor cuts off from each
// other, is what is left round the figures taken out between them.
func (m *marking) outline(here geom.Region) {
	outer := 0
	for _, ring := range here {
		if doubleArea(ring) < 0 {
			m.holes = append(m.holes, ring)
			continue
		}
		outer++
		m.chains = append(m.chains, m.cutLines(ring)...)
	}
	if outer == 1 && !m.parted {
		return
	}
	m.chains, m.holes = nil, nil
	for _, o := range (geom.Region{m.ring()}).Less(here) {
		m.voids = append(m.voids, o.Ring)
	}
}

// place puts the piece on its plank and chooses the end and the edge to measure from.
func (m *marking) place(long, wide length.Length, s strip, st *stretch) {
	m.right0 = m.first && (!m.last || m.gone[sideLeft] && !m.gone[sideRight])
	m.plank = box{near: s.near, far: s.near + wide, left: m.left, right: m.left + long}
	if st.row == 0 && st.farLock {
		m.plank.near, m.plank.far = s.far-wide, s.far
	}
	if m.right0 {
		m.plank.left, m.plank.right = m.box.right-long, m.box.right
	}
	m.far0 = m.cutNear() && !m.cutFar()
}

func (m *marking) cutNear() bool { return m.near > m.plank.near || m.gone[sideNear] }
func (m *marking) cutFar() bool  { return m.far < m.plank.far || m.gone[sideFar] }

// along is how far along the plank a place lies, from the end to measure from; across is how far across.
func (m *marking) along(x length.Length) length.Length {
	if m.right0 {
		return m.plank.right - x
	}
	return x - m.plank.left
}

func (m *marking) across(y length.Length) length.Length {
	if m.far0 {
		return m.plank.far - y
	}
	return y - m.plank.near
}

func (m *marking) end() string {
	if m.right0 {
		return sideNames[sideRight]
	}
	return sideNames[sideLeft]
}

func (m *marking) edge() string {
	if m.far0 {
		return sideNames[sideFar]
	}
	return sideNames[sideNear]
}

// list lists the cuts in the order of sawing: those to size, those at an angle, then what is cut out of the piece.
func (m *marking) list() []Cut {
	var tapers, ends, corners, inner []Cut
	for _, c := range m.chains {
		switch cut := m.name(c); {
		case cut.What == "taper":
			tapers = append(tapers, cut)
		case cut.What == "angle" && len(cut.Marks) == 0:
			ends = append(ends, cut)
		case cut.What == "angle":
			corners = append(corners, cut)
		default:
			inner = append(inner, cut)
		}
	}
	for _, h := range m.holes {
		inner = append(inner, m.hole(h))
	}
	for _, v := range m.voids {
		cut := m.boxCut("notch", boxOf(geom.Region{v}))
		cut.Marks = m.marks(v)
		inner = append(inner, cut)
	}
	out := append(m.rips(), m.crosscuts()...)
	for _, more := range [][]Cut{ends, tapers, corners, inner, m.lips()} {
		out = append(out, more...)
	}
	return out
}

// crosscuts are the square cuts that bring the plank to length.
func (m *marking) crosscuts() []Cut {
	l, off := m.right-m.left, sideRight
	if m.right0 {
		off = sideLeft
	}
	if l >= m.plank.right-m.plank.left || m.gone[off] {
		return nil
	}
	return []Cut{{What: "crosscut", Edge: m.end(), Off: sideNames[off], Near: l, Far: l}}
}

// rips are the even cuts along the plank that bring it to width.
func (m *marking) rips() []Cut {
	var out []Cut
	add := func(y length.Length, off int) {
		out = append(out, Cut{What: "rip", Edge: m.edge(), Off: sideNames[off], Near: m.across(y), Far: m.across(y)})
	}
	if m.far < m.plank.far && !m.gone[sideFar] {
		add(m.far, sideFar)
	}
	if m.near > m.plank.near && !m.gone[sideNear] {
		add(m.near, sideNear)
	}
	return out
}

// lips are the locks' lips cut off where a factory edge goes to a wall.
func (m *marking) lips() []Cut {
	var out []Cut
	if !m.lip {
		return nil
	}
	if m.nearWall && !m.cutNear() {
		out = append(out, Cut{What: "lip", Edge: "near edge", Off: "near edge"})
	}
	if m.first && m.left <= m.plank.left && !m.gone[sideLeft] {
		out = append(out, Cut{What: "lip", Edge: "left end", Off: "left end"})
	}
	return out
}

// name says what a cut line is and how to mark it.
func (m *marking) name(c cutLine) Cut {
	t := m.takes(c)
	if side, ok := t.through(c); ok {
		p, q := c.points[0], c.points[1]
		if side == sideFar || side == sideLeft {
			p, q = q, p
		}
		if side == sideNear || side == sideFar {
			return m.taper(side, p, q)
		}
		return m.angle(side, p, q)
	}
	cut := m.boxCut("notch", boxOf(geom.Region{c.points}))
	cut.Off = m.off(c, t)
	if len(c.points) == 2 && len(t.corners) == 1 {
		cut.What = "angle"
	}
	if len(c.points) == 2 || !m.boxed(c, t) {
		cut.Marks = m.marks(c.points)
	}
	return cut
}

// angle is a cut across the plank, by where it meets the near and the far edge, as the even rips leave them. Where it would
// meet one beyond the plank's end, the points where it meets the piece are joined.
func (m *marking) angle(side int, near, far geom.Point) Cut {
	y0, y1 := m.near, m.far
	if m.gone[sideNear] {
		y0 = m.plank.near
	}
	if m.gone[sideFar] {
		y1 = m.plank.far
	}
	c := Cut{What: "angle", Edge: m.end(), Off: sideNames[side]}
	c.Near = m.along(between(near.Y, near.X, far.Y, far.X, y0))
	c.Far = m.along(between(near.Y, near.X, far.Y, far.X, y1))
	if min(c.Near, c.Far) < 0 || max(c.Near, c.Far) > m.plank.right-m.plank.left {
		c = m.boxCut("angle", boxOf(geom.Region{{near, far}}))
		c.Off, c.Marks = sideNames[side], m.marks(geom.Ring{near, far})
	}
	return c
}

// taper is a cut along the plank, by the points where it meets the left and the right side of the piece.
func (m *marking) taper(side int, left, right geom.Point) Cut {
	c := Cut{What: "taper", Edge: m.edge(), Off: sideNames[side], Near: m.across(left.Y), Far: m.across(right.Y)}
	if m.gone[sideLeft] && m.left > m.plank.left {
		c.Left = m.plank.right - m.left
	}
	if m.gone[sideRight] && m.right < m.plank.right {
		c.Right = m.right - m.plank.left
	}
	return c
}

func (m *marking) marks(points geom.Ring) []geom.Point {
	var out []geom.Point
	for _, p := range points {
		out = append(out, geom.Point{X: m.along(p.X), Y: m.across(p.Y)})
	}
	return out
}

// boxCut is a cut given by its box.
func (m *marking) boxCut(what string, b box) Cut {
	x, y := []length.Length{m.along(b.left), m.along(b.right)}, []length.Length{m.across(b.near), m.across(b.far)}
	return Cut{
		What: what, Edge: m.end() + ", " + m.edge(),
		Left: min(x[0], x[1]), Right: max(x[0], x[1]), Bottom: min(y[0], y[1]), Top: max(y[0], y[1]),
	}
}

// hole is a hole round something that stands in the piece: drilled for a pipe.
func (m *marking) hole(ring geom.Ring) Cut {
	b := boxOf(geom.Region{ring})
	for _, p := range m.pipes {
		if b.left <= p.centre.X && p.centre.X <= b.right && b.near <= p.centre.Y && p.centre.Y <= b.far {
			r := p.wide / 2
			c := m.boxCut("hole", box{p.centre.X - r, p.centre.X + r, p.centre.Y - r, p.centre.Y + r})
			c.Round = true
			return c
		}
	}
	c := m.boxCut("hole", b)
	if !plain(geom.Region{ring}) {
		c.Marks = m.marks(ring)
	}
	return c
}
