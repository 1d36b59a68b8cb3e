package calc

import (
	"fmt"
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/material"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

func init() { handlers[term.AskTrim] = trim }

// trim gives the trim round a floor, its doors left out, and the sticks to buy: cut piece by piece where each wall is
// known, else by length with something added for the cuts.
func trim(in *inputs) (Result, error) {
	stick := in.lengthOr(term.StickLength, limit.StickLength.In(in.tape.System))
	if stick < length.Foot {
		in.refuse("a stick of %s is too short for trim", in.tape.Exact(stick))
	}
	if f := in.trimFloor(); f != nil && len(in.refused) == 0 {
		return in.trimPieces(f, stick)
	}
	run, working := in.needTrimRun()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	spare := in.percentOr(term.TrimSpare, percentOf(limit.TrimWaste))
	n := length.Up(material.With(big.NewRat(int64(run), int64(stick)), spare))
	t := in.tape.Room
	working = append(working, fmt.Sprintf("%s + %s for cuts, / %s a stick = %d sticks, rounded up", t(run), percent(spare), t(stick), n))
	return Result{
		Values:  []term.Named{{Name: term.TrimLength, Value: term.Len(run)}, {Name: term.Sticks, Value: term.Count(n)}},
		Working: working,
	}, in.err()
}

// trimFloor gives the job's floor where the message says nothing of the walls or the doors.
func (in *inputs) trimFloor() *room.Floor {
	for _, n := range []term.Name{term.TrimLength, term.Perimeter, term.Walls, term.Room, term.Doors} {
		if _, said := in.said[n]; said {
			return nil
		}
	}
	f, _ := in.jobFloor()
	return f
}

// needTrimRun gives the length of trim: as said, or the perimeter less the doors.
func (in *inputs) needTrimRun() (length.Length, []string) {
	if l, ok := in.length(term.TrimLength); ok {
		if l <= 0 {
			in.refuse("trim-length of %s is no length to work with", in.tape.Exact(l))
		}
		return l, nil
	}
	round, working, ok := in.perimeter()
	if !ok {
		in.lack(term.TrimLength, term.Perimeter, term.Walls, term.Room)
		return 0, nil
	}
	doors := in.doorsWide()
	if doors >= round {
		in.refuse("doors of %s in all leave no wall of a perimeter of %s", in.tape.Exact(doors), in.tape.Exact(round))
	}
	t := in.tape.Room
	if doors > 0 {
		working = append(working, fmt.Sprintf("%s - %s of doors = %s", t(round), t(doors), t(round-doors)))
	}
	return round - doors, working
}

// perimeter gives the length of the walls: as said, or their sum, or that of a room said or of the job's floor.
func (in *inputs) perimeter() (around length.Length, working []string, ok bool) {
	if l, ok := in.length(term.Perimeter); ok {
		return l, nil, true
	}
	if walls, ok := get[term.Lens](in, term.Walls); ok {
		var sum length.Length
		for _, w := range walls {
			sum += w
		}
		return sum, []string{fmt.Sprintf("%d walls = %s", len(walls), in.tape.Room(sum))}, true
	}
	if f := in.trimFloor(); f != nil {
		return in.wallsOf(f)
	}
	if !in.saysRoom() {
		f, ok := in.jobFloor()
		if !ok {
			return 0, nil, false
		}
		walls := round(f)
		return walls, []string{fmt.Sprintf("round the floor = %s", in.tape.Room(walls))}, true
	}
	along, across, ok := in.sides()
	if !ok {
		return 0, nil, false
	}
	t := in.tape.Room
	around = 2 * (along + across)
	return around, []string{fmt.Sprintf("2 x (%s + %s) = %s", t(along), t(across), t(around))}, true
}

// doorsWide gives the width of all doors said, or said by number.
func (in *inputs) doorsWide() length.Length {
	g, ok := in.peek(term.Doors)
	if !ok {
		return 0
	}
	switch v := g.Value.(type) {
	case term.Len:
		in.use(g)
		return length.Length(v)
	case term.Lens:
		in.use(g)
		var sum length.Length
		for _, w := range v {
			sum += w
		}
		return sum
	case term.Count:
		in.use(g)
		return length.Length(v) * in.lengthOr(term.DoorWidth, limit.DoorWidth.In(in.tape.System))
	}
	in.refuse("doors can't be that: say how wide each is")
	return 0
}

// percentOf is a limit in percent.
func percentOf(l *limit.Limit) term.Percent {
	q := new(big.Rat).Mul(l.Rat(), big.NewRat(1000, 1))
	return term.Percent(q.Num().Int64() / q.Denom().Int64())
}

// percent shows a percentage without needless zeros.
func percent(p term.Percent) string {
	return fmt.Sprintf("%g %%", float64(p)/1000)
}
