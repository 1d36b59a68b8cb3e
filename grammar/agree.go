package grammar

import (
	"slices"

	"lastrow/calc/term"
)

// agreed tries a rule, and checks what it makes of the message against a guess that is beyond much doubt. Where they differ,
// the message is read as the guess says, wholly; else what would be recorded is asked about, and what is not for the bot is
// left.
func (r *reader) agreed(try func() (Reading, bool)) func() (Reading, bool) {
	return func() (Reading, bool) {
		out, ok := try()
		if !ok || r.ctx.Group || out.Problem != nil && out.Problem.Outcome != "unclear" && out.is(r.guess().kind) || out.is(term.SetOpening) {
			return out, ok
		}
		g := r.guess()
		if g.p < doubts || out.is(g.kind) && out.Problem == nil {
			return out, true
		}
		if told, ok := r.toldAll(out.Problem != nil); ok {
			return told, true
		}
		if out.Problem == nil && g.kind == none || out.Question == nil && len(out.Statements) > 0 {
			return r.unclear(), true
		}
		return out, true
	}
}

// is says whether a reading is, or holds, one of a kind: a question of boxes that is given a spare holds that.
func (out *Reading) is(k term.Kind) bool {
	if q := out.Question; q != nil && (q.Kind == k || hasName(q.Given, term.Name(k))) || out.Problem != nil && out.Problem.Kind == k {
		return true
	}
	return slices.ContainsFunc(out.Statements, func(s Statement) bool { return s.Kind() == k })
}
