package layout

// maximise gives an x of the most c·x, where every row of a has a·x at most its b, b is nowhere negative and x is
// nowhere negative: the simplex method on a dense table, ended after a count of pivots. What it gives is used only as
// weights, which make a bound whatever they are.
func maximise(c []float64, a [][]float64, b []float64) []float64 {
	const small, pivots = 1e-9, 200
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
			x[v] = t.cells[i][len(c)]
		}
	}
	return x
}

// table is a condensed simplex table: a row for each basic variable, a column for each other, the last row the costs and
// the last column the right-hand sides. Variables from len(c) on are what the constraints leave.
type table struct {
	cells [][]float64
	basic []int // by row
	free  []int // by column
}

func newTable(c []float64, a [][]float64, b []float64) *table {
	t := &table{basic: make([]int, len(a)), free: make([]int, len(c))}
	for i, row := range a {
		t.cells, t.basic[i] = append(t.cells, append(row[:len(row):len(row)], b[i])), len(c)+i
	}
	costs := make([]float64, len(c)+1)
	for j, v := range c {
		costs[j], t.free[j] = -v, j
	}
	t.cells = append(t.cells, costs)
	return t
}

// entering is the column with the steepest gain, or with the first variable that has any.
func (t *table) entering(small float64, first bool) int {
	costs, best := t.cells[len(t.basic)], -1
	for j, v := range t.free {
		if costs[j] >= -small {
			continue
		}
		if best < 0 || first && v < t.free[best] || !first && costs[j] < costs[best] {
			best = j
		}
	}
	return best
}

// leaving is the row that bounds the column first.
func (t *table) leaving(col int, small float64) int {
	best, least, rhs := -1, 0.0, len(t.free)
	for i := range t.basic {
		if v := t.cells[i][col]; v > small {
			if q := t.cells[i][rhs] / v; best < 0 || q < least-small || q < least+small && t.basic[i] < t.basic[best] {
				best, least = i, q
			}
		}
	}
	return best
}

// pivot exchanges the variable of a row with that of a column.
func (t *table) pivot(row, col int) {
	p := t.cells[row]
	by := p[col]
	p[col] = 1
	for j := range p {
		p[j] /= by
	}
	for i, cells := range t.cells {
		by := cells[col]
		if i == row || by == 0 {
			continue
		}
		cells[col] = 0
		for j, v := range p {
			cells[j] -= by * v
		}
	}
	t.basic[row], t.free[col] = t.free[col], t.basic[row]
}
