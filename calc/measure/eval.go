package measure

import (
	"errors"
	"fmt"
	"math/big"

	"lastrow/calc/length"
)

// MaxSize is the most nodes that Eval takes.
const MaxSize = 2000

// maxBits bounds the numbers on the way: a fraction of more digits than this is no measurement.
const maxBits = 4096

// What a sum may break.
var (
	ErrSize   = errors.New("the sum is too long")
	ErrZero   = errors.New("nothing can be divided by zero")
	ErrBounds = errors.New("the result is out of all bounds for a floor")
)

// Quantity is a value: a number of nanometres to the power of Dim. In is the unit that it was asked for in, or "".
type Quantity struct {
	Value *big.Rat
	Dim   Dim
	In    Unit
}

// Eval gives the value of the tree, exactly. The error is a fragment fit to show: a division by zero, a length added to an
// area, a result no floor has.
func Eval(e Expr) (Quantity, error) {
	if Size(e) > MaxSize {
		return Quantity{}, ErrSize
	}
	q, err := eval(e, func(Expr, []Quantity, Quantity) {})
	if err != nil {
		return Quantity{}, err
	}
	return q, q.bounded()
}

// bounded refuses a result over 1 000 km, or that to the power of its dimension.
func (q Quantity) bounded() error {
	most := new(big.Int).Exp(big.NewInt(int64(1000*1000*length.Metre)), big.NewInt(max(1, int64(q.Dim))), nil)
	if new(big.Rat).Abs(q.Value).Cmp(new(big.Rat).SetInt(most)) > 0 {
		return ErrBounds
	}
	return nil
}

// eval works the tree out from its leaves and tells each node with the values of its parts.
func eval(e Expr, tell func(Expr, []Quantity, Quantity)) (Quantity, error) {
	if e == nil {
		return Quantity{}, errors.New("there is nothing to work out")
	}
	var parts []Quantity
	for _, p := range e.parts() {
		q, err := eval(p, tell)
		if err != nil {
			return q, err
		}
		parts = append(parts, q)
	}
	q, err := value(e, parts)
	if err == nil && q.Value.Num().BitLen()+q.Value.Denom().BitLen() > maxBits {
		err = ErrBounds
	}
	if err == nil {
		tell(e, parts, q)
	}
	return q, err
}

// value is a node's value, given those of its parts.
func value(e Expr, parts []Quantity) (Quantity, error) {
	switch e := e.(type) {
	case Number:
		return Quantity{Value: rat(e)}, nil
	case Len:
		return Quantity{Value: new(big.Rat).SetInt64(int64(e.Len)), Dim: Long}, nil
	case Amount:
		return e.value()
	case Part:
		return Mul.apply(Quantity{Value: rat(e.Of)}, parts[0])
	case Binary:
		return e.Op.apply(parts[0], parts[1])
	case Convert:
		return e.value(parts[0])
	}
	return parts[0], fmt.Errorf("%s is no sum", e)
}

func rat(n Number) *big.Rat { return big.NewRat(n.Num, n.Den) }

func (a Amount) value() (Quantity, error) {
	u, ok := units[a.Unit]
	if !ok {
		return Quantity{}, fmt.Errorf("%q is no unit", string(a.Unit))
	}
	v := rat(a.N)
	return Quantity{Value: v.Mul(v, new(big.Rat).SetInt(u.size)), Dim: u.dim}, nil
}

func (op Op) apply(x, y Quantity) (Quantity, error) {
	v := new(big.Rat)
	switch op {
	case Add, Sub:
		return addOrSub(op, x, y)
	case Mul:
		q := Quantity{Value: v.Mul(x.Value, y.Value), Dim: x.Dim + y.Dim}
		if q.Dim > Solid {
			return q, fmt.Errorf("%s times %s is nothing that can be measured", x.Dim, y.Dim)
		}
		return q, nil
	case Div:
		if y.Value.Sign() == 0 {
			return x, ErrZero
		}
		if y.Dim > x.Dim {
			return x, fmt.Errorf("%s can't be divided by %s", x.Dim, y.Dim)
		}
		return Quantity{Value: v.Quo(x.Value, y.Value), Dim: x.Dim - y.Dim}, nil
	}
	return x, fmt.Errorf("%q is no operation", string(op))
}

func addOrSub(op Op, x, y Quantity) (Quantity, error) {
	v := new(big.Rat)
	switch {
	case x.Dim == y.Dim && op == Add:
		return Quantity{Value: v.Add(x.Value, y.Value), Dim: x.Dim}, nil
	case x.Dim == y.Dim:
		return Quantity{Value: v.Sub(x.Value, y.Value), Dim: x.Dim}, nil
	case op == Add:
		return x, fmt.Errorf("%s and %s can't be added", x.Dim, y.Dim)
	}
	return x, fmt.Errorf("%s can't be taken from %s", y.Dim, x.Dim)
}

func (c Convert) value(q Quantity) (Quantity, error) {
	switch {
	case !c.To.Known():
		return q, fmt.Errorf("%q is no unit", string(c.To))
	case c.To.Dim() != q.Dim:
		return q, fmt.Errorf("%s can't be shown in %s, which is %s", q.Dim, c.To, c.To.Dim())
	}
	q.In = c.To
	return q, nil
}
