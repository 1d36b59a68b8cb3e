package grammar

import (
	"errors"
	"fmt"
	"math/big"
	"strings"
	"unicode"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"lastrow/calc/length"
)

// canonical is the strict grammar of a statement: the union of the statements' own grammars.
type canonical struct {
	Statement Statement `parser:"@@"`
}

var statements = participle.MustBuild[canonical](
	participle.Lexer(definition{canonical: true}),
	participle.Union[Statement](JobName{}, Room{}, Walls{}, Closet{}, Opening{}, Doorway{}, Fixture{}, Plank{}, Underlay{}, Gap{}, Hidden{},
		Direction{}, Start{}, Limit{}, Trim{}, Height{}, Subfloor{}, Measured{}, Price{}, Spare{}, Laid{}, Opened{}, Damaged{}, Note{}),
	participle.UseLookahead(2),
)

// ParseStatement reads the canonical text of a statement: ParseStatement(s.String()) equals s.
func ParseStatement(text string) (s Statement, err error) {
	defer func() {
		if recover() != nil {
			s, err = nil, fmt.Errorf("%.60q is no statement", text)
		}
	}()
	if why := screen(text); why != "" {
		return nil, errors.New(why)
	}
	toks, bad := lexCanonical(text)
	if bad != "" {
		return nil, errors.New(bad)
	}
	peek, err := lexer.Upgrade(&feed{src: text, toks: toks})
	if err != nil {
		return nil, err
	}
	c, err := statements.ParseFromLexer(peek)
	if err != nil || c.Statement == nil || c.Statement.String() != strings.TrimSpace(text) {
		return nil, fmt.Errorf("%.60q is no statement in canonical form", text)
	}
	return c.Statement, nil
}

// lexCanonical takes what follows "job" and "note" as one token, for names and notes hold anything.
func lexCanonical(text string) ([]token, string) {
	for _, w := range []string{"job ", "note "} {
		if rest, ok := strings.CutPrefix(text, w); ok && strings.TrimSpace(rest) != "" {
			at := len(w)
			return []token{{class: tWord, text: w[:at-1], end: at - 1}, {class: tText, at: at, end: len(text)}}, ""
		}
	}
	return lex(text, true)
}

// oneLine is a name or a note as it is kept: on one line, single spaces.
func oneLine(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return unicode.IsSpace(r) || unicode.IsControl(r) }), " ")
}

func ratOf(n length.Number) *big.Rat { return new(big.Rat).SetFrac64(n.Num, n.Den) }

func upper(s string) string { return strings.ToUpper(s) }
