package grammar

import (
	"fmt"
	"math/big"
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// String is the question in canonical form: its kind, then name and value by turns, then a question mark. Reading it
// gives the same question. Inputs of the job and defaults are left out.
func (q Question) String() string {
	var b strings.Builder
	b.WriteString(string(q.Kind))
	sep := " "
	if q.Job != "" {
		b.WriteString(" of job " + q.Job)
		sep = ": "
	}
	for _, g := range q.Given {
		if g.From == term.FromJob || g.From == term.Default {
			continue
		}
		text := valueText(g.Value)
		if text == "" {
			continue
		}
		b.WriteString(sep + string(g.Name) + " " + text)
		sep = ", "
	}
	b.WriteByte('?')
	return b.String()
}

func valueText(v term.Value) string {
	switch v := v.(type) {
	case term.Len:
		return Size{Len: length.Length(v), System: roundIn(length.Length(v))}.String()
	case term.Lens:
		var s []string
		for _, l := range v {
			s = append(s, Size{Len: l, System: roundIn(l)}.String())
		}
		return strings.Join(s, " & ")
	case term.Area:
		return areaText(v.Area)
	case term.Count:
		return fmt.Sprint(int64(v))
	case term.Number:
		return strings.TrimRight(strings.TrimRight(v.FloatString(6), "0"), ".")
	case term.Percent:
		return Thousandths(v).String()
	case term.Degrees:
		return decimal(int64(float64(v)*1e6+0.5), 1e6) + " deg"
	case term.Money:
		return strings.TrimSpace(Cents(v.Minor).String() + " " + moneyWord(v.Currency))
	case term.Word:
		return string(v)
	case term.Expr:
		return v.Expr.String()
	}
	return ""
}

func moneyWord(currency string) string {
	if currency == "" {
		return "a unit"
	}
	return currency
}

// roundIn is the system that a length is round in: inches where a tape shows it to 1/64 in.
func roundIn(l length.Length) length.System {
	if l%length.SixtyFourth == 0 {
		return length.Imperial
	}
	return length.Metric
}

// areaText gives an area in the unit that it is round in.
func areaText(a length.Area) string {
	for _, u := range []string{"sq ft", "sq m"} {
		q := a.Over(areaUnits[u])
		if q.Denom().IsInt64() && q.Denom().Int64() <= 1_000_000 && pow10(q) {
			return decimalRat(q, 6) + " " + u
		}
	}
	return decimalRat(a.Over(length.SquareMetre), 9) + " sq m"
}

func pow10(q *big.Rat) bool { return new(big.Int).Rem(big.NewInt(1_000_000), q.Denom()).Sign() == 0 }

func decimalRat(q *big.Rat, places int) string {
	s := q.FloatString(places)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// readCanonical reads what String of a statement or a question printed, several statements parted by "; ".
func readCanonical(text string) (Reading, bool) {
	first, _, _ := strings.Cut(text, " ")
	first = strings.TrimRight(first, "?")
	if !canonicalWords[first] {
		return Reading{}, false
	}
	if strings.HasSuffix(text, "?") {
		q, ok := parseQuestion(text)
		return Reading{Question: q}, ok
	}
	var out Reading
	for _, part := range strings.Split(text, "; ") {
		s, err := ParseStatement(part)
		if err != nil {
			return Reading{}, false
		}
		if job, ok := s.(JobName); ok && strings.ContainsAny(job.Name, ".,;") {
			return Reading{}, false
		}
		if g, ok := s.(Gap); ok && g.Size.Len >= 5*foot {
			return Reading{}, false
		}
		out.Statements = append(out.Statements, s)
	}
	return out, true
}

var canonicalWords = wordsOf()

func wordsOf() map[string]bool {
	out := map[string]bool{"plan": true, "pipe": true, "post": true, "hearth": true, "fixture": true, "doorway": true, "opening": true, "hall": true, "annex": true}
	for _, a := range asks {
		out[string(a.kind)] = true
	}
	out["measure"] = true
	for _, k := range []term.Kind{term.SetJob, term.SetRoom, term.SetWalls, term.SetCloset, term.SetPlank, term.SetUnderlay, term.SetGap, term.SetDirection, term.SetStart,
		term.SetFirstRow, term.SetLeastEnd, term.SetLeastStagger, term.SetLeastRow, term.SetKerf, term.SetTrim, term.SetHeight, term.SetSubfloor, term.SetReading, term.SetPrice,
		term.SetSpare, term.SetLaid, term.SetOpened, term.SetDamaged, term.SetNote, term.SetHidden} {
		out[string(k)] = true
	}
	return out
}

// parseQuestion reads a question in canonical form.
func parseQuestion(text string) (*Question, bool) {
	body := strings.TrimSuffix(text, "?")
	kind, rest, _ := strings.Cut(body, " ")
	q := &Question{Kind: term.Kind(kind)}
	if _, ok := askPatterns[q.Kind]; !ok && q.Kind != term.AskMeasure {
		return nil, false
	}
	if of, more, ok := strings.Cut(rest, ": "); ok && strings.HasPrefix(of, "of job ") {
		q.Job, rest = of[len("of job "):], more
	} else if name, ok := strings.CutPrefix(rest, "of job "); ok {
		q.Job, rest = name, ""
	}
	if rest == "" {
		return q, true
	}
	for _, pair := range strings.Split(rest, ", ") {
		g, ok := parsePair(pair)
		if !ok {
			return nil, false
		}
		q.Given = append(q.Given, g)
	}
	return q, true
}

func parsePair(pair string) (term.Given, bool) {
	name, text, ok := strings.Cut(pair, " ")
	if !ok {
		return term.Given{}, false
	}
	if name == string(term.Expression) {
		e, ok := parseSum(text)
		return given(term.Expression, term.Expr{Expr: e}), ok
	}
	if !names[term.Name(name)] {
		return term.Given{}, false
	}
	toks, bad := lex(text, true)
	if bad != "" || len(toks) == 0 {
		return term.Given{}, false
	}
	v := tokensValue(toks)
	return given(term.Name(name), v), v != nil
}

// tokensValue reads the tokens of one value.
func tokensValue(toks []token) term.Value {
	t := toks[0]
	switch t.class {
	case tLength:
		return lengthsValue(toks)
	case tArea:
		return term.Area{Area: flatOf(t).Area()}
	case tNumber:
		if len(toks) == 3 && toks[1].text == "a" {
			n, _ := scale(t.num, 100)
			return term.Money{Minor: n}
		}
		if t.num.Den == 1 {
			return term.Count(t.num.Num)
		}
		return term.Number{Rat: ratOf(t.num)}
	case tPercent:
		n, err := scale(t.num, 1000)
		if err != nil {
			return nil
		}
		return term.Percent(n)
	case tAngle:
		return term.Degrees(t.num.Float())
	case tMoney:
		n, err := scale(t.num, 100)
		if err != nil {
			return nil
		}
		return term.Money{Minor: n, Currency: t.unit}
	case tWord:
		return wordsValue(toks)
	}
	return nil
}

// wordsValue is a choice of one word or more: "along west".
func wordsValue(toks []token) term.Value {
	var words []string
	for _, t := range toks {
		if t.class != tWord {
			break
		}
		words = append(words, t.text)
	}
	return term.Word(strings.Join(words, " "))
}

// names are those that a question can be given.
var names = slotNames()

func slotNames() map[term.Name]bool {
	out := map[term.Name]bool{term.Test: true, term.Reading: true, term.Subfloor: true, term.Leftover: true, term.Offset: true, term.LeastRow: true, term.LeastEnd: true, term.Walls: true, term.Kerf: true,
		term.FloorHeight: true, term.OtherHeight: true, term.OtherFloor: true, term.PlankThickness: true, term.UnderlayThickness: true, term.Direction: true, term.Start: true, term.RollWidth: true, term.RollLength: true, "wall": true, "unit": true, "topic": true, "system": true}
	for _, slots := range takes {
		for _, s := range slots {
			out[s.name] = true
		}
	}
	return out
}

func lengthsValue(toks []token) term.Value {
	if len(toks) == 1 {
		return term.Len(toks[0].meas.Len)
	}
	var out term.Lens
	for i, t := range toks {
		switch {
		case i%2 == 1 && t.text != "&":
			return nil
		case i%2 == 0:
			out = append(out, t.meas.Len)
		}
	}
	return out
}

func lower(s string) string { return strings.ToLower(s) }
