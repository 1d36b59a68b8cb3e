package calc

import (
	"fmt"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/material"
	"lastrow/calc/term"
)

func init() {
	handlers[term.AskScrews] = screws
	handlers[term.AskNails] = nails
}

// screws spaces a track's concrete screws and, where the fixture and the bite are said, sizes them and their holes.
func screws(in *inputs) (Result, error) {
	track, most := in.needLength(term.Track), in.needLength(term.Spacing)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	screw := in.lengthOr(term.ScrewDiameter, 3*length.Inch/16)
	end := in.lengthOr(term.EndDistance, limit.TrackEnd.In(in.tape.System))
	in.screwsFit(track, most, screw)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	line := material.Line(track, most, end)
	r := Result{
		Values:  []term.Named{{Name: term.Screws, Value: term.Count(line.N)}, {Name: term.Spacing, Value: term.Len(line.Spacing)}},
		Working: in.lineWorking(track, most, end, line),
	}
	if bit, ok := material.Bit(screw); ok {
		r.Values = append(r.Values, term.Named{Name: term.Bit, Value: term.Len(bit)})
		r.Working = append(r.Working, fmt.Sprintf("%s carbide bit for a %s screw; the screw's own sheet rules", in.fine(bit), in.fine(screw)))
	}
	return in.screwSize(r)
}

// fine shows a small size whole: 5/32 in is nothing on a tape of sixteenths.
func (in *inputs) fine(l length.Length) string {
	return length.Tape{System: length.Imperial, Parts: 32}.Exact(l)
}

// screwsFit refuses what no row of screws can be.
func (in *inputs) screwsFit(track, most, screw length.Length) {
	least := length.Length(limit.ScrewSpacing.Rat().Num().Int64()) * screw
	switch {
	case screw <= 0 || screw > length.Inch:
		in.refuse("a screw %s thick is none for a track", in.tape.Exact(screw))
	case most < least:
		in.refuse("screws %s apart are too close: concrete screws of %s go at least %s apart", in.tape.Exact(most), in.fine(screw), in.tape.Exact(least))
	}
}

func (in *inputs) lineWorking(run, most, end length.Length, line material.Spaced) []string {
	t := in.text
	if line.Spacing == 0 {
		return []string{fmt.Sprintf("%s is too short for two: one in the middle", t(run))}
	}
	lines := []string{}
	between := run - 2*end
	if end > 0 {
		lines = append(lines, fmt.Sprintf("%s - 2 x %s at the ends = %s", t(run), t(end), t(between)))
	}
	return append(lines,
		fmt.Sprintf("%s / %s = %d spaces, rounded up, and one more for the other end: %d", t(between), t(most), line.N-1, line.N),
		fmt.Sprintf("%s / %d = %s apart", t(between), line.N-1, t(line.Spacing)))
}

// screwSize adds the screw's length and the hole's depth where the fixture and the embedment are known.
func (in *inputs) screwSize(r Result) (Result, error) {
	embed, ok := in.length(term.Embedment)
	fixture, both := in.length(term.FixtureThickness)
	if !ok || !both {
		return r, in.err()
	}
	extra := limit.HoleExtra.In(in.tape.System)
	exact, stock := material.ScrewLength(fixture, embed, in.tape.System)
	t := in.text
	r.Values = append(r.Values, term.Named{Name: term.ScrewLength, Value: term.Len(stock)}, term.Named{Name: term.HoleDepth, Value: term.Len(embed + extra)})
	r.Working = append(r.Working,
		fmt.Sprintf("%s fixture + %s in the concrete = %s; the next screw in the shops is %s", t(fixture), t(embed), t(exact), t(stock)),
		fmt.Sprintf("%s + %s below the screw's end = %s deep into the concrete", t(embed), t(extra), t(embed+extra)))
	least, most := limit.EmbedLeast.In(in.tape.System), limit.EmbedMost.In(in.tape.System)
	if embed < least || embed > most {
		r.Working = append(r.Working, fmt.Sprintf("usual for screws this thin is %s to %s in the concrete", t(least), t(most)))
	}
	return r, in.err()
}

// nails spaces nails along trim: at each stud, counting both ends, in one line.
func nails(in *inputs) (Result, error) {
	run, working := in.needTrimRun()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	most := in.lengthOr(term.Spacing, limit.StudSpacing.In(in.tape.System))
	if most < length.Inch {
		in.refuse("nails %s apart are too close: an inch (25 mm) at least", in.tape.Exact(most))
		return Result{}, in.err()
	}
	line := material.Line(run, most, 0)
	r := Result{
		Values:  []term.Named{{Name: term.Nails, Value: term.Count(line.N)}, {Name: term.Spacing, Value: term.Len(line.Spacing)}},
		Working: append(append(working, in.lineWorking(run, most, 0, line)...), fmt.Sprintf("with a second line, into the bottom plate: %d", 2*line.N)),
	}
	return in.nailSize(r)
}

// nailSize adds the nail's length where the trim's thickness is known. The wall board is taken as 1/2 in.
func (in *inputs) nailSize(r Result) (Result, error) {
	trim, ok := in.length(term.TrimThickness)
	if !ok {
		return r, in.err()
	}
	board := length.Inch / 2
	nail, ok := material.NailFor(trim, board)
	if !ok {
		in.refuse("trim %s thick is held by no nail", in.tape.Exact(trim))
		return Result{}, in.err()
	}
	r.Values = append(r.Values, term.Named{Name: term.NailLength, Value: term.Len(nail.Length)})
	r.Working = append(r.Working, fmt.Sprintf("%s nail, %s: three times the trim, %s past a %s wall board",
		nail.Size, in.text(nail.Length), in.text(material.Penetration(nail.Length, trim, board)), in.text(board)))
	return r, nil
}
