package grammar

import (
	"regexp"
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"lastrow/calc/length"
	"lastrow/calc/measure"
	"lastrow/calc/term"
)

// sumTree is the grammar of a sum: products added, factors multiplied, parts of things.
type sumTree struct {
	First *product   `parser:"@@"`
	Rest  []*sumTail `parser:"@@*"`
}

type sumTail struct {
	Op string   `parser:"@('+'|'-')"`
	X  *product `parser:"@@"`
}

type product struct {
	First *factor        `parser:"@@"`
	Rest  []*productTail `parser:"@@*"`
}

type productTail struct {
	Op string  `parser:"@('*'|'/')"`
	X  *factor `parser:"@@"`
}

type factor struct {
	Part  *part        `parser:"  @@"`
	Group *sumTree     `parser:"| '(' @@ ')'"`
	Leaf  *lexer.Token `parser:"| @(Length|Number|Area|Volume|Percent)"`
}

type part struct {
	Half bool         `parser:"( @'half'"`
	Frac *lexer.Token `parser:"| @(Number|Percent) )"`
	Of   *factor      `parser:"'of' @@"`
}

var sums = participle.MustBuild[sumTree](participle.Lexer(definition{}), participle.UseLookahead(2))

// mostDeep is the most "half of" and "(" that a sum may nest.
const mostDeep = 60

// sumReader turns the tree of a sum into an expression. Strict text gives every length a unit; elsewhere a bare number
// is inches where it is added to a length or has a fraction of an inch.
type sumReader struct {
	src    string
	toks   []token
	strict bool
	bare   length.Unit // of bare numbers that are added
	alone  length.Unit // of a bare number that is shown in another unit
}

// parseSum reads the canonical text of an expression.
func parseSum(text string) (measure.Expr, bool) {
	body, to, ok := conversion(text)
	m := understand(body, nil)
	toks := m.sumTokens()
	if len(toks) == 0 || m.bad != "" {
		return nil, false
	}
	e, err := parseTokens(&sumReader{src: m.src, toks: toks, strict: true})
	if err != "" {
		return nil, false
	}
	if ok {
		return measure.Convert{X: e, To: to}, true
	}
	return e, true
}

func parseTokens(s *sumReader) (measure.Expr, string) {
	depth := 0
	for _, t := range s.toks {
		if t.neg {
			return nil, "a size under nothing, -" + t.text
		}
		if t.text == "half" || t.text == "(" {
			depth++
		}
	}
	if depth > mostDeep {
		return nil, "so many brackets"
	}
	if len(s.toks) > 600 {
		return nil, "so long a sum"
	}
	peek, err := lexer.Upgrade(&feed{src: s.src, toks: s.toks})
	if err != nil {
		return nil, "how it adds up"
	}
	tree, err := sums.ParseFromLexer(peek)
	if err != nil {
		return nil, "how it adds up"
	}
	return s.sum(tree), ""
}

// sumTokens gives the quantities and operators of a message as the tokens of a sum; other words are left out.
func (m *message) sumTokens() []token {
	var out []token
	op := func(text string, it *item) {
		if len(out) > 0 || it.word == "" {
			out = append(out, token{class: tOp, text: text, at: it.at, end: it.at})
		}
	}
	taken, sign := m.takenFrom()
	parting := m.partsBy()
	for i := range m.items {
		it := &m.items[i]
		switch {
		case taken > 0 && i >= m.quantities()[0] && i < taken:
		case taken > 0 && i == taken:
			out = append(append(out, it.sizes...), token{class: tOp, text: sign, at: it.at, end: it.at})
			out = append(out, m.items[m.quantities()[0]].sizes...)
		case it.quantity():
			for k, t := range it.sizes {
				if k > 0 {
					op(parting, it)
				}
				out = append(out, t)
			}
		case (it.word == "by" || it.word == "into") && parting == "/":
			op("/", it)
		case it.mark == "x":
			op("*", it)
		case it.class == tOp && it.mark != "=":
			op(it.mark, it)
		case it.meaning == "plus":
			op("+", it)
		case it.meaning == "minus":
			op("-", it)
		case it.meaning == "times":
			op("*", it)
		case it.meaning == "divide" && it.word != "":
			out = wholeBefore(out, it)
			op("/", it)
		case it.word == "over" && i > 0 && m.items[i-1].quantity():
			op("/", it)
		case (it.word == "double" || it.word == "twice") && i+1 < len(m.items) && m.items[i+1].quantity():
			two := token{class: tNumber, text: "2", at: it.at, end: it.at, num: length.Number{Num: 2, Den: 1}}
			out = append(out, two)
			op("*", it)
		case it.word == "half" || it.word == "halve":
			out = append(out, token{class: tWord, text: "half", at: it.at, end: it.end})
			if i+1 < len(m.items) && m.items[i+1].quantity() {
				out = append(out, token{class: tWord, text: "of", at: it.end, end: it.end})
			}
		case it.word == "of" && len(out) > 0 && (out[len(out)-1].text == "half" || out[len(out)-1].class == tNumber || out[len(out)-1].class == tPercent):
			out = append(out, token{class: tWord, text: it.word, at: it.at, end: it.end})
		}
	}
	return out
}

// takenFrom gives the item that the first size is taken from or added to, and the operator: "take 3/16 off 47 1/2",
// "subtract 8 in from 11 ft", "add 3 ft 4 to 6 ft 9"; or 0.
func (m *message) takenFrom() (second int, op string) {
	qs := m.quantities()
	if len(qs) != 2 || len(m.items[qs[1]].sizes) != 1 || len(m.items[qs[0]].sizes) != 1 {
		return 0, ""
	}
	for i := range m.items[:qs[0]] {
		it := &m.items[i]
		for j := qs[0] + 1; j < qs[1]; j++ {
			switch w := m.items[j].word; {
			case (it.meaning == "subtract" || it.meaning == "minus" || it.word == "take" || it.word == "knock") && (w == "off" || w == "from"):
				return qs[1], "-"
			case it.word == "add" && w == "to" && (m.items[qs[1]].class == tLength || m.items[qs[0]].class == tPercent):
				return qs[1], "+"
			}
		}
	}
	return 0, ""
}

// wholeBefore puts what was added up before a spoken "divided by" in brackets: "47.5 less 1/8 div 2" parts the rest.
func wholeBefore(toks []token, it *item) []token {
	for _, t := range toks {
		if t.text == "+" || t.text == "-" {
			open := token{class: tOp, text: "(", at: toks[0].at, end: toks[0].at}
			return append(append([]token{open}, toks...), token{class: tOp, text: ")", at: it.at, end: it.at})
		}
		if t.text == "(" {
			return toks
		}
	}
	return toks
}

// partsBy is what "by" stands for: "divide 12 ft 8 by 3".
func (m *message) partsBy() string {
	qs := m.quantities()
	if len(qs) > 0 {
		for i := range m.items[:qs[0]] {
			if m.items[i].meaning == "divide" || m.items[i].word == "split" && m.hasWord("into") {
				return "/"
			}
		}
	}
	return "*"
}

func (s *sumReader) sum(t *sumTree) measure.Expr {
	e := s.product(t.First, len(t.Rest) > 0)
	for _, r := range t.Rest {
		op := measure.Add
		if r.Op == "-" {
			op = measure.Sub
		}
		y := s.product(r.X, true)
		if share, ok := s.share(r.X); ok {
			y = measure.Part{Of: measure.Num(share), X: e} // 240 sq ft + 10 % is a tenth of it more
		}
		e = measure.Binary{Op: op, X: e, Y: y}
	}
	return e
}

func (s *sumReader) product(p *product, added bool) measure.Expr {
	if len(p.Rest) == 0 {
		return s.factor(p.First, added)
	}
	e := s.factor(p.First, false)
	for _, r := range p.Rest {
		op := measure.Mul
		if r.Op == "/" {
			op = measure.Div
		}
		e = measure.Binary{Op: op, X: e, Y: s.factor(r.X, false)}
	}
	return e
}

func (s *sumReader) factor(f *factor, added bool) measure.Expr {
	switch {
	case f.Group != nil:
		return s.sum(f.Group)
	case f.Part != nil:
		n := length.Number{Num: 1, Den: 2}
		if f.Part.Frac != nil {
			n = hundredth(s.toks[f.Part.Frac.Pos.Line])
		}
		return measure.Part{Of: measure.Num(n), X: s.factor(f.Part.Of, added)}
	}
	return s.leaf(s.toks[f.Leaf.Pos.Line], added)
}

func (s *sumReader) leaf(t token, added bool) measure.Expr {
	if t.class == tNumber && s.alone != length.Bare {
		withUnit(&t, s.alone)
	}
	switch t.class {
	case tPercent:
		return measure.Num(hundredth(t))
	case tLength:
		return measure.Len{Len: t.meas.Len, System: t.meas.Unit.System()}
	case tArea, tVolume:
		return measure.Of(t.num, measure.Unit(t.unit))
	}
	fraction := t.num.Den > 1 && t.num.Den&(t.num.Den-1) == 0 && strings.Contains(s.src[t.at:t.end], "/")
	if s.strict || !fraction && !(added && s.bare != length.Bare) {
		return measure.Num(t.num)
	}
	u := s.bare
	if u == length.Bare || fraction {
		u = length.Inches
	}
	n, err := t.num.Of(u.Size())
	if err != nil {
		return measure.Num(t.num)
	}
	return measure.Len{Len: n, System: u.System()}
}

// unitNames are the spellings of units that a sum may be shown in.
var unitNames = []struct {
	spelt string
	unit  measure.Unit
}{
	{`(?:feet|foot|ft)\s*(?:and|n|&|/|-|\s)\s*(?:inches|inch|ins|in)`, measure.FeetInches},
	{`(?:square|sq\.?)\s*(?:feet|foot|ft)|sqft|ft2|ft²`, measure.SquareFeet}, {`(?:square|sq\.?)\s*(?:metres|meters|metre|meter|m)|sqm|m2|m²`, measure.SquareMetres},
	{`(?:square|sq\.?)\s*(?:inches|inch|in)`, measure.SquareInches}, {`(?:square|sq\.?)\s*(?:yards|yard|yd)`, measure.SquareYards},
	{`(?:cubic|cu\.?)\s*(?:feet|foot|ft)`, measure.CubicFeet}, {`(?:cubic|cu\.?)\s*(?:metres|meters|metre|meter|m)`, measure.CubicMetres}, {`(?:cubic|cu\.?)\s*(?:inches|inch|in)`, measure.CubicInches},
	{`litres|liters|litre|liter`, measure.Litres}, {`gallons|gallon`, measure.Gallons},
	{`millimetres|millimeters|millimetre|millimeter|mm|mil|metric`, measure.Millimetres}, {`centimetres|centimeters|centimetre|centimeter|cm`, measure.Centimetres},
	{`metres|meters|metre|meter|m`, measure.Metres}, {`yards|yard|yds|yd`, measure.Yards}, {`feet|foot|ft`, measure.Feet}, {`inches|inch|ins|in|imperial`, measure.Inches},
}

type unitForm struct {
	tail, head *regexp.Regexp
	unit       measure.Unit
}

var unitForms = compileUnits()

func compileUnits() []unitForm {
	var out []unitForm
	for _, u := range unitNames {
		out = append(out, unitForm{
			regexp.MustCompile(`(?i)(?:^|\s)(?:in|into|to|as)\s+(?:` + u.spelt + `)(?:\s+(?:please|pls|thanks|ta|thx|for me|then|now|instead))*[\s?.!]*$`),
			regexp.MustCompile(`(?i)\bhow (?:many|much)\s+(?:` + u.spelt + `)\s+(?:is|are|in|does|do|make|makes|would|to|of)\b`),
			u.unit,
		})
	}
	return out
}

// asksFor says whether one of the words may stand in the text: it is cheap, and spares most messages the search for units.
func asksFor(text string, words ...string) bool {
	for i := 0; i < len(text); i++ {
		if i > 0 && text[i-1] > ' ' {
			continue
		}
		for _, w := range words {
			if len(text)-i > len(w) && strings.EqualFold(text[i:i+len(w)], w) {
				return true
			}
		}
	}
	return false
}

// conversion finds the unit that a sum is asked for in, and gives the text without it.
func conversion(text string) (rest string, to measure.Unit, ok bool) {
	tail := text[max(0, len(text)-60):]
	for _, u := range unitForms {
		if !asksFor(tail, "in", "to", "as") {
			break
		}
		if at := u.tail.FindStringIndex(tail); at != nil {
			return text[:len(text)-len(tail)+at[0]], u.unit, true
		}
	}
	if len(text) > 400 || !asksFor(text, "how") {
		return text, "", false
	}
	for _, u := range unitForms {
		if at := u.head.FindStringIndex(text); at != nil {
			return text[:at[0]] + text[at[1]:], u.unit, true
		}
	}
	return text, "", false
}

// sum reads a message that asks to work out sizes.
func (r *reader) sum() (Reading, bool) {
	if len(r.quantities()) == 0 || r.ofThose() {
		return Reading{}, false
	}
	kind, top, _ := r.kind()
	body, to, convert := conversion(r.src)
	m := r.message
	if convert {
		m = understand(body, r.ctx.Jobs)
	}
	toks := m.sumTokens()
	row := r.inOneRow(toks)
	if row {
		toks = []token{toks[0], {class: tOp, text: "*", at: toks[1].at, end: toks[1].at}, toks[1]}
	}
	if (r.has("add") || r.asOne(toks)) && !hasOp(toks) {
		toks = m.added(toks)
	}
	if convert && kind == term.AskPlan {
		top = 0
	}
	if r.areaOf() {
		r.inRoomUnits(toks)
	} else if !row && !r.isSum(toks, top, convert, m) {
		return Reading{}, false
	}
	for _, q := range r.quantities() {
		if r.items[q].vague {
			return r.askBack(&Question{Kind: term.AskMeasure}, term.Expression), true
		}
	}
	e, why := parseTokens(&sumReader{src: m.src, toks: toks, bare: m.bareUnit(toks), alone: shownFrom(toks, to)})
	if why != "" {
		if top >= 4 || !hasOp(toks) && !slices.ContainsFunc(toks, func(t token) bool { return t.neg }) {
			return Reading{}, false
		}
		return problem("unclear", term.AskMeasure, r.gist(), why, example(term.AskMeasure)), true
	}
	if convert {
		e = measure.Convert{X: e, To: to}
	}
	return Reading{Question: &Question{Kind: term.AskMeasure, Given: []term.Given{given(term.Expression, term.Expr{Expr: e})}}}, true
}

// ofThose says whether the message asks how many of what it names, after a question of goods: no product of two sizes is meant.
func (r *reader) ofThose() bool {
	return r.ctx.Last != nil && r.has("howmany") && r.hasWord("those", "these", "them", "that")
}

// asOne says whether sizes are asked for in one: "what do 2.4m and 1.35m come to".
func (r *reader) asOne(toks []token) bool {
	if len(toks) < 2 || !r.has("comes", "total", "overall") || r.has("box", "roll", "stick", "area", "price") {
		return false
	}
	qs := r.quantities()
	for k := 1; k < len(qs); k++ {
		if !r.listed(qs[k-1], qs[k]) {
			return false
		}
	}
	for _, t := range toks {
		if t.class != tLength && t.class != tNumber && t.text != "+" {
			return false
		}
	}
	return true
}

// shownFrom is the unit of a bare number shown in another system: "1285 in inches" is of millimetres, "48 in mm" of
// inches; or of the two sides of an area: "how many square feet in 14 by 12".
func shownFrom(toks []token, to measure.Unit) length.Unit {
	if len(toks) == 3 && toks[1].text == "*" && toks[0].class == tNumber && toks[2].class == tNumber {
		return map[measure.Unit]length.Unit{measure.SquareFeet: length.Feet, measure.SquareMetres: length.Metres}[to]
	}
	if len(toks) != 1 {
		return length.Bare
	}
	switch v := toks[0].num.Float(); to {
	case measure.Inches, measure.FeetInches, measure.Feet:
		if v >= 100 && to != measure.Feet || v >= 400 {
			return length.Millimetres
		}
	case measure.Millimetres, measure.Centimetres:
		return length.Inches
	}
	return length.Bare
}

// isSum says whether the message is a sum to work out, and not sizes said of a floor.
func (r *reader) isSum(toks []token, top float64, convert bool, m *message) bool {
	if len(toks) == 0 || r.has("room", "plank", "underlay", "laid", "opened", "gap", "lastrow", "box", "roll") && !convert && !r.has("add", "minus", "half", "divide", "times", "plus", "subtract") {
		return false
	}
	if taken, _ := r.takenFrom(); taken > 0 || r.asOne(toks) || r.partsBy() == "/" && hasOp(toks) || r.has("double") && hasOp(toks) {
		return true
	}
	if top >= 4 && !r.has("add") {
		return false
	}
	if r.ctx.Last != nil && r.has("same") {
		return false
	}
	if r.has("box", "underlay", "gap", "roll") && !r.has("add", "half", "divide", "times", "minus") {
		return false
	}
	if convert {
		return len(m.quantities()) > 0
	}
	if hasWordTok(toks, "of") || r.has("add") && len(toks) > 1 {
		return true
	}
	return hasOp(toks) && len(toks) > 2 && (!r.onlySizes() || r.bareProduct())
}

// areaOf reads "area of 11ft 4 by 12ft 6".
func (r *reader) areaOf() bool {
	return len(r.seq) > 1 && len(r.seq) < 6 && r.has("area") && len(r.quantities()) == 1 && len(r.items[r.quantities()[0]].sizes) == 2 && r.before(r.quantities()[0], "area")
}

// inRoomUnits gives the bare sizes of an area the unit of a room's sides.
func (r *reader) inRoomUnits(toks []token) {
	for i := range toks {
		if u := r.unitFor(toks[i], bareSide, r.lean); toks[i].class == tNumber && u != length.Bare {
			withUnit(&toks[i], u)
		}
	}
}

// bareProduct says whether the message is "3 x 47 1/2" and nothing else: no room, for a room has no such fraction, and no plank.
func (r *reader) bareProduct() bool {
	it := &r.items[0]
	if len(r.seq) != 1 || len(it.sizes) != 2 || it.sizes[0].class != tNumber || it.sizes[1].class != tNumber {
		return false
	}
	_, _, plank := r.several(it, &slot{dim: dPlank, bare: bareFace}, r.lean)
	return !plank && r.oddFeet(it.sizes)
}

// onlySizes says whether the only joining of numbers is "a x b" with nothing asked.
func (r *reader) onlySizes() bool {
	for i := range r.items {
		it := &r.items[i]
		if it.class == tOp || it.meaning == "plus" || it.meaning == "minus" || it.meaning == "times" || it.meaning == "divide" {
			return false
		}
		if it.quantity() && len(it.sizes) > 1 && strings.Contains(r.src[it.at:it.end], "*") {
			return false
		}
	}
	return !r.asks() || len(r.seq) > 3
}

func hasOp(toks []token) bool {
	for _, t := range toks {
		if t.class == tOp {
			return true
		}
	}
	return false
}

func hasWordTok(toks []token, w string) bool {
	for _, t := range toks {
		if t.class == tWord && t.text == w {
			return true
		}
	}
	return false
}

// added puts a plus between the sizes of a list.
func (m *message) added(toks []token) []token {
	var out []token
	for i, t := range toks {
		if i > 0 {
			out = append(out, token{class: tOp, text: "+", at: t.at, end: t.at})
		}
		out = append(out, t)
	}
	return out
}

// bareUnit is the unit of bare numbers added to others: that of the other sizes, or inches where one has a fraction.
func (m *message) bareUnit(toks []token) length.Unit {
	u := length.Bare
	for _, t := range toks {
		switch {
		case t.class == tLength && t.meas.Form == length.Single && t.meas.Unit >= length.Millimetres:
			return t.meas.Unit
		case t.class == tLength, t.class == tNumber && t.num.Den > 1 && !m.decimal(t):
			u = length.Inches
		}
	}
	return u
}
