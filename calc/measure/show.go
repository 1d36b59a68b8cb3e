package measure

import (
	"fmt"
	"math/big"
	"strings"

	"lastrow/calc/length"
)

// whole rounds half away from zero to a whole number of nanometres, their squares or cubes.
func (q Quantity) whole() *big.Int {
	n, d := new(big.Int).Abs(q.Value.Num()), q.Value.Denom()
	n.Lsh(n, 1).Add(n, d).Div(n, new(big.Int).Lsh(d, 1))
	if q.Value.Sign() < 0 {
		n.Neg(n)
	}
	return n
}

// Length is the value as a length, to the nanometre. Eval has bounded it.
func (q Quantity) Length() length.Length { return length.Length(q.whole().Int64()) }

// Area is the value as an area.
func (q Quantity) Area() length.Area { return length.AreaOf(q.whole()) }

// Volume is the value as a volume.
func (q Quantity) Volume() length.Volume { return length.VolumeOf(q.whole()) }

// Text is the value in the unit asked for, or on the tape.
func (q Quantity) Text(t length.Tape) string {
	switch {
	case q.In.Known():
		return q.In.Show(q)
	case q.Dim == Long:
		return about(t, q.Length())
	case q.Dim == Flat:
		return t.Area(q.Area())
	case q.Dim == Solid:
		return t.Volume(q.Volume())
	}
	return number(q.Value)
}

// about shows a length as finely as a tape of its system can, and says where that is not all of it.
func about(t length.Tape, l length.Length) string {
	for _, parts := range []int64{t.Parts, 64} {
		fine := length.Tape{System: t.System, Parts: parts}
		if t.System == length.Metric && parts == 64 {
			fine.Parts = 10000
		}
		if fine.Round(l) == l {
			return fine.Text(l)
		}
	}
	return "about " + t.Text(l)
}

func number(v *big.Rat) string {
	text := v.FloatString(4)
	if v.IsInt() {
		return v.Num().String()
	}
	text = strings.TrimRight(text, "0")
	if exact, ok := new(big.Rat).SetString(text); ok && exact.Cmp(v) == 0 {
		return text
	}
	return "about " + strings.TrimRight(text, ".")
}

// maxSteps is as many steps as anyone would follow with a pencil.
const maxSteps = 12

// Steps is the arithmetic, an operation a line, on the tape. Eval must have accepted the tree.
func Steps(e Expr, t length.Tape) []string {
	var lines []string
	n := 0
	eval(e, func(e Expr, parts []Quantity, q Quantity) {
		if e.level() == 0 {
			return
		}
		if n++; n <= maxSteps {
			lines = append(lines, step(e, parts, t)+" = "+q.Text(t))
		}
	})
	if n > maxSteps {
		lines = append(lines, fmt.Sprintf("and %d more steps the same way", n-maxSteps))
	}
	return lines
}

// step is one operation with its parts as values.
func step(e Expr, parts []Quantity, t length.Tape) string {
	var texts []string
	for i, p := range e.parts() {
		if p.level() == 0 {
			texts = append(texts, p.String())
		} else {
			texts = append(texts, parts[i].Text(t))
		}
	}
	switch e := e.(type) {
	case Part:
		return partWord(e.Of) + " of " + texts[0]
	case Binary:
		sign := string(e.Op)
		if e.Op == Mul {
			sign = "x"
		}
		return texts[0] + " " + sign + " " + texts[1]
	}
	return texts[0]
}
