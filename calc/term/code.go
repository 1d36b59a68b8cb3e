package term

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"lastrow/calc/length"
)

// Encode gives a value as the name of its type and an exact text, which Decode reads back. A sum has no such text: its
// type is "".
func Encode(v Value) (kind, text string) {
	switch v := v.(type) {
	case Len:
		return "len", strconv.FormatInt(int64(v), 10)
	case Lens:
		parts := make([]string, len(v))
		for i, l := range v {
			parts[i] = strconv.FormatInt(int64(l), 10)
		}
		return "lens", strings.Join(parts, " ")
	case Area:
		return "area", v.Nm2().String()
	case Volume:
		return "volume", v.Nm3().String()
	case Count:
		return "count", strconv.FormatInt(int64(v), 10)
	case Number:
		return "number", v.RatString()
	case Percent:
		return "percent", strconv.FormatInt(int64(v), 10)
	case Money:
		return "money", strings.TrimSpace(strconv.FormatInt(v.Minor, 10) + " " + v.Currency)
	case Word:
		return "word", string(v)
	}
	return encodeFloat(v)
}

func encodeFloat(v Value) (kind, text string) {
	switch v := v.(type) {
	case Degrees:
		return "degrees", strconv.FormatFloat(float64(v), 'g', -1, 64)
	case Mass:
		return "mass", strconv.FormatFloat(float64(v), 'g', -1, 64)
	case Hours:
		return "hours", strconv.FormatFloat(float64(v), 'g', -1, 64)
	case Pass:
		return "pass", strconv.FormatBool(bool(v))
	}
	return "", ""
}

// Decode reads what Encode wrote.
func Decode(kind, text string) (Value, error) {
	decode, ok := decoders[kind]
	if !ok {
		return nil, fmt.Errorf("%q is no type of value", kind)
	}
	v, ok := decode(text)
	if !ok {
		return nil, fmt.Errorf("%q is no %s", text, kind)
	}
	return v, nil
}

var decoders = map[string]func(string) (Value, bool){
	"len":     func(s string) (Value, bool) { n, ok := whole(s); return Len(n), ok },
	"count":   func(s string) (Value, bool) { n, ok := whole(s); return Count(n), ok },
	"percent": func(s string) (Value, bool) { n, ok := whole(s); return Percent(n), ok },
	"word":    func(s string) (Value, bool) { return Word(s), true },
	"degrees": func(s string) (Value, bool) { f, err := strconv.ParseFloat(s, 64); return Degrees(f), err == nil },
	"mass":    func(s string) (Value, bool) { f, err := strconv.ParseFloat(s, 64); return Mass(f), err == nil },
	"hours":   func(s string) (Value, bool) { f, err := strconv.ParseFloat(s, 64); return Hours(f), err == nil },
	"pass":    func(s string) (Value, bool) { b, err := strconv.ParseBool(s); return Pass(b), err == nil },
	"number":  func(s string) (Value, bool) { q, ok := new(big.Rat).SetString(s); return Number{q}, ok },
	"lens":    decodeLens,
	"money":   decodeMoney,
	"area": func(s string) (Value, bool) {
		n, ok := new(big.Int).SetString(s, 10)
		if !ok {
			return nil, false
		}
		return Area{length.AreaOf(n)}, true
	},
	"volume": func(s string) (Value, bool) {
		n, ok := new(big.Int).SetString(s, 10)
		if !ok {
			return nil, false
		}
		return Volume{length.VolumeOf(n)}, true
	},
}

func whole(s string) (int64, bool) {
	n, err := strconv.ParseInt(s, 10, 64)
	return n, err == nil
}

func decodeLens(s string) (Value, bool) {
	var v Lens
	for _, part := range strings.Fields(s) {
		n, ok := whole(part)
		if !ok {
			return nil, false
		}
		v = append(v, length.Length(n))
	}
	return v, true
}

func decodeMoney(s string) (Value, bool) {
	minor, currency, _ := strings.Cut(s, " ")
	n, ok := whole(minor)
	return Money{n, currency}, ok
}
