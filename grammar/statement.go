package grammar

import (
	"fmt"
	"strings"

	"lastrow/calc/room"
	"lastrow/calc/term"
)

// JobName begins a job or switches to one.
type JobName struct {
	Name string `parser:"'job' @Text"`
}

func (j JobName) String() string { return "job " + j.Name }

// Room is the main room as a rectangle, east-west first, with corners cut out.
type Room struct {
	EastWest   Size     `parser:"'room' @Length"`
	NorthSouth Size     `parser:"By @Length"`
	CutOuts    []CutOut `parser:"@@*"`
}

// CutOut is a rectangle missing at a corner: NE, SE, SW or NW. Angled, the corner is cut off straight across.
type CutOut struct {
	EastWest   Size   `parser:"',' 'without' @Length"`
	NorthSouth Size   `parser:"By @Length"`
	Corner     string `parser:"'at' @('ne'|'se'|'sw'|'nw')"`
	Angled     bool   `parser:"@'angled'?"`
}

func (r Room) String() string {
	s := fmt.Sprintf("room %s x %s", r.EastWest, r.NorthSouth)
	for _, c := range r.CutOuts {
		if s += fmt.Sprintf(", without %s x %s at %s", c.EastWest, c.NorthSouth, c.Corner); c.Angled {
			s += " angled"
		}
	}
	return s
}

// Walls is the main room as a walk along its walls, or as four walls with a diagonal.
type Walls struct {
	Legs      []Leg      `parser:"'walls' @@ (',' @@)*"`
	Diagonals []Diagonal `parser:"@@*"`
}

// Leg is one wall of a walk, or one side of an out-of-square room. A slanted one goes at 45 degrees, or so far east-west
// and so far north-south.
type Leg struct {
	To     room.Side `parser:"@('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west')"`
	Long   Size      `parser:"@Length"`
	Across *Size     `parser:"( By @Length )?"`
}

func (l Leg) String() string {
	s := string(l.To) + " " + l.Long.String()
	if l.Across != nil {
		s += " x " + l.Across.String()
	}
	return s
}

// Diagonal is a diagonal of an out-of-square room: nw-se or sw-ne.
type Diagonal struct {
	Way  string `parser:"',' 'diagonal' @('nw-se'|'sw-ne')"`
	Long Size   `parser:"@Length"`
}

func (w Walls) String() string {
	var b strings.Builder
	b.WriteString("walls")
	for i, l := range w.Legs {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(" " + l.String())
	}
	for _, d := range w.Diagonals {
		b.WriteString(", diagonal " + d.Way + " " + d.Long.String())
	}
	return b.String()
}

// Closet opens off a wall, From the named end of it. What is empty for a closet, else the word for a room joined in the
// same way; Off is the closet or room that it opens off, empty for the main room.
type Closet struct {
	What        string    `parser:"( 'closet' | @('hall'|'annex') )"`
	Wide        Size      `parser:"@Length"`
	Deep        Size      `parser:"By @Length"`
	Off         string    `parser:"'on' @('closet'|'hall'|'annex')?"`
	Wall        room.Side `parser:"@('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west'|'slanted')"`
	From        *Size     `parser:"( ',' @Length 'from'"`
	FromEnd     room.Side `parser:"  @('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west') )?"`
	Opening     *Size     `parser:"( ',' 'opening' @Length"`
	OpeningFrom *Size     `parser:"  ( 'at' @Length )? )?"`
}

func (c Closet) String() string {
	what := c.What
	if what == "" {
		what = "closet"
	}
	s := fmt.Sprintf("%s %s x %s on %s%s", what, c.Wide, c.Deep, wallText(c.Off, c.Wall), fromText(c.From, c.FromEnd))
	if c.Opening != nil {
		s += ", opening " + c.Opening.String()
		if c.OpeningFrom != nil {
			s += " at " + c.OpeningFrom.String()
		}
	}
	return s
}

// wallText names a wall: of the main room by its side alone.
func wallText(off string, wall room.Side) string {
	if off == "" {
		return string(wall)
	}
	return off + " " + string(wall)
}

func fromText(from *Size, end room.Side) string {
	if from == nil {
		return ""
	}
	return fmt.Sprintf(", %s from %s", from, end)
}

// Opening is one more opening between two rooms that are there already, in a wall of the main room or of the closet or room
// Off; the other is To, empty for the main room, and ToFrom and ToEnd its place in the other's wall.
type Opening struct {
	Wide    Size      `parser:"'opening' @Length"`
	Off     string    `parser:"'on' @('closet'|'hall'|'annex')?"`
	Wall    room.Side `parser:"@('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west'|'slanted')"`
	From    *Size     `parser:"( ',' @Length 'from'"`
	FromEnd room.Side `parser:"  @('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west') )?"`
	To      string    `parser:"',' 'to' ( 'room' | @('closet'|'hall'|'annex') )"`
	ToFrom  *Size     `parser:"( ',' @Length 'from'"`
	ToEnd   room.Side `parser:"  @('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west') )?"`
}

func (o Opening) String() string {
	to := o.To
	if to == "" {
		to = "room"
	}
	return fmt.Sprintf("opening %s on %s%s, to %s%s", o.Wide, wallText(o.Off, o.Wall), fromText(o.From, o.FromEnd), to, fromText(o.ToFrom, o.ToEnd))
}

// Doorway is a way out through a wall of the main room, or of the closet or room Off. Into is how far the floor runs into the wall.
type Doorway struct {
	Wide    Size      `parser:"'doorway' @Length"`
	Off     string    `parser:"'on' @('closet'|'hall'|'annex')?"`
	Wall    room.Side `parser:"@('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west'|'slanted')"`
	From    *Size     `parser:"( ',' @Length 'from'"`
	FromEnd room.Side `parser:"  @('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west') )?"`
	Into    *Size     `parser:"( ',' 'into' @Length )?"`
}

func (d Doorway) String() string {
	s := fmt.Sprintf("doorway %s on %s%s", d.Wide, wallText(d.Off, d.Wall), fromText(d.From, d.FromEnd))
	if d.Into != nil {
		s += ", into " + d.Into.String()
	}
	return s
}

// Fixture is a thing that the floor goes round: so far from a west or east wall and from a south or north wall of the main
// room, or of the closet or room In. A pipe has one size, its diameter.
type Fixture struct {
	What  string    `parser:"@('post'|'hearth'|'pipe'|'fixture')"`
	Wide  Size      `parser:"@Length"`
	Deep  *Size     `parser:"( By @Length )?"`
	In    string    `parser:"( 'in' @('closet'|'hall'|'annex') )?"`
	FromX Size      `parser:"',' @Length 'from'"`
	SideX room.Side `parser:"@('west'|'east')"`
	FromY Size      `parser:"',' @Length 'from'"`
	SideY room.Side `parser:"@('south'|'north')"`
}

func (f Fixture) String() string {
	s := f.What + " " + f.Wide.String()
	if f.Deep != nil {
		s += " x " + f.Deep.String()
	}
	if f.In != "" {
		s += " in " + f.In
	}
	return s + fmt.Sprintf(", %s from %s, %s from %s", f.FromX, f.SideX, f.FromY, f.SideY)
}

// Plank is the product as sold; what is not said stays as it was.
type Plank struct {
	Width     *Size  `parser:"'plank' ( @Length 'wide' ','? )?"`
	Length    *Size  `parser:"( @Length 'long' ','? )?"`
	Thickness *Size  `parser:"( @Length 'thick' ','? )?"`
	PerBox    *Whole `parser:"( @Number 'per' 'box' ','? )?"`
	BoxArea   *Flat  `parser:"( @Area 'per' 'box' )?"`
}

func (p Plank) String() string {
	var s []string
	s = appendSize(s, p.Width, "wide")
	s = appendSize(s, p.Length, "long")
	s = appendSize(s, p.Thickness, "thick")
	if p.PerBox != nil {
		s = append(s, fmt.Sprintf("%d per box", *p.PerBox))
	}
	if p.BoxArea != nil {
		s = append(s, p.BoxArea.String()+" per box")
	}
	return "plank " + strings.Join(s, ", ")
}

func appendSize(s []string, size *Size, word string) []string {
	if size == nil {
		return s
	}
	return append(s, size.String()+" "+word)
}

// Underlay is the underlay as sold, by the roll.
type Underlay struct {
	Thickness *Size `parser:"'underlay' ( @Length 'thick' ','? )?"`
	RollWidth *Size `parser:"( 'roll' @Length"`
	RollLong  *Size `parser:"  ( By @Length )? ','? )?"`
	Overlap   *Size `parser:"( 'overlap' @Length )?"`
}

func (u Underlay) String() string {
	s := appendSize(nil, u.Thickness, "thick")
	if u.RollWidth != nil {
		roll := "roll " + u.RollWidth.String()
		if u.RollLong != nil {
			roll += " x " + u.RollLong.String()
		}
		s = append(s, roll)
	}
	if u.Overlap != nil {
		s = append(s, "overlap "+u.Overlap.String())
	}
	return "underlay " + strings.Join(s, ", ")
}

// Gap is the gap at every edge, or at one wall; 0 is tight.
type Gap struct {
	Size Size      `parser:"'gap' @Length"`
	Wall room.Side `parser:"( 'at' @('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west'|'slanted') )?"`
}

func (g Gap) String() string {
	if g.Wall == "" {
		return "gap " + g.Size.String()
	}
	return "gap " + g.Size.String() + " at " + string(g.Wall)
}

// Hidden is a wall where a narrow row does no harm.
type Hidden struct {
	Wall room.Side `parser:"'out-of-sight' @('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west'|'slanted')"`
}

func (h Hidden) String() string { return "out-of-sight " + string(h.Wall) }

// Direction is the way that rows run: one way, or along a wall.
type Direction struct {
	Way  string    `parser:"'direction' ( @('east-west'|'north-south'|'diagonal')"`
	Wall room.Side `parser:"| 'along' @('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west'|'slanted') )"`
}

func (d Direction) String() string { return "direction " + d.said() }

func (d Direction) said() string {
	if d.Wall != "" {
		return "along " + string(d.Wall)
	}
	return d.Way
}

// Start is the wall of the first row.
type Start struct {
	Wall room.Side `parser:"'start' @('north'|'east'|'south'|'west'|'north-east'|'south-east'|'south-west'|'north-west'|'slanted')"`
}

func (s Start) String() string { return "start " + string(s.Wall) }

// Limit is one of the lengths that the layout keeps to: first-row, least-end, least-stagger, least-row, kerf.
type Limit struct {
	Name term.Name `parser:"@('first-row'|'least-end'|'least-stagger'|'least-row'|'kerf')"`
	Size Size      `parser:"@Length"`
}

func (l Limit) String() string { return string(l.Name) + " " + l.Size.String() }

// Trim is the baseboard or quarter round as sold, by the stick.
type Trim struct {
	Thickness *Size `parser:"'trim' ( @Length 'thick' ','? )?"`
	Stick     *Size `parser:"( 'sticks' @Length )?"`
}

func (t Trim) String() string {
	s := appendSize(nil, t.Thickness, "thick")
	if t.Stick != nil {
		s = append(s, "sticks "+t.Stick.String())
	}
	return "trim " + strings.Join(s, ", ")
}

// Height is a height to keep: of the floor beyond a doorway, under a door, of a ceiling, a sill or a riser.
type Height struct {
	Of   term.Name `parser:"'height' @('other-height'|'floor-height'|'door-gap'|'ceiling'|'sill'|'riser')"`
	Size Size      `parser:"@Length"`
}

func (h Height) String() string { return "height " + string(h.Of) + " " + h.Size.String() }

// Subfloor is what the floor is laid on.
type Subfloor struct {
	What   string `parser:"'subfloor' @('concrete'|'wood')?"`
	Heated bool   `parser:"( ','? @'heated' )?"`
}

func (s Subfloor) String() string {
	switch {
	case s.What == "":
		return "subfloor heated"
	case s.Heated:
		return "subfloor " + s.What + ", heated"
	}
	return "subfloor " + s.What
}

// Reading is a measurement of the subfloor: moisture by a test, or a dip under a straightedge.
type Measured struct {
	Test         string       `parser:"'reading' ( @('rh'|'calcium-chloride'|'carbide'|'wood')"`
	Percent      *Thousandths `parser:"  ( @Percent"`
	Pounds       *Cents       `parser:"  | @Mass )"`
	Dip          *Size        `parser:"| 'dip' @Length"`
	Straightedge *Size        `parser:"  ( 'under' @Length )? )"`
}

func (m Measured) String() string {
	switch {
	case m.Percent != nil:
		return "reading " + m.Test + " " + m.Percent.String()
	case m.Pounds != nil:
		return "reading " + m.Test + " " + m.Pounds.String() + " lb"
	case m.Straightedge != nil:
		return "reading dip " + m.Dip.String() + " under " + m.Straightedge.String()
	}
	return "reading dip " + m.Dip.String()
}

// Price is what a box costs.
type Price struct {
	Amount   Cents  `parser:"'price' @Number"`
	Currency string `parser:"'per' 'box' ( ',' @('usd'|'gbp'|'eur'|'cad'|'aud') )?"`
}

func (p Price) String() string {
	if p.Currency == "" {
		return "price " + p.Amount.String() + " per box"
	}
	return "price " + p.Amount.String() + " per box, " + p.Currency
}

// Spare is what is bought over the count: a share of the planks, or so many.
type Spare struct {
	Percent *Thousandths `parser:"'spare' ( @Percent"`
	Planks  *Whole       `parser:"| @Number 'planks' )"`
}

func (s Spare) String() string {
	if s.Planks != nil {
		return fmt.Sprintf("spare %d planks", *s.Planks)
	}
	return "spare " + s.Percent.String()
}

// Laid says how many rows are down; More adds to what was said before.
type Laid struct {
	Rows Whole `parser:"'laid' @Number"`
	More bool  `parser:"@'more'? 'rows'"`
}

func (l Laid) String() string { return fmt.Sprintf("laid %d%s rows", l.Rows, moreWord(l.More)) }

// Opened says how many boxes are opened; More adds to what was said before.
type Opened struct {
	Boxes Whole `parser:"'opened' @Number"`
	More  bool  `parser:"@'more'? 'boxes'"`
}

func (o Opened) String() string { return fmt.Sprintf("opened %d%s boxes", o.Boxes, moreWord(o.More)) }

func moreWord(more bool) string {
	if more {
		return " more"
	}
	return ""
}

// Damaged adds to the planks spoilt; a count under nought takes back.
type Damaged struct {
	Back   bool  `parser:"'damaged' @'less'?"`
	Planks Whole `parser:"@Number 'planks'"`
}

func (d Damaged) String() string {
	if d.Back {
		return fmt.Sprintf("damaged less %d planks", d.Planks)
	}
	return fmt.Sprintf("damaged %d planks", d.Planks)
}

// Note is a remark to keep.
type Note struct {
	Text string `parser:"'note' @Text"`
}

func (n Note) String() string { return "note " + n.Text }
