package calc

import (
	"fmt"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/material"
	"lastrow/calc/term"
)

func init() { handlers[term.AskCaulk] = caulk }

// caulk counts the tubes of sealant in a bead along the trim.
func caulk(in *inputs) (Result, error) {
	run, working := in.needTrimRun()
	width, depth, shape := in.bead()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	loss := in.percentOr(term.SealantLoss, percentOf(limit.SealantLoss))
	tube := material.Cartridge(in.tape.System)
	bead := material.BeadVolume(run, shape, width, depth)
	n := material.Tubes(bead, tube, loss)
	perTube := tube.Over(material.BeadVolume(length.Metre, shape, width, depth))
	reach, _ := perTube.Float64()
	working = append(working,
		fmt.Sprintf("a tube of %s fills %s of %s", tubeText(in.tape.System), in.tape.Room(length.Length(reach*float64(length.Metre))), in.beadText(width, depth, shape)),
		fmt.Sprintf("%s takes %s tubes; + %s lost = %d, rounded up", in.tape.Room(run), bead.Over(tube).FloatString(2), percent(loss), n))
	return Result{Values: []term.Named{{Name: term.Tubes, Value: term.Count(n)}}, Working: working}, in.err()
}

func tubeText(s length.System) string {
	if s == length.Metric {
		return "310 mL"
	}
	return "10.1 fl oz"
}

// bead gives the bead's size and shape: one size is a round bead's width, or a fillet's two legs; two are a joint's width and depth.
func (in *inputs) bead() (width, depth length.Length, shape term.Word) {
	g, ok := in.peek(term.Bead)
	if !ok {
		in.lack(term.Bead)
		return 0, 0, ""
	}
	usual := material.RoundBead
	switch v := g.Value.(type) {
	case term.Len:
		width, depth = length.Length(v), length.Length(v)
	case term.Lens:
		if len(v) == 2 {
			width, depth, usual = v[0], v[1], material.SquareBead
		}
	}
	in.use(g)
	if width < length.Inch/32 || depth < length.Inch/32 || width > 2*length.Inch || depth > 2*length.Inch {
		in.refuse("a bead is 1/32 in to 2 in (1 to 50 mm) wide and deep, as 1/4 in or 3/8 x 1/4 in")
	}
	return width, depth, in.wordOr(term.BeadShape, usual, material.RoundBead, material.FilletBead, material.SquareBead)
}

func (in *inputs) beadText(width, depth length.Length, shape term.Word) string {
	switch shape {
	case material.RoundBead:
		return in.text(width) + " round bead"
	case material.FilletBead:
		return fmt.Sprintf("%s x %s fillet, a triangle in the corner", in.text(width), in.text(depth))
	}
	return fmt.Sprintf("%s x %s joint, filled full", in.text(width), in.text(depth))
}
