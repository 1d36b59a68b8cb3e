package draw

import (
	"fmt"
	"strings"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/material"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

// part is a rectangle of floor that strips are laid on: the main room, or a closet.
type part struct {
	name                     string
	west, south, east, north length.Length
}

// Underlay draws the strips of underlay, their seams and the tape on them, of a roll that material.CheckRoll has nothing
// against. Strips run along the longer side of the main room, in closets too; the last of a part is trimmed. Where mayPiece, rolls are counted
// with strips made up of what a roll leaves.
func Underlay(f *room.Floor, roll plank.Roll, mayPiece bool, t Title) *sheet.Sheet {
	p := newPlan("underlay", f, t)
	p.header("underlay plan", "")
	p.makeRoom()
	p.wallsUnder()
	parts := partsOf(f)
	lying := parts[0].east-parts[0].west >= parts[0].north-parts[0].south
	p.Add(sheet.Fill{Rings: p.ground.Rings, Tone: sheet.Layer, Texture: sheet.Dotted})
	n := 0
	for _, part := range parts {
		n = p.strips(part, roll, lying, n)
	}
	p.things()
	p.frame()
	p.edgeLabels()
	p.pen = p.view.box.Y1 + labelLane
	p.key([]swatch{{sheet.Layer, sheet.Plain, "strip"}, {sheet.Layer, sheet.Dotted, "opening: piece it in"}, {sheet.Spare, sheet.Falling, "tape on a seam"}})
	p.underlayFacts(parts, roll, lying, mayPiece)
	p.Alt = fmt.Sprintf("Underlay plan: %d strips, numbered, with taped seams.", n)
	return p.done(sheetWidth)
}

// partsOf gives the main room and the closets.
func partsOf(f *room.Floor) []part {
	var order []string
	rings := map[string]geom.Ring{}
	for _, e := range f.Edges {
		name := partName(e)
		if name == "" {
			continue
		}
		if rings[name] == nil {
			order = append(order, name)
		}
		rings[name] = append(rings[name], e.A, e.B)
	}
	var out []part
	for _, name := range order {
		q := part{name: name}
		q.west, q.south, q.east, q.north = bounds(geom.Region{rings[name]})
		out = append(out, q)
	}
	return out
}

// partName is the part that an edge bounds: "room", "closet", "closet 2"; none for doorways and closets' openings.
func partName(e room.Edge) string {
	name, isCloset := strings.CutSuffix(e.Wall, " back")
	for _, end := range []string{" side", " front"} {
		if s, ok := strings.CutSuffix(e.Wall, end); ok {
			name, isCloset = s, true
		}
	}
	switch {
	case isCloset:
		return name
	case strings.HasPrefix(e.Wall, "closet"), strings.HasPrefix(e.Wall, "doorway"):
		return ""
	}
	return "room"
}

// strips draws a part's strips and the seams between them, numbered on from n.
func (p *plan) strips(q part, roll plank.Roll, lying bool, n int) int {
	across := q.east - q.west
	if lying {
		across = q.north - q.south
	}
	count := int(material.StripCount(across, roll.Width, roll.Overlap))
	step := roll.Width - roll.Overlap
	for i := range count {
		from := length.Length(i) * step
		to := min(from+roll.Width, across)
		p.stripFill(p.band(q, lying, from, to), n+i)
		if i > 0 {
			p.seam(p.band(q, lying, from, from+roll.Overlap), lying)
		}
	}
	for i := range count {
		from := length.Length(i) * step
		to := min(from+roll.Width, across)
		p.stripLabel(q, p.band(q, lying, from, to), lying, n+i+1, to-from, roll)
	}
	return n + count
}

// band is the box of a part between two distances from its south or west side.
func (p *plan) band(q part, lying bool, from, to length.Length) sheet.Box {
	a, b := geom.Point{X: q.west + from, Y: q.north}, geom.Point{X: q.west + to, Y: q.south}
	if lying {
		a, b = geom.Point{X: q.west, Y: q.south + to}, geom.Point{X: q.east, Y: q.south + from}
	}
	return sheet.Bounds(p.view.at(a), p.view.at(b))
}

func (p *plan) stripFill(b sheet.Box, i int) {
	p.Add(sheet.Fill{Rings: p.ground.Rings, Tone: sheet.Layer + sheet.Tone(i%2), Within: b})
}

// seam draws a lap and the tape on it, at least so wide as shows.
func (p *plan) seam(lap sheet.Box, lying bool) {
	const tape = 8
	m, line := lap, lap
	if lying {
		m.Y0, m.Y1 = lap.Y1-tape, lap.Y1+tape
		line.Y0, line.Y1 = lap.Y1-1, lap.Y1+1
	} else {
		m.X0, m.X1 = lap.X0-tape, lap.X0+tape
		line.X0, line.X1 = lap.X0-1, lap.X0+1
	}
	p.Add(sheet.Fill{Rings: p.ground.Rings, Tone: sheet.Spare, Texture: sheet.Falling, Within: m},
		sheet.Fill{Rings: p.ground.Rings, Tone: sheet.Black, Within: line})
	p.place.Take(m)
}

func (p *plan) stripLabel(q part, b sheet.Box, lying bool, n int, wide length.Length, roll plank.Roll) {
	long := q.north - q.south
	if lying {
		long = q.east - q.west
	}
	s := fmt.Sprintf("%d: %s", n, p.title.Tape.Room(long))
	if wide < roll.Width {
		s += ", trim to " + p.title.Tape.Text(wide)
	}
	t := sheet.Text{Size: plainText, Bold: true, Clear: true, Tone: sheet.Layer + sheet.Tone((n-1)%2), Turned: !lying, S: s}
	if !p.put(t, spots(b)...) {
		p.note("Strip " + s + ".")
	}
}

func (p *plan) underlayFacts(parts []part, roll plank.Roll, lying, mayPiece bool) {
	var sizes []material.Part
	for _, q := range parts {
		size := material.Part{Along: q.north - q.south, Across: q.east - q.west}
		if lying {
			size = material.Part{Along: size.Across, Across: size.Along}
		}
		sizes = append(sizes, size)
	}
	s, t := material.Underlay(sizes, roll, mayPiece), p.title.Tape
	p.write(fmt.Sprintf("%s of a roll %s wide, %s long: %s. Tape on seams: %s.",
		count(s.N, "strip"), t.Room(roll.Width), t.Room(roll.Length), count(s.Rolls, "roll"), t.Room(s.Tape)), plainText, false)
	if roll.Overlap > 0 {
		p.write("Lap "+t.Text(roll.Overlap)+" at each seam, then tape.", plainText, false)
	} else {
		p.write("Butt the strips, then tape each seam.", plainText, false)
	}
	for _, s := range p.notes {
		p.write(s, plainText, false)
	}
}
