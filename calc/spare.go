package calc

import (
	"fmt"

	"lastrow/calc/limit"
	"lastrow/calc/material"
	"lastrow/calc/term"
)

// spare is what is bought over the planks laid: a share of them, or so many.
type spare struct {
	share  term.Percent
	planks term.Count
	count  bool
}

// spare gives what was said to be spare, or the usual share.
func (in *inputs) spare() spare {
	if g, ok := in.peek(term.Spare); ok {
		if n, ok := g.Value.(term.Count); ok {
			in.use(g)
			if n < 0 || n > MostThings {
				in.refuse("%s of %d is out of bounds: 0 to %d", term.Spare, int64(n), MostThings)
			}
			return spare{planks: n, count: true}
		}
	}
	return spare{share: in.percentOr(term.Spare, percentOf(limit.Spare))}
}

// over gives the planks to buy for so many laid.
func (s spare) over(laid int64) int64 {
	if s.count {
		return laid + int64(s.planks)
	}
	return material.Planks(laid, s.share)
}

func (s spare) line(laid int64) string {
	if s.count {
		return fmt.Sprintf("%d + %d spare = %d planks", laid, int64(s.planks), s.over(laid))
	}
	return fmt.Sprintf("%d + %s spare, one at least = %d planks", laid, percent(s.share), s.over(laid))
}
