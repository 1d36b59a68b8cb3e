package grammar

import (
	"regexp"
	"strings"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"lastrow/calc/length"
	"lastrow/calc/term"
	"lastrow/grammar/likely"
	"lastrow/grammar/words"
)

// items is the free grammar of a message: sizes joined by "x" or "by", and everything else one by one, in any order.
type items struct {
	Items []*parsed `parser:"@@*"`
}

type parsed struct {
	Sizes []*sized     `parser:"  @@ ( By @@ )*"`
	Other *lexer.Token `parser:"| @(Word|Area|Volume|Percent|Money|Angle|Mass|Clock|Time|By|Op|Sep|Mention|Other|Text)"`
}

type sized struct {
	Token lexer.Token `parser:"@(Length|Number)"`
}

var free = participle.MustBuild[items](participle.Lexer(definition{}))

// item is one thing said: a word with its meaning, a quantity, or a mark.
type item struct {
	sizes    []token // a quantity: one token, or several joined by "x"
	word     string  // as spelt
	meaning  string  // of a word; "" where it is not known
	mark     string  // a separator or an operator
	class    lexer.TokenType
	near     bool // the word was taken for a slip of another
	vague    bool // a quantity said to be more or less
	at, end  int  // in the text
	sentence int
}

func (it *item) quantity() bool { return len(it.sizes) > 0 }

// says whether the item is a word that carries a meaning.
func (it *item) says() bool {
	return it.word != "" && it.meaning != words.Filler && it.meaning != words.Everyday && it.meaning != ""
}

// message is a text cut into items.
type message struct {
	text    string // as typed
	src     string // with number words as digits
	items   []item
	seq     []said   // meanings in order, "#" for a quantity, without fillers and marks
	seqAt   []int    // the items that seq stands for
	unknown []string // words that are in no vocabulary
	mention bool
	bad     string // why a number could not be read
	sents   int
	telling bool  // a statement is read: a whole number before "planks" counts them
	large   bool  // a bare number over 24 has a fraction, so large bare numbers are inches
	firsts  []int // first item of each sentence
	job     string
	about   term.Kind              // of the places that quantities go to
	chances map[int]likely.Chances // of each quantity for each place, as they are asked for
	year    int64                  // of the house, where one is said
}

// stuckTest is the name of a moisture test with its reading against it: "rh75".
var stuckTest = regexp.MustCompile(`(?i)\b(rh|mc|cm|cacl)(\d)`)

// massShare is a share by mass as a carbide test gives it: "1.7 CM-%".
var massShare = regexp.MustCompile(`(?i)(\d)\s*cm[\s-]?%`)

// unstuck parts what the lexer would take for one thing, or for another.
func unstuck(text string) string {
	text = stuckTest.ReplaceAllString(threes(text), "$1 $2")
	if strings.Contains(text, "%") {
		text = massShare.ReplaceAllString(text, "$1 % carbide")
	}
	return text
}

// understand cuts a text into items and gives words their meaning.
func understand(text string, jobs []string) *message {
	m := &message{text: text, src: spoken(unstuck(text))}
	toks, bad := lex(m.src, false)
	if m.bad = bad; bad != "" {
		return m
	}
	spanIn(toks, m.src)
	if m.src != text {
		toks = mergeSpoken(toks)
	} else {
		toks = mergeTyped(toks)
	}
	joinBy(toks)
	m.parse(toks)
	m.job = m.nameJob(jobs)
	m.mean()
	m.verbs()
	m.asides()
	m.eachWay()
	m.sterling()
	m.mergeSides()
	m.markVague()
	m.large = m.inInches()
	m.split()
	return m
}

// mergeSpoken makes one size of "4 10" after a By, where the size before the By is in metres and centimetres or in feet
// and inches: "three metres sixty by four ten", "nine eleven by ten six".
func mergeSpoken(toks []token) []token {
	toks = append(toks, token{class: tOther})
	for i := 0; i+2 < len(toks); i++ {
		a, b := toks[i+1], toks[i+2]
		if spokenCents(toks, i) {
			a.num = length.Number{Num: toks[i].num.Num*100 + a.num.Num, Den: 100}
			a.at, a.class, a.unit, a.meas.Amount = toks[i].at, tMoney, "", a.num
			toks = append(append(toks[:i:i], a), toks[i+2:]...)
			continue
		}
		if spokenFeet(toks, i) || spokenCeiling(toks, i) {
			toks = append(toks[:i:i], append([]token{pairOf(toks[i], a)}, toks[i+2:]...)...)
			continue
		}
		if toks[i].text != "by" && toks[i].text != "x" || a.class != tNumber || b.class != tNumber || !a.num.Whole() || !b.num.Whole() || b.at-a.end != 1 {
			continue
		}
		u, more := length.Feet, length.Centimetre
		if i > 0 && toks[i-1].class == tLength {
			u = toks[i-1].meas.Unit
		}
		if u == length.Feet && b.num.Num < 12 {
			more = length.Inch
		} else if u != length.Metres || b.num.Num < 10 || b.num.Num > 99 {
			continue
		}
		withUnit(&a, u)
		a.meas.Len += length.Length(b.num.Num) * more
		a.end, a.meas.Form = b.end, length.Pair
		toks = append(append(toks[:i+1:i+1], a), toks[i+3:]...)
	}
	return toks[:len(toks)-1]
}

// spokenCents says whether "thirty one ninety" stands at i as a price.
func spokenCents(toks []token, i int) bool {
	a, b := toks[i], toks[i+1]
	if i == 0 || a.class != tNumber || b.class != tNumber || !a.num.Whole() || !b.num.Whole() || b.at-a.end != 1 || b.num.Num < 10 || b.num.Num > 99 {
		return false
	}
	for _, t := range toks {
		if w := words.English.Word(t.text); w == "price" || w == "cost" {
			return true
		}
	}
	return i+3 < len(toks) && (toks[i+2].text == "a" || toks[i+2].text == "per") && words.English.Word(toks[i+3].text) == "box"
}

// mergeTyped makes feet and inches of "13 6 x 11 2", where both sides are two numbers.
func mergeTyped(toks []token) []token {
	for i := 0; i+2 < len(toks); i++ {
		if a := toks[i]; feetAndInches(a, toks[i+1]) && a.num.Num >= 5*a.num.Den && toks[i+2].class == tWord && isOne(words.English.Word(toks[i+2].text), []string{"room", "hall", "wet", "ceiling"}) && !(i > 0 && (toks[i-1].class == tNumber || toks[i-1].text == "x" || toks[i-1].text == "by")) {
			toks = append(append(toks[:i:i], pairOf(a, toks[i+1])), toks[i+2:]...)
		}
	}
	for i := 0; i+4 < len(toks); i++ {
		if toks[i+2].text != "x" && toks[i+2].text != "by" || !feetAndInches(toks[i], toks[i+1]) || !feetAndInches(toks[i+3], toks[i+4]) || i+5 < len(toks) && countWords[toks[i+5].text] {
			continue
		}
		a, b := pairOf(toks[i], toks[i+1]), pairOf(toks[i+3], toks[i+4])
		toks = append(append(toks[:i:i], a, toks[i+2], b), toks[i+5:]...)
	}
	return toks
}

func feetAndInches(a, b token) bool {
	return a.class == tNumber && b.class == tNumber && a.num.Whole() && b.num.Num < 12*b.num.Den && b.at-a.end == 1 && a.num.Num < 100
}

// sterling makes money of pounds that each box costs: "15 packs at 19 pounds each".
func (m *message) sterling() {
	if m.hasMeaning("weigh", "howheavy", "calcium", "moisture", "load", "lift") {
		return
	}
	for i := range m.items {
		it := &m.items[i]
		if it.class != tMass || !strings.HasPrefix(it.sizes[0].text[max(0, len(it.sizes[0].text)-6):], "pound") && !strings.HasSuffix(it.sizes[0].text, "pound") {
			continue
		}
		if i+1 < len(m.items) && isOne(m.items[i+1].word, []string{"each", "a", "per", "apiece", "for"}) {
			it.class, it.sizes[0].class, it.sizes[0].unit = tMoney, tMoney, "GBP"
		}
	}
}

// spokenFeet says whether "fourteen six" stands at i, with "by" after it.
func spokenFeet(toks []token, i int) bool {
	a, b := toks[i], toks[i+1]
	return a.class == tNumber && b.class == tNumber && a.num.Whole() && b.num.Num < 12*b.num.Den && b.at-a.end == 1 && toks[i+2].text == "by" && a.num.Num < 100
}

// spanIn makes a bare number of "88 in" before a length in metres: "95 to 88 in 3.6 m" is no inches.
func spanIn(toks []token, src string) {
	for i := 0; i+1 < len(toks); i++ {
		t, next := &toks[i], toks[i+1]
		if t.class == tLength && t.meas.Unit == length.Inches && t.meas.Form == length.Single && t.meas.Amount.Whole() && t.meas.Amount.Num >= 20 && strings.HasSuffix(src[t.at:t.end], "in") &&
			next.class == tLength && next.meas.Unit == length.Metres && next.at-t.end == 1 {
			t.class, t.num, t.meas = tNumber, t.meas.Amount, length.Measure{Amount: t.meas.Amount}
		}
	}
}

// spokenCeiling says whether "seven two" stands at i as the height of a ceiling or a beam.
func spokenCeiling(toks []token, i int) bool {
	a, b := toks[i], toks[i+1]
	if a.class != tNumber || b.class != tNumber || !a.num.Whole() || b.at-a.end != 1 || a.num.Num < 6 || a.num.Num > 9 || b.num.Num >= 12*b.num.Den {
		return false
	}
	for _, t := range toks[:i] {
		if w := words.English.Word(t.text); w == "ceiling" || w == "headroom" {
			return true
		}
	}
	return false
}

func pairOf(a, b token) token {
	withUnit(&a, length.Feet)
	withUnit(&b, length.Inches)
	a.meas.Len += b.meas.Len
	a.end, a.meas.Form = b.end, length.Pair
	return a
}

// joinBy makes a By of "by" and "x" between two sizes, and plain words of the others.
func joinBy(toks []token) {
	for i := range toks {
		t := &toks[i]
		if t.class != tBy && !(t.class == tWord && t.text == "by") {
			continue
		}
		t.class = tOther
		if i > 0 && i+1 < len(toks) && isSize(toks[i-1]) && isSize(toks[i+1]) {
			t.class = tBy
		} else if t.text == "by" {
			t.class = tWord
		}
	}
}

func isSize(t token) bool { return t.class == tNumber || t.class == tLength }

func (m *message) parse(toks []token) {
	peek, err := lexer.Upgrade(&feed{src: m.src, toks: toks})
	if err != nil {
		m.bad = "text that can't be read"
		return
	}
	tree, err := free.ParseFromLexer(peek)
	if err != nil {
		m.bad = "text that can't be read"
		return
	}
	m.items = make([]item, 0, len(tree.Items))
	for _, p := range tree.Items {
		if p.Other == nil {
			m.addSizes(p.Sizes, toks)
			continue
		}
		m.addOther(toks[p.Other.Pos.Line])
	}
}

func (m *message) addSizes(at []*sized, toks []token) {
	it := item{class: tLength}
	for _, a := range at {
		it.sizes = append(it.sizes, toks[a.Token.Pos.Line])
	}
	it.at, it.end = it.sizes[0].at, it.sizes[len(it.sizes)-1].end
	m.items = append(m.items, it)
}

func (m *message) addOther(t token) {
	it := item{class: t.class, at: t.at, end: t.end}
	switch t.class {
	case tWord:
		it.word = t.text
	case tArea, tVolume, tPercent, tMoney, tAngle, tMass, tTime:
		it.sizes = []token{t}
	case tMention:
		m.mention = true
		it.mark = "@"
	default:
		it.mark = t.text
	}
	m.items = append(m.items, it)
}

// mostSlips is the most unknown words of a message that are looked at as slips of the thumb: more than that is no message.
const mostSlips = 24

// mean gives each word its meaning: the longest phrase first, then the word, then the word that it is a slip of.
func (m *message) mean() {
	for i := 0; i < len(m.items); i++ {
		it := &m.items[i]
		if it.word == "" || it.meaning != "" {
			continue
		}
		if n := m.phrase(i); n > 0 {
			i += n - 1
			continue
		}
		if it.meaning = words.English.Word(it.word); it.meaning != "" {
			continue
		}
		if len(m.unknown) < mostSlips {
			it.meaning = words.English.Near(it.word)
		}
		if it.near = it.meaning != ""; it.near {
			continue
		}
		m.unknown = append(m.unknown, it.word)
	}
}

// mended puts right the slips among the first words of what may be a phrase: "lasst row".
func mended(run []string) bool {
	some := false
	for i, w := range run[:min(3, len(run))] {
		if part := words.English.Part(w); part != "" {
			run[i], some = part, true
		}
	}
	return some
}

// phrase gives the words of a phrase their meaning: the first carries it, the others are fillers.
func (m *message) phrase(i int) int {
	var buf [8]string
	run := buf[:0]
	for j := i; j < len(m.items) && len(run) < len(buf) && m.items[j].word != ""; j++ {
		run = append(run, m.items[j].word)
	}
	meaning, n := words.English.Phrase(run)
	if n == 0 && m.possessive(i, run) {
		meaning, n = words.English.Phrase(run)
	}
	if n == 0 && mended(run) {
		meaning, n = words.English.Phrase(run)
		m.items[i].near = n > 0
	}
	for k := range n {
		m.items[i+k].meaning = words.Filler
	}
	if n > 0 {
		m.items[i].meaning = meaning
	}
	return n
}

// possessive takes the "'s" off the words of a run that have one: "CM test's", "low spot's". It says whether any has.
func (m *message) possessive(i int, run []string) (any bool) {
	for k := range run {
		it := &m.items[i+k]
		if spelt := m.src[it.at:it.end]; len(run[k]) > 2 && (strings.HasSuffix(spelt, "'s") || strings.HasSuffix(spelt, "’s")) {
			run[k], any = run[k][:len(run[k])-1], true
		}
	}
	return any
}

// mergeSides joins "5 ft wide and 2 ft deep" and "2.74 m one way and 3.36 m the other" into the sides of one thing.
func (m *message) mergeSides() {
	if !m.hasMeaning("room", "hall", "closet", "wet", "hearth", "roll") {
		return
	}
	for i := 0; i < len(m.items); i++ {
		j := m.otherSide(i)
		if j < 0 {
			continue
		}
		m.items[i].sizes = append(append([]token(nil), m.items[i].sizes...), m.items[j].sizes...)
		m.items[i].end = m.items[j].end
		m.items = append(m.items[:i+1], m.items[j+1:]...)
	}
}

// otherSide gives the item that is the second side to the first at i, or -1.
func (m *message) otherSide(i int) int {
	if len(m.items[i].sizes) != 1 || !isSize(m.items[i].sizes[0]) {
		return -1
	}
	named := false
	for j := i + 1; j < len(m.items) && j <= i+6; j++ {
		it := &m.items[j]
		switch {
		case it.quantity():
			if !named || len(it.sizes) != 1 || !isSize(it.sizes[0]) || !m.sideNamed(j) {
				return -1
			}
			return j
		case it.meaning == "wide" || it.meaning == "across" || it.meaning == "long" || it.meaning == "deep" || it.word == "way":
			named = true
		case it.word != "and" && it.word != "by" && it.mark != "x" && it.mark != "," && it.word != "one":
			return -1
		}
	}
	return -1
}

// sideNamed says whether a word for a side follows item j.
func (m *message) sideNamed(j int) bool {
	for k := j + 1; k < len(m.items) && k <= j+2; k++ {
		switch it := &m.items[k]; {
		case it.meaning == "long" || it.meaning == "deep" || it.meaning == "wide" || it.word == "other":
			return true
		case it.word != "the":
			return false
		}
	}
	return false
}

func (m *message) hasMeaning(any ...string) bool {
	for i := range m.items {
		if isOne(m.items[i].meaning, any) {
			return true
		}
	}
	return false
}

// markVague marks the quantity after "a hair under" and before "ish" or "and change".
func (m *message) markVague() {
	m.ranges()
	for i := range m.items {
		if m.items[i].meaning != "vague" {
			continue
		}
		if j := m.nextQuantity(i, 3); j >= 0 {
			m.items[j].vague = true
		} else if i > 0 && m.items[i-1].quantity() {
			m.items[i-1].vague = true
		}
	}
}

// ranges takes "10 to 11 ft" and "between 10 and 11 ft" for one vague size: of two so near, neither is the size.
func (m *message) ranges() {
	for i := 0; i+2 < len(m.items); i++ {
		if !m.spans(i) {
			continue
		}
		m.items[i+2].vague = true
		m.items = append(m.items[:i:i], m.items[i+2:]...)
	}
}

// spans says whether a bare number, "to" or the like and a length in feet or metres that is little more stand at item i.
func (m *message) spans(i int) bool {
	a, mid, b := &m.items[i], &m.items[i+1], &m.items[i+2]
	if len(a.sizes) != 1 || len(b.sizes) != 1 || a.sizes[0].class != tNumber || b.sizes[0].class != tLength {
		return false
	}
	between := mid.word == "and" && i > 0 && m.items[i-1].word == "between"
	if mid.word != "to" && mid.word != "or" && !between || b.sizes[0].meas.Unit != length.Feet && b.sizes[0].meas.Unit != length.Metres {
		return false
	}
	low, high := a.sizes[0].num.Float(), b.sizes[0].meas.Amount.Float()
	return low < high && high <= 1.3*low
}

func (m *message) nextQuantity(i, most int) int {
	for j := i + 1; j < len(m.items) && j <= i+most; j++ {
		if m.items[j].quantity() {
			return j
		}
		if m.items[j].class == tSep {
			return -1
		}
	}
	return -1
}

// split numbers the sentences and lists the meanings in order.
func (m *message) split() {
	m.firsts = append(m.firsts, 0)
	for i := range m.items {
		it := &m.items[i]
		it.sentence = m.sents
		switch {
		case it.class == tSep && ends(it.mark):
			if i+1 < len(m.items) && !ends(m.items[i+1].mark) {
				m.sents++
				m.firsts = append(m.firsts, i+1)
			}
		case it.quantity():
			m.seq, m.seqAt = append(m.seq, said{is: m.mark(it)}), append(m.seqAt, i)
		case it.says():
			m.seq, m.seqAt = append(m.seq, said{it.meaning, m.tied(i)}), append(m.seqAt, i)
		}
	}
}

// tied says whether a quantity belongs to the word at item i: next to it, or with "is", "of" and the like between.
func (m *message) tied(i int) bool {
	for j := i + 1; j < len(m.items) && j <= i+3; j++ {
		if m.items[j].quantity() {
			return true
		}
		if !linking[m.items[j].word] {
			break
		}
	}
	return i > 0 && m.items[i-1].quantity()
}

var linking = map[string]bool{
	"is": true, "are": true, "of": true, "at": true, "was": true, "about": true, "roughly": true, "the": true, "a": true, "s": true, "around": true, "with": true, "up": true, "to": true,
}

// numbered says whether a word stands right before a quantity, so that it may be its number: row 8.
func (m *message) numbered(it *item) bool {
	for i := range m.items {
		if &m.items[i] == it {
			return i > 0 && m.items[i-1].says()
		}
	}
	return false
}

// mark is what stands for a quantity in the list of meanings: "#n" for a bare whole number, "#d" for an angle, "#a" for an
// area, "#m" for an amount of money, "#" for others.
func (m *message) mark(it *item) string {
	if t := it.sizes[0]; len(it.sizes) == 1 && t.class == tNumber && t.num.Whole() && t.num.Num < 1000*t.num.Den && !m.decimal(t) && m.numbered(it) {
		return "#n"
	}
	switch t := it.sizes[0]; {
	case t.class == tAngle:
		return "#d"
	case t.class == tTime:
		return "#t"
	case t.class == tArea:
		return "#a"
	case t.class == tMoney, len(it.sizes) == 1 && t.class == tNumber && m.cents(t):
		return "#m"
	}
	return "#"
}

func ends(mark string) bool {
	return mark == "." || mark == "?" || mark == "!" || mark == "\n" || mark == ";" || mark == "…"
}

// has says whether any of the meanings was said.
func (m *message) has(meanings ...string) bool {
	for _, s := range m.seq {
		for _, w := range meanings {
			if s.is == w {
				return true
			}
		}
	}
	return false
}

// hasWord says whether any of the words was said as spelt.
func (m *message) hasWord(spelt ...string) bool {
	for i := range m.items {
		for _, w := range spelt {
			if m.items[i].word == w {
				return true
			}
		}
	}
	return false
}

// quantities gives the items that are quantities.
func (m *message) quantities() []int {
	var q []int
	for i := range m.items {
		if m.items[i].quantity() {
			q = append(q, i)
		}
	}
	return q
}
