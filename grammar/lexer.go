package grammar

import (
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"lastrow/calc/length"
)

// The classes of token. Quantities come classed by their unit, so that the grammar need know no units.
const (
	tWord lexer.TokenType = iota + 1
	tNumber
	tLength
	tArea
	tVolume
	tPercent
	tMoney
	tAngle
	tMass
	tClock
	tTime
	tBy
	tOp
	tSep
	tMention
	tOther
	tText
)

var symbols = map[string]lexer.TokenType{
	"EOF": lexer.EOF, "Word": tWord, "Number": tNumber, "Length": tLength, "Area": tArea, "Volume": tVolume,
	"Percent": tPercent, "Money": tMoney, "Angle": tAngle, "Mass": tMass, "Clock": tClock, "Time": tTime, "By": tBy, "Op": tOp,
	"Sep": tSep, "Mention": tMention, "Other": tOther, "Text": tText,
}

// token is one token of a message, with its place in the text that was lexed.
type token struct {
	class   lexer.TokenType
	text    string // folded: small letters, no apostrophes
	at, end int
	num     length.Number  // the amount of a quantity, as written
	meas    length.Measure // of a Length or a Number
	unit    string         // of an Area, Volume, Money, Mass or Time
	neg     bool
	nth     bool // an ordinal: 2nd
	spaced  bool // a space stands before it
}

// scanner cuts text into tokens.
type scanner struct {
	src  string
	at   int
	toks []token
	bad  string // why a number could not be read
	raw  bool   // hyphens stay in words, for canonical text
}

func lex(src string, canonical bool) ([]token, string) {
	s := &scanner{src: src, raw: canonical, toks: make([]token, 0, len(src)/4+2)}
	for s.at < len(s.src) && s.bad == "" {
		s.next()
	}
	return s.toks, s.bad
}

func (s *scanner) next() {
	r, size := utf8.DecodeRuneInString(s.src[s.at:])
	switch {
	case r == ' ' || r == '\t' || r == '\r' || r != '\n' && unicode.IsSpace(r):
		s.at += size
	case s.quantity(r):
	case unicode.IsLetter(r) || r == '_':
		s.word()
	case r == '@' && (s.at+1 >= len(s.src) || s.src[s.at+1] == ' ' || digitAt(s.src[s.at+1:])):
		s.emit(tWord, "at", size)
	case r == '@' || r == '<' && strings.HasPrefix(s.src[s.at:], "<@"):
		s.mention()
	case strings.ContainsRune("×✕", r) || r == '*' && !s.raw:
		s.emit(tBy, "x", size)
	case r == '-' && !s.raw && s.hyphen():
		s.at++
	case strings.ContainsRune("+-−–—*/÷=()", r):
		s.operator(r, size)
	case strings.ContainsRune(",.;:?!\n…", r):
		s.emit(tSep, string(r), size)
	default:
		s.emit(tOther, string(r), size)
	}
}

func (s *scanner) emit(class lexer.TokenType, text string, size int) *token {
	s.toks = append(s.toks, token{class: class, text: text, at: s.at, end: s.at + size, spaced: s.at == 0 || s.src[s.at-1] == ' '})
	s.at += size
	return &s.toks[len(s.toks)-1]
}

func (s *scanner) operator(r rune, size int) {
	switch r {
	case '−', '–', '—':
		r = '-'
	case '÷':
		r = '/'
	case '*':
		s.emit(tBy, "x", size)
		return
	}
	s.emit(tOp, string(r), size)
}

// hyphen says whether letters stand on both sides, so that it joins words.
func (s *scanner) hyphen() bool {
	before, _ := utf8.DecodeLastRuneInString(s.src[:s.at])
	after, _ := utf8.DecodeRuneInString(s.src[s.at+1:])
	return unicode.IsLetter(before) && unicode.IsLetter(after)
}

// word reads letters with apostrophes among them. An x between quantities is a By.
func (s *scanner) word() {
	i := s.at
	for i < len(s.src) {
		r, size := utf8.DecodeRuneInString(s.src[i:])
		if !unicode.IsLetter(r) && r != '_' && !s.inner(i, r, size) {
			break
		}
		i += size
	}
	text := fold(s.src[s.at:i])
	if text == "x" {
		s.emit(tBy, "x", i-s.at)
		return
	}
	s.emit(tWord, text, i-s.at)
}

// inner says whether r may stand inside a word: an apostrophe or, in canonical text, a hyphen between letters.
func (s *scanner) inner(i int, r rune, size int) bool {
	if r != '\'' && r != '’' && r != '‘' && r != '`' && !(s.raw && r == '-') {
		return unicode.Is(unicode.Mn, r)
	}
	next, _ := utf8.DecodeRuneInString(s.src[i+size:])
	return unicode.IsLetter(next)
}

func fold(w string) string {
	plain := true
	for i := 0; i < len(w); i++ {
		if c := w[i]; c < 'a' || c > 'z' {
			plain = false
			break
		}
	}
	if plain {
		return w
	}
	return strings.Map(func(r rune) rune {
		switch r {
		case '\'', '’', '‘', '`':
			return -1
		}
		return unicode.ToLower(r)
	}, w)
}

func (s *scanner) mention() {
	i := s.at + 1
	for i < len(s.src) && !strings.ContainsRune(" \n,;:?!", rune(s.src[i])) {
		i++
	}
	s.emit(tMention, s.src[s.at:i], i-s.at)
}

// definition hands the tokens of a message to participle. The tokens are those of lex; Position.Offset finds them again.
type definition struct{ canonical bool }

var _ lexer.StringDefinition = definition{}

func (definition) Symbols() map[string]lexer.TokenType { return symbols }

func (d definition) Lex(name string, r io.Reader) (lexer.Lexer, error) {
	b, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	return d.LexString(name, string(b))
}

func (d definition) LexString(_, text string) (lexer.Lexer, error) {
	toks, _ := lex(text, d.canonical)
	return &feed{src: text, toks: toks}, nil
}

// feed is a lexer.Lexer over tokens that are lexed already. Line holds the index of the token.
type feed struct {
	src  string
	toks []token
	i    int
}

func (f *feed) Next() (lexer.Token, error) {
	if f.i >= len(f.toks) {
		return lexer.EOFToken(lexer.Position{Offset: len(f.src), Line: f.i}), nil
	}
	t := &f.toks[f.i]
	value := t.text
	if t.class != tWord && t.class != tBy && t.class != tOp {
		value = f.src[t.at:t.end]
	}
	f.i++
	return lexer.Token{Type: t.class, Value: value, Pos: lexer.Position{Offset: t.at, Line: f.i - 1}}, nil
}
