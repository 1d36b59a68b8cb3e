package measure

import (
	"fmt"
	"strconv"

	"lastrow/calc/length"
)

// String is the number as a decimal where it ends within nine places, else as a fraction.
func (n Number) String() string {
	if n.Den == 1 {
		return strconv.FormatInt(n.Num, 10)
	}
	places, scale := 0, int64(1)
	for scale%n.Den != 0 && places < 9 {
		places, scale = places+1, scale*10
	}
	if scale%n.Den != 0 {
		return fmt.Sprintf("%d/%d", n.Num, n.Den)
	}
	part := fmt.Sprintf("%0*d", places, n.Num%n.Den*(scale/n.Den))
	return fmt.Sprintf("%d.%s", n.Num/n.Den, part)
}

func (l Len) String() string { return length.Tape{System: l.System}.Exact(l.Len) }

func (a Amount) String() string { return a.N.String() + " " + string(a.Unit) }

func (p Part) String() string { return partWord(p.Of) + " of " + inside(p.X, 0) }

func partWord(n Number) string {
	if n.Num == 1 && n.Den == 2 {
		return "half"
	}
	return fmt.Sprintf("%d/%d", n.Num, n.Den)
}

// String leaves the parentheses out of a chain of one level that leans to the left.
func (b Binary) String() string {
	return inside(b.X, b.level()) + " " + string(b.Op) + " " + inside(b.Y, b.level()-1)
}

func (c Convert) String() string { return inside(c.X, 2) + " in " + string(c.To) }

// inside is a part's text, in parentheses where it binds more loosely than may stand there.
func inside(e Expr, most int) string {
	if e.level() > most && !halved(e) {
		return "(" + e.String() + ")"
	}
	return e.String()
}

// halved says whether e is a part: "half of half of 92 1/2 in" needs no parentheses anywhere but before a product.
func halved(e Expr) bool {
	_, ok := e.(Part)
	return ok
}
