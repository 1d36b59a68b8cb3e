package geom

import (
	"slices"

	"lastrow/calc/length"
)

// rectilinear says whether every edge lies along an axis.
func (r Region) rectilinear() bool {
	for _, ring := range r {
		for i, a := range ring {
			if b := ring[(i+1)%len(ring)]; a.X != b.X && a.Y != b.Y {
				return false
			}
		}
	}
	return true
}

// grid is the plane parted at every coordinate that matters: a cell is kept or not.
type grid struct {
	xs, ys []length.Length
	keep   [][]bool // by column, then row
}

// lessBands takes the bands of a rectilinear region off it, exactly, whatever runs into what: the region's cells, less
// those of each band and of the square where two bands meet round an outside corner.
func (r Region) lessBands(gaps [][]length.Length) Region {
	boxes := r.bands(gaps)
	g := newGrid(r, boxes)
	g.fill(r)
	for _, b := range boxes {
		g.clear(b)
	}
	return g.outline()
}

// bands gives the boxes that the gaps take, each by two opposite corners.
func (r Region) bands(gaps [][]length.Length) [][2]Point {
	var boxes [][2]Point
	for k, ring := range r {
		n := len(ring)
		for i, a := range ring {
			b, c := ring[(i+1)%n], ring[(i+2)%n]
			e, f := newOffset(a, b, gaps[k][i]), newOffset(b, c, gaps[k][(i+1)%n])
			boxes = append(boxes, [2]Point{a, e.moved(b)})
			if Orient(a, b, c) < 0 {
				p, q := e.moved(b), f.moved(b)
				boxes = append(boxes, [2]Point{b, {p.X + q.X - b.X, p.Y + q.Y - b.Y}})
			}
		}
	}
	return boxes
}

func newGrid(r Region, boxes [][2]Point) *grid {
	var g grid
	for _, ring := range r {
		for _, p := range ring {
			g.xs, g.ys = append(g.xs, p.X), append(g.ys, p.Y)
		}
	}
	for _, b := range boxes {
		g.xs, g.ys = append(g.xs, b[0].X, b[1].X), append(g.ys, b[0].Y, b[1].Y)
	}
	slices.Sort(g.xs)
	slices.Sort(g.ys)
	g.xs, g.ys = slices.Compact(g.xs), slices.Compact(g.ys)
	g.keep = make([][]bool, len(g.xs)-1)
	for i := range g.keep {
		g.keep[i] = make([]bool, len(g.ys)-1)
	}
	return &g
}

func (g *grid) column(x length.Length) int { i, _ := slices.BinarySearch(g.xs, x); return i }
func (g *grid) row(y length.Length) int    { i, _ := slices.BinarySearch(g.ys, y); return i }

// fill keeps the cells inside the region: each upright edge turns over all cells to the east of it.
func (g *grid) fill(r Region) {
	for _, ring := range r {
		for k, a := range ring {
			b := ring[(k+1)%len(ring)]
			if a.X != b.X {
				continue
			}
			for i := g.column(a.X); i < len(g.keep); i++ {
				for j := g.row(min(a.Y, b.Y)); j < g.row(max(a.Y, b.Y)); j++ {
					g.keep[i][j] = !g.keep[i][j]
				}
			}
		}
	}
}

func (g *grid) clear(box [2]Point) {
	for i := g.column(min(box[0].X, box[1].X)); i < g.column(max(box[0].X, box[1].X)); i++ {
		for j := g.row(min(box[0].Y, box[1].Y)); j < g.row(max(box[0].Y, box[1].Y)); j++ {
			g.keep[i][j] = false
		}
	}
}

func (g *grid) kept(i, j int) bool {
	return i >= 0 && j >= 0 && i < len(g.keep) && j < len(g.keep[i]) && g.keep[i][j]
}

// node is a corner of the grid, by column and row.
type node struct{ i, j int }

// outline walks round the kept cells with them on the left. Where two cells touch at a corner alone it keeps them apart.
func (g *grid) outline() Region {
	from := map[node][]node{}
	var starts []node
	edge := func(a, b node) {
		from[a] = append(from[a], b)
		starts = append(starts, a)
	}
	for i := range g.keep {
		for j := range g.keep[i] {
			if g.keep[i][j] {
				g.sides(i, j, edge)
			}
		}
	}
	var out Region
	for _, s := range starts {
		if len(from[s]) > 0 {
			out = append(out, g.walk(s, from).Tidy())
		}
	}
	return out
}

// sides tells the sides of a cell that face one not kept.
func (g *grid) sides(i, j int, edge func(a, b node)) {
	if !g.kept(i, j-1) {
		edge(node{i, j}, node{i + 1, j})
	}
	if !g.kept(i+1, j) {
		edge(node{i + 1, j}, node{i + 1, j + 1})
	}
	if !g.kept(i, j+1) {
		edge(node{i + 1, j + 1}, node{i, j + 1})
	}
	if !g.kept(i-1, j) {
		edge(node{i, j + 1}, node{i, j})
	}
}

// walk follows edges from a node until it is back, turning left where it may go two ways, and uses them up.
func (g *grid) walk(start node, from map[node][]node) Ring {
	var ring Ring
	at, came := start, node{}
	for {
		ring = append(ring, Point{g.xs[at.i], g.ys[at.j]})
		next := 0
		if ways := from[at]; len(ways) == 2 && (came.i*(ways[1].j-at.j)-came.j*(ways[1].i-at.i)) > 0 {
			next = 1
		}
		to := from[at][next]
		from[at] = slices.Delete(from[at], next, next+1)
		came, at = node{to.i - at.i, to.j - at.j}, to
		if at == start {
			return ring
		}
	}
}
