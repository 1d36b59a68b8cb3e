package layout

import "lastrow/calc/length"

// lock says which factory locks a piece of plank has at its ends. An end left of a cut either way has one of the two,
// whichever is wanted.
type lock uint8

const (
	leftEnd lock = 1 << iota
	rightEnd
	eitherEnd
)

// offcut is what a piece left of its plank, kept for a later one. A strip is narrower than the plank, and has one of
// its long edges' locks.
type offcut struct {
	len   length.Length
	width length.Length // of a strip; 0 for the plank's whole width
	ends  lock
	near  bool // of a strip: it has the near edge's lock, else the far edge's
}

// want is a piece to be found.
type want struct {
	len       length.Length
	width     length.Length // 0 for the whole width
	ends      lock
	near, far bool
}

// gives says whether an offcut can give a piece.
func (o offcut) gives(w want) bool {
	if o.len < w.len {
		return false
	}
	if o.width > 0 && (w.width == 0 || w.width > o.width || w.near && !o.near || w.far && o.near) {
		return false
	}
	return o.ends&w.ends == w.ends || o.ends&eitherEnd != 0 && w.ends != leftEnd|rightEnd
}

// stock is the planks taken so far and the offcuts kept of them.
type stock struct {
	planks int
	cuts   int
	kept   []offcut
}

// supply is what a search keeps to for every piece.
type supply struct {
	plank, width, kerf length.Length
	mark               length.Length // first pieces are whole numbers of it where they may
	shortest           length.Length // of an offcut worth keeping
	strip              length.Length // the narrowest strip that another piece could use; 0 for none
	most               int           // offcuts kept
}

// take finds the piece in the kept offcuts, the smallest that gives it, or opens a plank.
func (p *supply) take(s *stock, w want) {
	best := -1
	for i, o := range s.kept {
		if o.gives(w) && (best < 0 || o.better(s.kept[best])) {
			best = i
		}
	}
	o := offcut{len: p.plank, ends: leftEnd | rightEnd}
	if best >= 0 {
		o = s.kept[best]
		s.kept = append(s.kept[:best], s.kept[best+1:]...)
	} else {
		s.planks++
	}
	p.rest(s, o, w)
}

// better prefers strips, then the offcut that is shorter, then the one that has lain longer.
func (o offcut) better(than offcut) bool {
	if (o.width > 0) != (than.width > 0) {
		return o.width > 0
	}
	return o.len < than.len
}

// rest cuts the piece from the offcut and keeps what is left.
func (p *supply) rest(s *stock, o offcut, w want) {
	if o.len > w.len {
		s.cuts++
		p.keep(s, offcut{len: o.len - w.len - p.kerf, width: o.width, near: o.near, ends: o.ends.after(w.ends, o.len == p.plank)})
	}
	if o.width == 0 && w.width > 0 {
		s.cuts++
		if w.near != w.far && p.strip > 0 {
			p.keep(s, offcut{len: w.len, width: p.width - w.width - p.kerf, near: w.far, ends: w.ends})
		}
	}
}

// after gives the locks that remain when a piece is cut off an offcut, or off a whole plank.
func (l lock) after(taken lock, whole bool) lock {
	switch {
	case l&eitherEnd != 0 && taken == 0:
		return eitherEnd
	case l&eitherEnd != 0:
		return 0
	case taken == 0 && whole:
		return eitherEnd
	}
	return l &^ taken
}

// keep puts an offcut by, if it is worth it.
func (p *supply) keep(s *stock, o offcut) {
	if o.len < p.shortest || o.width < 0 || o.width > 0 && o.width < p.strip {
		return
	}
	s.kept = append(s.kept, o)
	if len(s.kept) <= p.most {
		return
	}
	least := 0
	for i, k := range s.kept {
		if k.len < s.kept[least].len {
			least = i
		}
	}
	s.kept = append(s.kept[:least], s.kept[least+1:]...)
}

// run takes every piece of one run: the first piece long as told, whole planks, and what is left for the last. A run
// no longer than a plank is one piece.
func (p *supply) run(s *stock, st *stretch, first length.Length) {
	w := want{near: st.nearLock, far: st.farLock}
	if st.width() < p.width {
		w.width = st.width()
	}
	get := func(l length.Length, ends lock) {
		w.len, w.ends = l, ends
		p.take(s, w)
	}
	if first >= st.len() {
		get(st.len(), 0)
		return
	}
	get(first, rightEnd)
	n := wholes(st.len(), p.plank, first)
	if w.width == 0 {
		s.planks += n
	} else {
		for range n {
			get(p.plank, leftEnd|rightEnd)
		}
	}
	get(lastPiece(st.len(), p.plank, first), leftEnd)
}
