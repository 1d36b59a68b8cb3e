package grammar

import (
	"lastrow/calc/term"
)

// build makes the statements of the values placed.
func (p placed) build() []Statement {
	var out []Statement
	for _, b := range builders {
		if s := b(p); s != nil {
			out = append(out, s)
		}
	}
	return out
}

func (p placed) size(n term.Name) *Size {
	if v, ok := p.by[n]; ok && len(v.sizes) > 0 {
		s := v.sizes[0]
		return &s
	}
	return nil
}

func (p placed) whole(n term.Name) *Whole {
	if v, ok := p.by[n]; ok {
		w := Whole(v.term.(term.Count))
		return &w
	}
	return nil
}

var builders = []func(placed) Statement{
	buildRoom, buildPlank, buildUnderlay, buildGap, buildLimits(term.FirstRow), buildLimits(term.LeastEnd), buildLimits(term.LeastStagger), buildLimits(term.LeastRow), buildLimits(term.Kerf),
	buildTrim, buildHeight(term.OtherHeight), buildHeight(term.Ceiling), buildHeight(term.Sill), buildHeight(term.Riser), buildHeight(term.DoorGap), buildDip, buildPrice, buildSpare, buildOpened, buildLaid, buildDamaged,
}

func buildRoom(p placed) Statement {
	v, ok := p.by[term.Room]
	if !ok {
		return nil
	}
	return Room{EastWest: v.sizes[0], NorthSouth: v.sizes[1]}
}

func buildPlank(p placed) Statement {
	s := Plank{Width: p.size(term.PlankWidth), Length: p.size(term.PlankLength), Thickness: p.size(term.PlankThickness), PerBox: p.whole(term.PlanksPerBox)}
	if v, ok := p.by["plank"]; ok {
		s.Width, s.Length = &v.sizes[0], &v.sizes[1]
		if len(v.sizes) == 3 {
			s.Thickness = &v.sizes[2]
		}
	}
	if v, ok := p.by[term.BoxCoverage]; ok {
		s.BoxArea = &v.flat
	}
	if s == (Plank{}) {
		return nil
	}
	return s
}

func buildUnderlay(p placed) Statement {
	s := Underlay{Thickness: p.size(term.UnderlayThickness), RollWidth: p.size(term.RollWidth), RollLong: p.size(term.RollLength), Overlap: p.size(term.Overlap)}
	if v, ok := p.by["roll"]; ok {
		s.RollWidth, s.RollLong = &v.sizes[0], &v.sizes[1]
		if s.RollWidth.Len > s.RollLong.Len {
			s.RollWidth, s.RollLong = s.RollLong, s.RollWidth
		}
	}
	if s == (Underlay{}) || s.RollWidth == nil && s.RollLong != nil {
		return nil
	}
	return s
}

func buildGap(p placed) Statement {
	if s := p.size(term.Gap); s != nil {
		return Gap{Size: *s}
	}
	return nil
}

func buildLimits(n term.Name) func(placed) Statement {
	return func(p placed) Statement {
		if s := p.size(n); s != nil {
			return Limit{n, *s}
		}
		return nil
	}
}

func buildTrim(p placed) Statement {
	s := Trim{p.size(term.TrimThickness), p.size(term.StickLength)}
	if s == (Trim{}) {
		return nil
	}
	return s
}

func buildHeight(n term.Name) func(placed) Statement {
	return func(p placed) Statement {
		if s := p.size(n); s != nil {
			return Height{n, *s}
		}
		return nil
	}
}

func buildDip(p placed) Statement {
	if s := p.size(term.Dip); s != nil {
		return Measured{Dip: s, Straightedge: p.size(term.Straightedge)}
	}
	return nil
}

func buildPrice(p placed) Statement {
	v, ok := p.by[term.Price]
	if !ok {
		return nil
	}
	m := v.term.(term.Money)
	return Price{Cents(m.Minor), lower(m.Currency)}
}

func buildSpare(p placed) Statement {
	if v, ok := p.by[term.Spare]; ok {
		t := Thousandths(v.term.(term.Percent))
		return Spare{Percent: &t}
	}
	if w := p.whole("spare-planks"); w != nil {
		return Spare{Planks: w}
	}
	return nil
}

func buildLaid(p placed) Statement {
	if w := p.whole(term.Laid); w != nil {
		return Laid{Rows: *w}
	}
	return nil
}

func buildOpened(p placed) Statement {
	if w := p.whole(term.Opened); w != nil {
		return Opened{Boxes: *w}
	}
	return nil
}

func buildDamaged(p placed) Statement {
	if w := p.whole(term.Damaged); w != nil {
		return Damaged{Planks: *w}
	}
	return nil
}
