package geom

// Source is the edge that a piece of outline came from: the edge that begins at a point of a ring. Rings count through the
// region's, then through those taken off it.
type Source struct{ Ring, Edge int }

// Outline is a ring that knows where each of its edges came from: From[i] is that of the edge that begins at point i.
type Outline struct {
	Ring Ring
	From []Source
}

// Less takes figures off the region: what is left is inside it and inside none of them, whatever overlaps or touches what.
// Outer outlines run anticlockwise and holes clockwise; parts that touch at a point alone are kept apart. Along the axes it
// is exact; a crossing of a slanted edge is rounded to the nanometre.
func (r Region) Less(figures []Ring) []Outline {
	var edges []edge
	for k, ring := range r {
		edges = append(edges, edgesOf(ring, k, false)...)
	}
	for k, ring := range figures {
		edges = append(edges, edgesOf(ring, len(r)+k, true)...)
	}
	return trace(border(bundles(divide(edges))))
}

// edge is a directed edge held with its west end, or its south end where it is upright, first. Way is +1 where it runs so, else -1.
type edge struct {
	a, b Point
	way  int
	off  bool // of a figure to take off
	from Source
}

// edgesOf gives the edges of a ring; a figure to take off counts as anticlockwise, whichever way it runs.
func edgesOf(ring Ring, k int, off bool) []edge {
	turn := 1
	if off && !ring.Anticlockwise() {
		turn = -1
	}
	edges := make([]edge, 0, len(ring))
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		e := edge{p, q, turn, off, Source{k, i}}
		if before(q, p) {
			e.a, e.b, e.way = q, p, -turn
		}
		if p != q {
			edges = append(edges, e)
		}
	}
	return edges
}

// before orders points from west to east, then from south to north.
func before(p, q Point) bool { return p.X < q.X || p.X == q.X && p.Y < q.Y }

// bundle is every edge that lies between the same two points.
type bundle struct {
	a, b      Point
	keep, off int // how many times more the left of a to b lies within the region, and within the figures, than the right
	from      Source
}

// bundles gathers edges that have come to lie on each other, in the order in which they first come.
func bundles(edges []edge) []bundle {
	at := map[[2]Point]int{}
	var out []bundle
	for _, e := range edges {
		k, known := at[[2]Point{e.a, e.b}]
		if !known {
			k = len(out)
			at[[2]Point{e.a, e.b}] = k
			out = append(out, bundle{a: e.a, b: e.b, from: e.from})
		}
		if e.off {
			out[k].off += e.way
		} else {
			out[k].keep += e.way
		}
	}
	return out
}

// Cuts says whether any part of the region lies within the figures.
func (r Region) Cuts(figures []Ring) bool {
	var left Region
	for _, o := range r.Less(figures) {
		left = append(left, o.Ring)
	}
	return left.Area().Cmp(r.Area()) != 0
}
