package calc

import (
	"fmt"
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/subfloor"
	"lastrow/calc/term"
)

func init() { handlers[term.AskFlatness] = flatness }

// flatness judges a dip or hump under a straightedge, or a row of heights.
func flatness(in *inputs) (Result, error) {
	if _, ok := in.said[term.Heights]; ok {
		return flatRow(in)
	}
	if in.has(term.Straightedge) && !in.has(term.Dip) {
		return in.flatLimit()
	}
	dip := length.Length(need[term.Len](in, term.Dip))
	edge := in.needLength(term.Straightedge)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	allow := in.allowance(edge)
	if dip > limit.DipMost.Inch || dip >= edge {
		in.refuse("a dip of %s under a straightedge of %s is no flatness reading: %s at most",
			in.told(dip), in.told(edge), in.told(limit.DipMost.Inch))
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	lines := []string{allow.Rule, in.againstLine(dip, allow)}
	if edge == 2*length.Metre {
		lines = append(lines, classLine(dip))
	}
	if strict := subfloor.Stricter(edge); allow.Kept(dip) && in.tape.System == length.Metric && !strict.Kept(dip) {
		lines = append(lines, "but floating floors may ask more: "+strict.Rule, in.againstLine(dip, strict))
	}
	return flatResult(allow, allow.Kept(dip), lines), nil
}

// flatLimit gives what a straightedge allows, where no dip was measured.
func (in *inputs) flatLimit() (Result, error) {
	allow := in.allowance(in.needLength(term.Straightedge))
	if err := in.err(); err != nil {
		return Result{}, err
	}
	return Result{
		Values:  []term.Named{{Name: term.Allowed, Value: term.Len(allow.Gap)}},
		Working: []string{allow.Rule, "flat is not level: no flatness rule limits a slope"},
	}, nil
}

// allowance is the product's own where it was said, or else that of the rule for the straightedge.
func (in *inputs) allowance(edge length.Length) subfloor.Allowance {
	if gap, ok := in.length(term.Allowed); ok {
		return subfloor.Allowance{Gap: gap, Rule: "the tolerance said"}
	}
	allow, err := in.rule(edge)
	in.check(err)
	return allow
}

// rule is the class of flatness that was said, or else the rule that the straightedge goes with.
func (in *inputs) rule(edge length.Length) (subfloor.Allowance, error) {
	if !in.has(term.Tolerance) {
		return subfloor.Allowed(edge, in.tape.System)
	}
	word, _ := get[term.Word](in, term.Tolerance)
	class := strings.TrimPrefix(strings.ToUpper(string(word)), "BS 8204 ")
	if row, ok := dinRow(class); ok {
		return subfloor.DIN(row, edge)
	}
	if edge != 2*length.Metre {
		return subfloor.Allowance{}, fmt.Errorf("a class of BS 8204 is measured under 2 m, not %s", in.told(edge))
	}
	return subfloor.BS(subfloor.Class(class))
}

// dinRow reads "ROW 4" or "DIN 18202 ROW 4".
func dinRow(s string) (row int, ok bool) {
	n, err := fmt.Sscanf(strings.TrimPrefix(s, "DIN 18202 "), "ROW %d", &row)
	return row, n == 1 && err == nil
}

func (in *inputs) againstLine(dip length.Length, a subfloor.Allowance) string {
	word := "within"
	if !a.Kept(dip) {
		word = "over"
	}
	return fmt.Sprintf("%s is %s %s", in.told(dip), word, in.mark(a.Gap))
}

func classLine(dip length.Length) string {
	if c, ok := subfloor.Best(dip); ok {
		return fmt.Sprintf("by BS 8204 it is class %s", c)
	}
	return "it meets no class of BS 8204"
}

func flatResult(a subfloor.Allowance, kept bool, lines []string) Result {
	return Result{
		Values:  []term.Named{{Name: term.Allowed, Value: term.Len(a.Gap)}, {Name: term.Passes, Value: term.Pass(kept)}},
		Working: append(lines, "flat is not level: no flatness rule limits a slope"),
	}
}

// flatRow judges heights along a line by DIN 18202 row 3.
func flatRow(in *inputs) (Result, error) {
	heights := need[term.Lens](in, term.Heights)
	spacing := in.needLength(term.Spacing)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	w, err := subfloor.Grid(heights, spacing, 3)
	in.check(err)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	e := in.told
	a, mid, b := heights[w.At-w.Reach], heights[w.At], heights[w.At+w.Reach]
	return flatResult(w.Allowance, w.Kept, []string{
		fmt.Sprintf("worst at point %d: %s against the mean of %s and %s, %s to either side = %s off", w.At+1, e(mid), e(a), e(b), in.tape.Room(w.Base/2), in.mark(w.Deviation)),
		w.Allowance.Rule, in.againstLine(w.Deviation, w.Allowance),
	}), nil
}
