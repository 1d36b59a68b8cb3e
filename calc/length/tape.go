package length

import (
	"strconv"
	"strings"
)

// Tape is how lengths are shown: the system, and the finest division read off it.
type Tape struct {
	System System
	Parts  int64 // divisions of an inch (16, 32 or 64), or of a millimetre (1 or 10); 0 stands for 16 or 1
}

// Division is the finest length that the tape shows.
func (t Tape) Division() Length {
	if t.System == Metric {
		return Millimetre / Length(max(t.Parts, 1))
	}
	if t.Parts == 0 {
		return Inch / 16
	}
	return Inch / Length(t.Parts)
}

// Round gives the tape's mark nearest to l; halves go up, away from zero.
func (t Tape) Round(l Length) Length {
	d := t.Division()
	if l < 0 {
		return -t.Round(-l)
	}
	return (l + d/2) / d * d
}

// Up gives the first mark not under l.
func (t Tape) Up(l Length) Length {
	d := t.Division()
	if r := l % d; r > 0 {
		return l - r + d
	}
	return l - l%d
}

// Text shows l to the nearest mark: inches up to 8 ft, then feet and inches; or millimetres.
func (t Tape) Text(l Length) string {
	r := t.Round(l)
	if t.System == Metric {
		return decimals(r, Millimetre) + " mm"
	}
	if r <= -8*Foot || r >= 8*Foot {
		return feet(r)
	}
	return inches(r) + " in"
}

// Room shows l as the side of a room is said: feet and inches from 1 ft on, or metres from 1 m on.
func (t Tape) Room(l Length) string {
	r := t.Round(l)
	switch {
	case t.System == Metric && r >= Metre:
		return decimals(r, Metre) + " m"
	case t.System == Imperial && r >= Foot:
		return feet(r)
	}
	return t.Text(l)
}

// Exact shows l without rounding, in the tape's system where it can: a length that no inch tape shows is given in millimetres.
func (t Tape) Exact(l Length) string {
	if t.System == Metric || l%SixtyFourth != 0 {
		return decimals(l, Millimetre) + " mm"
	}
	return Tape{Imperial, 64}.Text(l)
}

// String gives l exactly, in inches where 1/64 in divides it and millimetres where not; Parse reads it back.
func (l Length) String() string { return Tape{}.Exact(l) }

func feet(l Length) string {
	sign := ""
	if l < 0 {
		sign, l = "-", -l
	}
	text := sign + strconv.FormatInt(int64(l/Foot), 10) + " ft"
	if rest := l % Foot; rest != 0 {
		text += " " + inches(rest) + " in"
	}
	return text
}

// inches gives a multiple of 1/64 in as a mixed number.
func inches(l Length) string {
	sign := ""
	if l < 0 {
		sign, l = "-", -l
	}
	whole, part := l/Inch, l%Inch/SixtyFourth
	if part == 0 {
		return sign + strconv.FormatInt(int64(whole), 10)
	}
	den := Length(64)
	for part%2 == 0 {
		part, den = part/2, den/2
	}
	text := strconv.FormatInt(int64(part), 10) + "/" + strconv.FormatInt(int64(den), 10)
	if whole > 0 {
		text = strconv.FormatInt(int64(whole), 10) + " " + text
	}
	return sign + text
}

// decimals gives l in the unit as a decimal number, exactly.
func decimals(l, unit Length) string {
	sign := ""
	if l < 0 {
		sign, l = "-", -l
	}
	text := sign + strconv.FormatInt(int64(l/unit), 10)
	part := l % unit
	if part == 0 {
		return text
	}
	digits := strconv.FormatInt(int64(unit+part), 10)[1:]
	return text + "." + strings.TrimRight(digits, "0")
}
