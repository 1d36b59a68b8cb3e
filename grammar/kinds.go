package grammar

import (
	"lastrow/calc/length"
	"lastrow/calc/term"
)

func (JobName) Kind() term.Kind   { return term.SetJob }
func (Room) Kind() term.Kind      { return term.SetRoom }
func (Walls) Kind() term.Kind     { return term.SetWalls }
func (Closet) Kind() term.Kind    { return term.SetCloset }
func (Opening) Kind() term.Kind   { return term.SetOpening }
func (Doorway) Kind() term.Kind   { return term.SetDoorway }
func (Fixture) Kind() term.Kind   { return term.SetFixture }
func (Plank) Kind() term.Kind     { return term.SetPlank }
func (Underlay) Kind() term.Kind  { return term.SetUnderlay }
func (Gap) Kind() term.Kind       { return term.SetGap }
func (Hidden) Kind() term.Kind    { return term.SetHidden }
func (Direction) Kind() term.Kind { return term.SetDirection }
func (Start) Kind() term.Kind     { return term.SetStart }
func (l Limit) Kind() term.Kind   { return term.Kind(l.Name) }
func (Trim) Kind() term.Kind      { return term.SetTrim }
func (Height) Kind() term.Kind    { return term.SetHeight }
func (Subfloor) Kind() term.Kind  { return term.SetSubfloor }
func (Measured) Kind() term.Kind  { return term.SetReading }
func (Price) Kind() term.Kind     { return term.SetPrice }
func (Spare) Kind() term.Kind     { return term.SetSpare }
func (Laid) Kind() term.Kind      { return term.SetLaid }
func (Opened) Kind() term.Kind    { return term.SetOpened }
func (Damaged) Kind() term.Kind   { return term.SetDamaged }
func (Note) Kind() term.Kind      { return term.SetNote }

// Given is the job's name.
func (j JobName) Given() []term.Given { return word(term.Job, j.Name) }

// Given is the two sides.
func (r Room) Given() []term.Given {
	return []term.Given{given(term.Room, term.Lens{r.EastWest.Len, r.NorthSouth.Len})}
}

// Given is the walls in order.
func (w Walls) Given() []term.Given {
	v := make(term.Lens, len(w.Legs))
	for i, l := range w.Legs {
		v[i] = l.Long.Len
	}
	return []term.Given{given(term.Walls, v)}
}

// Given is the two sides of the closet.
func (c Closet) Given() []term.Given {
	return []term.Given{given(term.Closet, term.Lens{c.Wide.Len, c.Deep.Len})}
}

// Given is the opening's width and wall.
func (o Opening) Given() []term.Given {
	return []term.Given{given("opening", term.Len(o.Wide.Len)), given("wall", term.Word(o.Wall))}
}

// Given is the doorway's width and wall.
func (d Doorway) Given() []term.Given {
	return []term.Given{given("doorway", term.Len(d.Wide.Len)), given("wall", term.Word(d.Wall))}
}

// Given is the fixture's sides.
func (f Fixture) Given() []term.Given {
	v := term.Lens{f.Wide.Len}
	if f.Deep != nil {
		v = append(v, f.Deep.Len)
	}
	return []term.Given{given("fixture", v)}
}

// Given is what was said of the plank.
func (p Plank) Given() []term.Given {
	g := lenGiven(term.PlankWidth, p.Width)
	g = append(g, lenGiven(term.PlankLength, p.Length)...)
	g = append(g, lenGiven(term.PlankThickness, p.Thickness)...)
	if p.PerBox != nil {
		g = append(g, given(term.PlanksPerBox, term.Count(*p.PerBox)))
	}
	if p.BoxArea != nil {
		g = append(g, given(term.BoxCoverage, term.Area{Area: p.BoxArea.Area()}))
	}
	return g
}

// Given is what was said of the underlay.
func (u Underlay) Given() []term.Given {
	g := lenGiven(term.UnderlayThickness, u.Thickness)
	g = append(g, lenGiven(term.RollWidth, u.RollWidth)...)
	g = append(g, lenGiven(term.RollLength, u.RollLong)...)
	return append(g, lenGiven(term.Overlap, u.Overlap)...)
}

// Given is the gap, and the wall where it is one wall's.
func (g Gap) Given() []term.Given {
	v := []term.Given{given(term.Gap, term.Len(g.Size.Len))}
	if g.Wall != "" {
		v = append(v, given("wall", term.Word(g.Wall)))
	}
	return v
}

// Given is the wall.
func (h Hidden) Given() []term.Given { return word("wall", string(h.Wall)) }

// Given is the way.
func (d Direction) Given() []term.Given { return word(term.Direction, d.said()) }

// Given is the wall.
func (s Start) Given() []term.Given { return word(term.Start, string(s.Wall)) }

// Given is the limit under its own name.
func (l Limit) Given() []term.Given { return lenGiven(l.Name, &l.Size) }

// Given is what was said of the trim.
func (t Trim) Given() []term.Given {
	return append(lenGiven(term.TrimThickness, t.Thickness), lenGiven(term.StickLength, t.Stick)...)
}

// Given is the height under the name of what it is of.
func (h Height) Given() []term.Given { return lenGiven(h.Of, &h.Size) }

// Given is the material.
func (s Subfloor) Given() []term.Given {
	if s.What == "" {
		return word(term.Subfloor, "heated")
	}
	return word(term.Subfloor, s.What)
}

// Given is the test and the reading, or the dip and the straightedge.
func (m Measured) Given() []term.Given {
	switch {
	case m.Percent != nil:
		return []term.Given{given(term.Test, term.Word(m.Test)), given(term.Reading, term.Percent(*m.Percent))}
	case m.Pounds != nil:
		return []term.Given{given(term.Test, term.Word(m.Test)), given(term.Reading, pounds(*m.Pounds))}
	}
	return append(lenGiven(term.Reading, m.Dip), append(lenGiven(term.Dip, m.Dip), lenGiven(term.Straightedge, m.Straightedge)...)...)
}

// pounds is a rate of so many pounds for 1000 sq ft in 24 hours, as a plain number.
func pounds(c Cents) term.Value {
	return term.Number{Rat: ratOf(length.Number{Num: int64(c), Den: 100})}
}

// Given is the amount.
func (p Price) Given() []term.Given {
	return []term.Given{given(term.Price, term.Money{Minor: int64(p.Amount), Currency: upper(p.Currency)})}
}

// Given is the share or the count.
func (s Spare) Given() []term.Given {
	if s.Planks != nil {
		return []term.Given{given(term.Spare, term.Count(*s.Planks))}
	}
	return []term.Given{given(term.Spare, term.Percent(*s.Percent))}
}

// Given is the count said.
func (l Laid) Given() []term.Given { return count(term.Laid, l.Rows) }

// Given is the count said.
func (o Opened) Given() []term.Given { return count(term.Opened, o.Boxes) }

// Given is the count said.
func (d Damaged) Given() []term.Given { return count(term.Damaged, d.Planks) }

// Given is the text.
func (n Note) Given() []term.Given { return word(term.Note, n.Text) }

func word(n term.Name, s string) []term.Given { return []term.Given{given(n, term.Word(s))} }

func count(n term.Name, w Whole) []term.Given { return []term.Given{given(n, term.Count(w))} }
