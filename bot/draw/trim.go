package draw

import (
	"fmt"

	"lastrow/bot/draw/sheet"
	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/material"
	"lastrow/calc/room"
)

// Stick is trim as it is sold, its thickness at the foot, and the saw's kerf.
type Stick struct{ Length, Thickness, Kerf length.Length }

// Trim draws the pieces of trim round the floor, numbered in the order of the walk from a door, and lists them with their
// ends and the stick that each is cut from. Without a stick's length no sticks are told.
func Trim(f *room.Floor, stick Stick, t Title) *sheet.Sheet {
	p := newPlan("trim", f, t)
	p.header("trim plan", "")
	p.makeRoom()
	p.wallsUnder()
	pieces := calc.TrimOf(f)
	p.things()
	p.trimMarks(pieces, calc.TrimEdges(f))
	p.doorLabels()
	p.frame()
	p.pen = p.view.box.Y1 + labelLane + outerLane
	p.write("Ends as seen by one who faces the wall; an inside corner may be coped.", plainText, false)
	p.skip(8)
	from := sticksOf(pieces, stick)
	for i, q := range pieces {
		p.trimLine(q, from[i])
	}
	p.Alt = fmt.Sprintf("Trim plan: %d pieces, numbered round the room.", len(pieces))
	return p.done(sheetWidth)
}

// trimMarks draws each piece along its wall, and its number beside the longest edge that it covers.
func (p *plan) trimMarks(pieces []material.TrimPiece, edges []room.Edge) {
	const band = 10
	for i, q := range pieces {
		var covered length.Length
		longest := 0
		n := 0
		for n < len(edges) && covered < q.Length {
			covered += edges[n].Len()
			if edges[n].Len() > edges[longest].Len() {
				longest = n
			}
			f := sheet.Fill{Rings: [][]sheet.Point{p.beside(edges[n], -band, 0)}, Tone: sheet.Cut}
			if i%2 == 1 {
				f.Tone, f.Texture = sheet.Spare, sheet.Falling
			}
			p.Add(f)
			p.Add(sheet.Outline(f.Rings[0], narrowLine, sheet.Solid)...)
			n++
		}
		if n == 0 {
			return
		}
		p.trimLabel(edges[longest], q)
		edges = edges[n:]
	}
}

// trimLabel writes a piece's number and length within the room, by its wall, or outside it.
func (p *plan) trimLabel(e room.Edge, q material.TrimPiece) {
	b := sheet.Bounds(p.view.at(e.A), p.view.at(e.B))
	side := outward(e)
	turned := side == room.East || side == room.West
	long := fmt.Sprintf("%d: %s", q.N, p.title.bare(q.Length))
	inside := map[room.Side]room.Side{room.North: room.South, room.South: room.North, room.East: room.West, room.West: room.East}[side]
	for _, s := range []string{long, fmt.Sprint(q.N)} {
		t := sheet.Text{Size: plainText, Bold: true, S: s, Turned: turned}
		flat := t
		flat.Turned = false
		places := append(p.besideWall(t, e, wallPx+6), outsideAt(t, b, inside, 16)...)
		places = append(append(places, outsideAt(flat, b, inside, 16)...), outsideAt(flat, b, inside, 44)...)
		if placed, ok := p.place.Place(places...); ok {
			p.Add(placed)
			return
		}
	}
}

// sticksOf tells the sticks, from 1, that each piece is cut from; nothing without a stick's length.
func sticksOf(pieces []material.TrimPiece, stick Stick) []string {
	out := make([]string, len(pieces))
	if stick.Length <= 0 {
		return out
	}
	var lengths []length.Length
	var owner []int
	for i, q := range pieces {
		l := q.Stock(stick.Thickness)
		for ; l > stick.Length; l -= stick.Length {
			lengths, owner = append(lengths, stick.Length), append(owner, i)
		}
		lengths, owner = append(lengths, l), append(owner, i)
	}
	plan, _, err := material.Sticks(lengths, stick.Length, stick.Kerf)
	if err != nil {
		return out
	}
	for n, s := range plan.Sticks {
		for _, k := range s.Pieces {
			if i := owner[k]; out[i] == "" {
				out[i] = fmt.Sprintf("stick %d", n+1)
			} else {
				out[i] += fmt.Sprintf(" and %d", n+1)
			}
		}
	}
	return out
}

func (p *plan) trimLine(q material.TrimPiece, stick string) {
	p.Add(sheet.Text{At: sheet.Point{X: margin, Y: p.pen}, Size: plainText, Bold: true, S: fmt.Sprint(q.N)})
	s := fmt.Sprintf("%s, %s; right: %s; left: %s", p.title.Tape.Text(q.Length), q.Wall, endText(q.Right), endText(q.Left))
	if stick != "" {
		s += "; " + stick
	}
	p.writeAt(margin+52, s+".", plainText, false)
}

func endText(e material.End) string {
	if e.Kind == material.AtCasing {
		return string(e.Kind)
	}
	return fmt.Sprintf("%s %.3g°", e.Kind, e.Saw)
}
