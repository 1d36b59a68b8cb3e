package layout

// maximise gives an x of the most c·x, where every row of a has a·x at most its b, b is nowhere negative and x is
// nowhere negative: the simplex method on a dense table, ended after a count of pivots. What it gives is used only as
// weights, which make a bound whatever they are.
func maximise(c []float64, a [][]float64, b []float64) []float64 {
	const small, pivots = 1e-9, 400
	t := newTable(c, a, b)
	for n := range pivots {
		col := t.entering(small, n > pivots/2)
		if col < 0 {
			break
		}
		row := t.leaving(col, small)
		if row < 0 {
			break
		}
		t.pivot(row, col)
	}
	x := make([]float64, len(c))
	for i, v := range t.basic {
		if v < len(c) {
			x[v] = t.cells[i][t.width]
		}
	}
	return x
}

// table is a simplex table: a row for each constraint, the last row the costs, the last column the right-hand sides.
type table struct {
	cells [][]float64
	basic []int
	width int
}

func newTable(c []float64, a [][]float64, b []float64) *table {
	t := &table{width: len(c) + len(a), basic: make([]int, len(a))}
	for i, row := range a {
		cells := make([]float64, t.width+1)
		copy(cells, row)
		cells[len(c)+i], cells[t.width] = 1, b[i]
		t.cells, t.basic[i] = append(t.cells, cells), len(c)+i
	}
	costs := make([]float64, t.width+1)
	for i, v := range c {
		costs[i] = -v
	}
	t.cells = append(t.cells, costs)
	return t
}

// entering is the column with the steepest gain, or the first with any.
func (t *table) entering(small float64, first bool) int {
	costs, best := t.cells[len(t.basic)], -1
	for j := range t.width {
		if costs[j] < -small && (best < 0 || costs[j] < costs[best]) {
			best = j
			if first {
				break
			}
		}
	}
	return best
}

// leaving is the row that bounds the column first.
func (t *table) leaving(col int, small float64) int {
	best, least := -1, 0.0
	for i := range t.basic {
		if v := t.cells[i][col]; v > small {
			if q := t.cells[i][t.width] / v; best < 0 || q < least-small || q < least+small && t.basic[i] < t.basic[best] {
				best, least = i, q
			}
		}
	}
	return best
}

func (t *table) pivot(row, col int) {
	p := t.cells[row]
	by := p[col]
	for j := range p {
		p[j] /= by
	}
	for i, cells := range t.cells {
		if by := cells[col]; i != row && by != 0 {
			for j, v := range p {
				cells[j] -= by * v
			}
		}
	}
	t.basic[row] = col
}
