package sheet

// Placer keeps labels apart: it knows what is taken on a sheet, and gives a label the first free place of those it may have.
type Placer struct {
	area  Box
	cells map[Point][]Box
}

// cell is the side of the squares that taken boxes are kept by, so that a look is at a few near ones alone.
const cell = 96

// apart is the least space between two labels.
const apart = 3

// NewPlacer gives a placer for labels that must lie in an area.
func NewPlacer(area Box) *Placer {
	return &Placer{area: area, cells: map[Point][]Box{}}
}

// Take marks a box as taken.
func (p *Placer) Take(b Box) {
	for y := floorDiv(b.Y0, cell); y <= floorDiv(b.Y1, cell); y++ {
		for x := floorDiv(b.X0, cell); x <= floorDiv(b.X1, cell); x++ {
			p.cells[Point{x, y}] = append(p.cells[Point{x, y}], b)
		}
	}
}

// Free says whether a box lies in the area and touches nothing taken.
func (p *Placer) Free(b Box) bool {
	if !b.Within(p.area) {
		return false
	}
	b = b.Grow(apart)
	for y := floorDiv(b.Y0, cell); y <= floorDiv(b.Y1, cell); y++ {
		for x := floorDiv(b.X0, cell); x <= floorDiv(b.X1, cell); x++ {
			for _, taken := range p.cells[Point{x, y}] {
				if b.Meets(taken) {
					return false
				}
			}
		}
	}
	return true
}

// Place takes the first of some places that is free for a text, and gives the text there.
func (p *Placer) Place(candidates ...Text) (Text, bool) {
	for _, t := range candidates {
		if b := t.Box(); p.Free(b) {
			p.Take(b)
			return t, true
		}
	}
	return Text{}, false
}

// Centred gives a text with its middle at a point.
func (t Text) Centred(at Point) Text {
	b := t.Box()
	t.At = Point{at.X - b.W()/2, at.Y - b.H()/2}
	return t
}
