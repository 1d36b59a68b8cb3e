package grammar

import (
	"lastrow/calc/length"
)

// leaning is which system the bare numbers of a message are likely in.
type leaning struct {
	system length.System
	sure   bool
}

// lean looks at the units said, then at the job.
func (m *message) lean(ctx Context) leaning {
	metric, inches := 0, 0
	for i := range m.items {
		if i > 1 && metricWords[m.items[i].word] && m.items[i-1].word == "many" {
			metric++
		}
		for _, t := range m.items[i].sizes {
			switch {
			case t.class == tLength && t.meas.Unit >= length.Millimetres && t.meas.Len < 30*length.Millimetre: // a thickness, in either system
			case t.class == tArea && t.unit == "sq m", t.class == tLength && t.meas.Unit >= length.Centimetres && t.meas.Form != length.Dashed:
				metric++
			case t.class == tArea && t.unit == "sq ft", t.class == tLength && t.meas.Unit <= length.Yards && t.meas.Unit > 0, t.class == tLength && t.meas.Form == length.Dashed:
				inches++
			case t.class == tNumber && t.num.Den > 1 && t.num.Den&(t.num.Den-1) == 0 && !m.decimal(t):
				inches++
			}
		}
	}
	switch {
	case metric > 0 && inches == 0:
		return leaning{length.Metric, true}
	case inches > 0:
		return leaning{length.Imperial, true}
	case ctx.Known:
		return leaning{ctx.System, true}
	}
	return leaning{}
}

// metricWords are units asked for: "how many metres of skirting".
var metricWords = map[string]bool{"metres": true, "meters": true, "mm": true, "m": true, "millimetres": true, "millimeters": true}

// decimal says whether a number was written with a decimal mark.
func (m *message) decimal(t token) bool {
	for i := t.at; i < t.end; i++ {
		if m.src[i] == '.' || m.src[i] == ',' {
			return true
		}
	}
	return false
}

// read gives a token's length where it stands for what as says; ok is false where it can't.
func (m *message) read(t token, as bareAs, l leaning) (Size, bool) {
	if t.class == tLength {
		if t.meas.Form == length.Dashed && as == bareThick {
			return Size{}, false
		}
		return Size{t.meas.Len, t.meas.Unit.System()}, true
	}
	if t.class != tNumber || t.num.Den == 0 || t.nth {
		return Size{}, false
	}
	u := m.unitFor(t, as, l)
	if u == length.Bare {
		return Size{}, false
	}
	n, err := t.num.Of(u.Size())
	return Size{n, u.System()}, err == nil
}

// unitFor gives the unit that a bare number is in, by what it stands for and how large it is.
func (m *message) unitFor(t token, as bareAs, l leaning) length.Unit {
	v := t.num.Float()
	fraction := t.num.Den > 1 && !m.decimal(t)
	metric := l.sure && l.system == length.Metric && !fraction
	switch as {
	case bareSide:
		if !metric && v >= 60 && v < 150 || l.sure && !metric && v >= 60 && v < 600 {
			return length.Inches
		}
		return m.unitFor(t, bareRoom, l)
	case bareRoom, bareRoll:
		if m.large && v >= 24 {
			return length.Inches
		}
		if fraction && t.num.Den > 2 {
			return length.Bare
		}
		return roomUnit(v, metric, !l.sure && m.decimal(t) && v < 9)
	case bareNear:
		if v >= 100 {
			return length.Millimetres
		}
		return roomUnit(v, metric, !l.sure && m.decimal(t) && v < 4)
	case bareFace:
		if v >= 60 && !fraction && (metric || v >= 90) {
			return length.Millimetres
		}
		return length.Inches
	case bareThick:
		if fraction && t.num.Den <= 64 && t.num.Den&(t.num.Den-1) == 0 || v < 1 {
			return length.Inches
		}
		return length.Millimetres
	case bareSmall:
		if !fraction && (v > 3 || metric && v >= 2) {
			return length.Millimetres
		}
		return length.Inches
	case bareInch:
		return inchUnit(v, metric)
	}
	return length.Bare
}

// inInches says whether a bare number of the message has a fraction that shows large bare numbers to be inches: 180 1/4.
func (m *message) inInches() bool {
	for i := range m.items {
		for _, t := range m.items[i].sizes {
			if t.class == tNumber && t.num.Den > 1 && !m.decimal(t) && t.num.Float() >= 24 {
				return true
			}
		}
	}
	return false
}

func roomUnit(v float64, metric, likelyMetric bool) length.Unit {
	switch {
	case v >= 1000:
		return length.Millimetres
	case metric && v >= 100:
		return length.Centimetres
	case v >= 150:
		return length.Bare
	case metric || likelyMetric:
		return length.Metres
	}
	return length.Feet
}

func inchUnit(v float64, metric bool) length.Unit {
	switch {
	case v >= 150:
		return length.Millimetres
	case metric && v >= 100:
		return length.Millimetres
	case metric && v >= 4:
		return length.Centimetres
	case metric:
		return length.Metres
	}
	return length.Inches
}

// share gives the sizes of "a x b" one unit where only one was said: "3 ft by 11", "4 x 8 m". A third size is a thickness
// and shares nothing. Metres and centimetres spoken bare ("3 m 60 by 4 10") are read alike.
func share(ts []token) []token {
	out := append([]token(nil), ts...)
	if len(out) < 2 {
		return out
	}
	n := min(2, len(out))
	for i := 0; i < n; i++ {
		o := out[1-i%2]
		if out[i].class != tNumber || o.class != tLength || o.meas.Form == length.Dashed && out[i].num.Den > 1 {
			continue
		}
		u := o.meas.Unit
		if o.meas.Form == length.Dashed {
			u = length.Feet
		}
		if len(out) == 2 || i < 2 {
			withUnit(&out[i], u)
		}
	}
	return out
}

func withUnit(t *token, u length.Unit) {
	n, err := t.num.Of(u.Size())
	if err != nil {
		return
	}
	t.class, t.meas.Unit, t.meas.Len = tLength, u, n
}
