// Package measure works out sums of lengths, areas, volumes and plain numbers, exactly: 7 5/8 in * 18, half of 92 1/2 in,
// 18 sq m in sq ft.
//
// An Expr is a tree; Eval gives its value and String its canonical text. Lengths are in nanometres, areas and volumes in
// their squares and cubes. Nothing is rounded before the end. It knows no floors.
//
// In the canonical text a length always has a unit and a plain number never; a slash between spaces divides, one without
// is a fraction; "half of" and "3/8 of" bind more tightly than * and /, those more tightly than + and -, "in feet" least.
package measure

import "lastrow/calc/length"

// Expr is one of the nodes below. Only these implement it.
type Expr interface {
	String() string
	level() int // how loosely it binds: 0 a leaf, 1 a product, 2 a sum, 3 a conversion
	parts() []Expr
}

type (
	// Number is a plain number, in lowest terms; Num makes one.
	Number struct{ length.Number }
	// Len is a length, and the system it was said in.
	Len struct {
		Len    length.Length
		System length.System
	}
	// Amount is so many of a unit: 18 square metres. Its number is in lowest terms; Of makes one.
	Amount struct {
		N    Number
		Unit Unit
	}
	// Part is a part of something: half of it, 3/8 of it.
	Part struct {
		Of Number
		X  Expr
	}
	// Binary is a sum, a difference, a product or a quotient.
	Binary struct {
		Op   Op
		X, Y Expr
	}
	// Convert shows X in a unit.
	Convert struct {
		X  Expr
		To Unit
	}
)

// Op is an operation.
type Op rune

// The operations.
const (
	Add Op = '+'
	Sub Op = '-'
	Mul Op = '*'
	Div Op = '/'
)

// Num is a plain number in lowest terms. The denominator must not be zero.
func Num(n length.Number) Number {
	a, b := n.Num, n.Den
	for b != 0 {
		a, b = b, a%b
	}
	if a > 1 {
		n = length.Number{Num: n.Num / a, Den: n.Den / a}
	}
	return Number{n}
}

// Of is so many of a unit.
func Of(n length.Number, u Unit) Amount { return Amount{Num(n), u} }

func (Number) level() int  { return 0 }
func (Len) level() int     { return 0 }
func (Amount) level() int  { return 0 }
func (Part) level() int    { return 1 }
func (Convert) level() int { return 3 }

func (b Binary) level() int {
	if b.Op == Add || b.Op == Sub {
		return 2
	}
	return 1
}

func (Number) parts() []Expr    { return nil }
func (Len) parts() []Expr       { return nil }
func (Amount) parts() []Expr    { return nil }
func (p Part) parts() []Expr    { return []Expr{p.X} }
func (b Binary) parts() []Expr  { return []Expr{b.X, b.Y} }
func (c Convert) parts() []Expr { return []Expr{c.X} }

// Size is the number of nodes of the tree, counted no further than just over the most that Eval takes.
func Size(e Expr) int {
	n, open := 0, []Expr{e}
	for len(open) > 0 && n <= MaxSize {
		last := open[len(open)-1]
		open = open[:len(open)-1]
		if last != nil {
			open = append(open, last.parts()...)
		}
		n++
	}
	return n
}
