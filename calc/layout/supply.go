package layout

import "lastrow/calc/length"

// lock says which factory locks a piece of plank has at its ends.
type lock uint8

const (
	leftEnd lock = 1 << iota
	rightEnd
)

// supply is what pieces come from.
type supply struct {
	plank, width, kerf length.Length
	mark               length.Length // first pieces are whole numbers of it where they may
	strip              length.Length // the narrowest strip that another piece could use; 0 for none
}

// supply sets up what pieces come from.
func (r Request) supply(runs []stretch) supply {
	p := supply{plank: r.Plank.Length, width: r.Plank.Width, kerf: r.Rules.Kerf, mark: max(1, r.Mark)}
	narrowest := length.Length(0)
	for _, s := range runs {
		if s.width() < p.width && s.nearLock != s.farLock && (narrowest == 0 || s.width() < narrowest) {
			narrowest = s.width()
		}
	}
	if narrowest > 0 && 2*narrowest+p.kerf <= p.width {
		p.strip = narrowest
	}
	return p
}

// shares says whether a strip ripped off one run's plank is wide enough for another's piece.
func (p *supply) shares(ripped, other stretch) bool {
	return ripped.farLock && !ripped.nearLock && other.nearLock && !other.farLock && ripped.width()+other.width()+p.kerf <= p.width
}

// between is the distance between the joints of two runs, by their first pieces; a plank where either has none.
func (p *supply) between(runs []stretch, i int, first length.Length, j int, other length.Length) length.Length {
	x, y := &runs[i], &runs[j]
	if first >= x.len() || other >= y.len() {
		return p.plank
	}
	return apart(x.left+first, x.right-lastPiece(x.len(), p.plank, first), y.left+other, y.right-lastPiece(y.len(), p.plank, other), p.plank)
}
