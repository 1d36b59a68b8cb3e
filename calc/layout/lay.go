package layout

import (
	"errors"
	"fmt"
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// Lay lays the floor. The error says what the plank or the floor lacks, or that the floor is too large to lay out.
func Lay(r Request) (*Layout, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	l := &Layout{Request: r, Along: r.Along}
	if l.Along == "" {
		l.Along = Way(r.Floor, r.StartWall)
	}
	at, why, err := r.startWall(l.Along)
	if err != nil {
		return nil, err
	}
	f := at.frame
	l.Along, l.StartWall = at.way(l.Along), at.wall
	l.From, l.To = f.ends()
	laying := f.floor(r.Floor.Laying)
	area := boxOf(laying)
	fs := faces(r.Floor.Edges, f, area)
	best := r.choose(laying, area, fs)
	l.Bound = best.bound
	l.Why = r.why(at.place()+" as "+why, best)
	r.write(l, f, area, best)
	l.Broken = append(l.Broken, r.narrow(l, best, fs)...)
	return l, nil
}

// MostPieces is the number of planks that a floor may take, about 20 000 square metres of usual planks.
const MostPieces = 100_000

func (r Request) check() error {
	p := r.Plank
	switch {
	case r.Floor == nil || len(r.Floor.Laying) == 0:
		return errors.New("the gaps leave no floor to lay")
	case p.Width <= 0 || p.Length <= 0:
		return errors.New("a layout needs the plank's width and length")
	case p.Length <= r.Rules.Kerf || p.Length < p.Width:
		return fmt.Errorf("a plank %s wide and %s long is no plank to lay", p.Width, p.Length)
	case r.FirstRow > p.Width:
		return fmt.Errorf("a first row of %s is wider than the plank, %s", r.FirstRow, p.Width)
	}
	b := boxOf(r.Floor.Laying)
	if pieces := float64(b.right-b.left) / float64(p.Length) * float64(b.far-b.near) / float64(p.Width); pieces > MostPieces {
		return fmt.Errorf("a floor of about %.0f planks is more than is laid out, %d", pieces, MostPieces)
	}
	return nil
}

// choose tries the first rows and searches the joints of the best of them, until one meets the bound.
func (r Request) choose(laying geom.Region, area box, fs []face) fit {
	var fits []fit
	deep := area.far - area.near
	widths, between := r.firstRows(laying, area, fs)
	for _, first := range widths {
		fits = append(fits, r.fitOf(first, deep, fs))
	}
	slices.SortStableFunc(fits, fit.compare)
	n := 1
	for n < len(fits) && fits[n].compare(fits[0]) == 0 {
		n++
	}
	fits = fits[:n]
	within := slices.DeleteFunc(between, func(s span) bool {
		return r.fitOf((s.lo+s.hi)/2, deep, fs).compare(fits[0]) > 0
	})
	r.prefer(fits, deep)
	return r.contest(fits, within, laying)
}

// prefer puts a whole first row first, where the last is then no sliver; then rows ripped alike; then the widest.
func (r Request) prefer(fits []fit, deep length.Length) {
	w := r.Plank.Width
	rank := func(f fit) int {
		switch {
		case f.first == w || r.FirstRow > 0:
			return 0
		case f.first == f.lastRow:
			return 1
		}
		return 2
	}
	slices.SortStableFunc(fits, func(a, b fit) int {
		if d := rank(a) - rank(b); d != 0 {
			return d
		}
		return int(b.least-a.least) / int(length.Millimetre)
	})
}

// plain says whether every wall is along the rows or square to them.
func plain(r geom.Region) bool {
	for _, ring := range r {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if p.X != q.X && p.Y != q.Y {
				return false
			}
		}
	}
	return true
}
