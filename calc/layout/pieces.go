package layout

import (
	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// marking is a piece on its plank, while its cuts are worked out. Everything is in the frame.
type marking struct {
	box         // of the piece
	plank       box
	fromRight   bool // its right end is the factory's, so that lengths are measured from there
	first, last bool // it begins, it ends its run
	lip         bool
	nearWall    bool
	angled      [4]bool // by side: an angled cut or a taper stands for the square cut
	chains      []cutLine
	holes       []geom.Ring
}

// cuts lists the cuts of a piece between two places of its row.
func (w *writer) cuts(here geom.Region, s strip, st *stretch, left, right length.Length) []Cut {
	m := marking{box: boxOf(here), first: left <= st.left, last: right >= st.right, lip: w.request.Rules.Lip > 0, nearWall: !st.nearLock}
	m.fromRight = m.first && !m.last
	m.plank = box{near: s.near, far: s.near + w.width, left: m.left, right: m.left + w.supply.plank}
	if st.row == 0 && st.farLock {
		m.plank.near, m.plank.far = s.far-w.width, s.far
	}
	if m.fromRight {
		m.plank.left, m.plank.right = m.right-w.supply.plank, m.right
	}
	for _, ring := range here {
		if doubleArea(ring) < 0 {
			m.holes = append(m.holes, ring)
			continue
		}
		m.chains = append(m.chains, m.cutLines(ring)...)
	}
	return m.list()
}

func (m *marking) list() []Cut {
	var ends, rips, inner []Cut
	for _, c := range m.chains {
		cut := m.name(c)
		switch cut.What {
		case "taper":
			rips = append(rips, cut)
		case "angle":
			ends = append(ends, cut)
		default:
			inner = append(inner, cut)
		}
	}
	for _, h := range m.holes {
		inner = append(inner, m.boxCut("hole", boxOf(geom.Region{h})))
	}
	ends = append(m.crosscuts(), ends...)
	rips = append(m.rips(), rips...)
	return append(append(append(ends, rips...), inner...), m.lips()...)
}

// crosscuts are the square cuts that bring the plank to length.
func (m *marking) crosscuts() []Cut {
	l := m.right - m.left
	if l >= m.plank.right-m.plank.left {
		return nil
	}
	if m.fromRight {
		if m.angled[sideLeft] {
			return nil
		}
		return []Cut{{What: "crosscut", Edge: "right end", Near: l, Far: l}}
	}
	if m.angled[sideRight] {
		return nil
	}
	return []Cut{{What: "crosscut", Edge: "left end", Near: l, Far: l}}
}

// rips are the even cuts along the plank that bring it to width.
func (m *marking) rips() []Cut {
	var out []Cut
	if w := m.far - m.plank.near; m.far < m.plank.far && !m.angled[sideFar] {
		out = append(out, Cut{What: "rip", Edge: "near edge", Near: w, Far: w})
	}
	if w := m.plank.far - m.near; m.near > m.plank.near && !m.angled[sideNear] {
		out = append(out, Cut{What: "rip", Edge: "far edge", Near: w, Far: w})
	}
	return out
}

// lips are the locks' lips cut off where a factory edge goes to a wall.
func (m *marking) lips() []Cut {
	var out []Cut
	if !m.lip {
		return nil
	}
	if m.nearWall && m.near <= m.plank.near && !m.angled[sideNear] {
		out = append(out, Cut{What: "lip", Edge: "near edge"})
	}
	if m.first && m.left <= m.plank.left && !m.angled[sideLeft] {
		out = append(out, Cut{What: "lip", Edge: "left end"})
	}
	return out
}

// boxCut is a cut given by its box: lengths from the piece's left end, widths from the plank's near edge.
func (m *marking) boxCut(what string, b box) Cut {
	return Cut{
		What: what, Edge: "left end, near edge",
		Left: b.left - m.left, Right: b.right - m.left, Bottom: b.near - m.plank.near, Top: b.far - m.plank.near,
	}
}
