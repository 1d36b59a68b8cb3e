package calc

import (
	"fmt"
	"strings"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/term"
)

func init() {
	handlers[term.AskPlan] = plan
	handlers[term.AskCutList] = cutList
	handlers[term.AskRow] = oneRow
	handlers[term.AskPiece] = onePiece
	handlers[term.AskStart] = start
}

func result(l *layout.Layout, lines []string) Result {
	last := l.Rows[len(l.Rows)-1]
	return Result{
		Values: []term.Named{
			{Name: term.Rows, Value: term.Count(len(l.Rows))},
			{Name: term.FirstRowWidth, Value: term.Len(l.Rows[0].Width)},
			{Name: term.LastRowWidth, Value: term.Len(last.Width)},
			{Name: term.Planks, Value: term.Count(l.Planks)},
			{Name: term.StartWall, Value: term.Word(l.StartWall)}, {Name: term.AtCorner, Value: term.Pass(l.AtCorner())},
		},
		Working: lines, Floor: l.Request.Floor, Layout: l,
	}
}

// plan lays the floor.
func plan(in *inputs) (Result, error) {
	l := in.laid()
	if l == nil {
		return Result{}, in.err()
	}
	lines := []string{
		in.startLine(l),
		fmt.Sprintf("rows run from %s to %s; %d rows take %s", l.From, l.To, len(l.Rows), planksText(l)),
	}
	return result(l, append(lines, brokenLines(l)...)), in.err()
}

func (in *inputs) startLine(l *layout.Layout) string {
	at := "along"
	if l.AtCorner() {
		at = "in"
	}
	return fmt.Sprintf("row 1 %s the %s: %s", at, l.Start(), l.Why)
}

func brokenLines(l *layout.Layout) []string {
	var out []string
	for _, b := range l.Broken {
		out = append(out, fmt.Sprintf("%s, %s: %s", b.Rule, b.Where, b.Why))
	}
	return out
}

// cutList lists every piece that is cut, row by row.
func cutList(in *inputs) (Result, error) {
	l := in.laid()
	if l == nil {
		return Result{}, in.err()
	}
	var lines []string
	for _, row := range l.Rows {
		for _, run := range row.Runs {
			for _, p := range run.Pieces {
				if !p.Whole {
					lines = append(lines, in.pieceLine(l, p))
				}
			}
		}
	}
	return result(l, append(lines, brokenLines(l)...)), in.err()
}

// oneRow gives one row's pieces.
func oneRow(in *inputs) (Result, error) {
	n := need[term.Count](in, term.Row)
	l := in.laid()
	if l == nil {
		return Result{}, in.err()
	}
	row := in.rowOf(l, int64(n))
	if row == nil {
		return Result{}, in.err()
	}
	r := Result{
		Values: []term.Named{{Name: term.Row, Value: n}, {Name: term.Width, Value: term.Len(row.Width)}},
		Floor:  l.Request.Floor, Layout: l,
	}
	var lens term.Lens
	for _, run := range row.Runs {
		for _, p := range run.Pieces {
			lens = append(lens, p.Right-p.Left)
			r.Working = append(r.Working, in.pieceLine(l, p))
		}
	}
	r.Values = append(r.Values, term.Named{Name: term.Pieces, Value: lens})
	return r, in.err()
}

func (in *inputs) rowOf(l *layout.Layout, n int64) *layout.Row {
	if n < 1 || n > int64(len(l.Rows)) {
		in.refuse("there is no row %d: rows are 1 to %d", n, len(l.Rows))
		return nil
	}
	return &l.Rows[n-1]
}

// onePiece gives one piece with its cuts.
func onePiece(in *inputs) (Result, error) {
	n, row := need[term.Count](in, term.Piece), need[term.Count](in, term.Row)
	l := in.laid()
	if l == nil {
		return Result{}, in.err()
	}
	at := in.rowOf(l, int64(row))
	if at == nil {
		return Result{}, in.err()
	}
	var pieces []layout.Piece
	for _, run := range at.Runs {
		pieces = append(pieces, run.Pieces...)
	}
	if n < 1 || int(n) > len(pieces) {
		in.refuse("row %d has no piece %d: pieces are 1 to %d", int64(row), int64(n), len(pieces))
		return Result{}, in.err()
	}
	p := pieces[n-1]
	return Result{
		Values: []term.Named{
			{Name: term.Row, Value: row}, {Name: term.Piece, Value: n},
			{Name: term.Length, Value: term.Len(p.Right - p.Left)}, {Name: term.Width, Value: term.Len(at.Width)},
		},
		Working: []string{in.pieceLine(l, p)}, Floor: l.Request.Floor, Layout: l,
	}, in.err()
}

// pieceLine says what a piece is and how it is cut.
func (in *inputs) pieceLine(l *layout.Layout, p layout.Piece) string {
	parts := []string{fmt.Sprintf("row %d piece %d, %s long", p.Row, p.N, in.text(p.Right-p.Left))}
	switch {
	case p.Offcut:
		parts = append(parts, "from the offcut of "+in.maker(l, p))
	case p.Whole:
		parts = append(parts, "a whole plank")
	default:
		parts = append(parts, "from a new plank")
	}
	for _, c := range p.Cuts {
		parts = append(parts, c.Text(in.tape))
	}
	if p.Trapped != "" {
		parts = append(parts, p.Trapped+": "+p.WayIn)
	}
	return strings.Join(parts, "; ")
}

// maker names the piece that left the offcut, or tells the length of one that was at hand.
func (in *inputs) maker(l *layout.Layout, p layout.Piece) string {
	s := l.Stock[p.Plank]
	first := s.Pieces[0]
	if s.Scrap > 0 && first == (layout.Ref{Row: p.Row, N: p.N}) {
		return in.text(s.Scrap)
	}
	return fmt.Sprintf("row %d piece %d", first.Row, first.N)
}

// start says which wall to begin at and how wide the first row is.
func start(in *inputs) (Result, error) {
	width := in.needLength(term.PlankWidth)
	floor := in.floor()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	p := in.plankOr(width)
	l := in.lay(floor, p)
	if l == nil {
		return Result{}, in.err()
	}
	r := result(l, append([]string{in.startLine(l)}, brokenLines(l)...))
	r.Values = []term.Named{r.Values[4], r.Values[5], r.Values[1], r.Values[2]}
	if !in.has(term.PlankLength) {
		r.Layout = nil
	}
	return r, in.err()
}

// usualLengths is how many times longer than wide a plank is taken to be, where only its width is known and its length
// does not matter.
const usualLengths = 6

func (in *inputs) plankOr(width length.Length) (p plank.Plank) {
	p.Width, p.Length = width, usualLengths*width
	if l, ok := in.length(term.PlankLength); ok {
		p.Length = l
	}
	return p
}
