package answer

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// Value is a term.Value with its text; it marshals to one object with "text" and the field of its kind.
type Value struct {
	Text string
	Of   term.Value
	kept []byte // the object that it was read from, where it was
}

// UnmarshalJSON keeps the object as it is, so that it marshals to the same again; Of stays nil.
func (v *Value) UnmarshalJSON(b []byte) error {
	var object struct{ Text string }
	if err := json.Unmarshal(b, &object); err != nil {
		return err
	}
	v.Text, v.kept = object.Text, bytes.Clone(b)
	return nil
}

// MarshalJSON gives the object. Numbers are unrounded.
func (v Value) MarshalJSON() ([]byte, error) {
	if v.kept != nil {
		return v.kept, nil
	}
	fields := map[string]any{"text": v.Text}
	switch of := v.Of.(type) {
	case term.Len:
		fields["mm"] = decimalMM(length.Length(of))
	case term.Lens:
		list := []json.Number{}
		for _, l := range of {
			list = append(list, decimalMM(l))
		}
		fields["mm"] = list
	case term.Area:
		fields["m2"] = of.M2()
	case term.Volume:
		fields["m3"] = of.M3()
	case term.Count:
		fields["count"] = int64(of)
	case term.Number:
		fields["count"], _ = of.Float64()
	case term.Percent:
		fields["percent"] = float64(of) / 1000
	case term.Degrees:
		fields["deg"] = float64(of)
	case term.Mass:
		fields["kg"] = float64(of)
	case term.Hours:
		fields["hours"] = float64(of)
	case term.Money:
		fields["amount"] = json.Number(amount(of.Minor))
		fields["currency"] = of.Currency
	case term.Word:
		fields["word"] = string(of)
	case term.Pass:
		fields["pass"] = bool(of)
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	err := enc.Encode(fields)
	return bytes.TrimSpace(b.Bytes()), err
}

// decimalMM is a length in millimetres, exactly.
func decimalMM(l length.Length) json.Number {
	return json.Number(strings.TrimSuffix(length.Tape{System: length.Metric}.Exact(l), " mm"))
}

func amount(minor int64) string {
	sign := ""
	if minor < 0 {
		sign, minor = "-", -minor
	}
	return fmt.Sprintf("%s%d.%02d", sign, minor/100, minor%100)
}

// Show gives a value as people read it, on the job's tape.
func Show(v term.Value, t length.Tape) Value { return Value{Text: text(v, t), Of: v} }

func text(v term.Value, t length.Tape) string {
	switch v := v.(type) {
	case term.Len:
		return Length(length.Length(v), t)
	case term.Lens:
		var parts []string
		for _, l := range v {
			parts = append(parts, Length(l, t))
		}
		sep := ", "
		if len(parts) == 2 {
			sep = " x "
		}
		return strings.Join(parts, sep)
	case term.Area:
		return t.Area(v.Area)
	case term.Volume:
		return t.Volume(v.Volume)
	case term.Count:
		return strconv.FormatInt(int64(v), 10)
	case term.Number:
		return trim(v.FloatString(4))
	case term.Percent:
		return percent(float64(v) / 1000)
	case term.Degrees:
		return trim(strconv.FormatFloat(float64(v), 'f', 2, 64)) + "°"
	case term.Mass:
		return mass(float64(v), t)
	case term.Hours:
		return trim(strconv.FormatFloat(float64(v), 'f', 1, 64)) + " h"
	}
	return plain(v)
}

func plain(v term.Value) string {
	switch v := v.(type) {
	case term.Money:
		return strings.TrimSpace(amount(v.Minor) + " " + v.Currency)
	case term.Word:
		return Harmless(string(v))
	case term.Pass:
		if v {
			return "yes"
		}
		return "no"
	case fmt.Stringer:
		return Harmless(times.Replace(v.String()))
	}
	return ""
}

// times writes products as the trade does, without a sign that chats take for mark-up.
var times = strings.NewReplacer(" * ", " x ")

// Length shows a length on the job's tape; a thickness in whole millimetres stays in millimetres in an inch job too, and a
// drill bit of 5/32 in is not rounded to one of 3/16 in.
func Length(l length.Length, t length.Tape) string {
	if t.System == length.Imperial && l%length.SixtyFourth == 0 && l < length.Inch && l > 0 {
		return l.String()
	}
	if t.System == length.Imperial && l%length.SixtyFourth != 0 && l%length.Millimetre == 0 && l < 100*length.Millimetre && l > 0 {
		return l.String()
	}
	return t.Text(l)
}

func mass(kg float64, t length.Tape) string {
	if t.System == length.Imperial {
		return strconv.FormatFloat(kg/0.45359237, 'f', 0, 64) + " lb"
	}
	return strconv.FormatFloat(kg, 'f', 0, 64) + " kg"
}

// trim drops the zeros, and the point, that end a decimal.
func trim(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// percent shows a tenth of one percent, and more only of shares under one.
func percent(p float64) string {
	places := 1
	if p < 1 {
		places = 3
	}
	return trim(strconv.FormatFloat(p, 'f', places, 64)) + " %"
}
