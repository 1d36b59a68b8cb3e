package bot

import (
	"context"

	"lastrow/bot/answer"
	"lastrow/calc/term"
	"lastrow/grammar"
)

// follow answers a word about the last answer: "again", "why", "show", "more".
func (t *turn) follow(word string) (Reply, error) {
	switch {
	case word == "show":
		return t.ask(grammar.Question{Kind: term.AskPlan}, nil)
	case t.memory.Last == nil:
		return Reply{Answer: answer.Nothing()}, nil
	case word == "why":
		return Reply{Answer: answer.Why(t.memory.Last.Kind, t.tape())}, nil
	case word == "more":
		return Reply{Answer: answer.More(t.memory.Last.Kind, t.memory.Cautions)}, nil
	}
	return t.ask(*t.memory.Last, nil)
}

// help shows the ways to ask or say one kind, or one way for each.
func (t *turn) help(_ context.Context, q grammar.Question) (Reply, error) {
	topic, _ := word(q, "topic")
	if ways := grammar.Help(term.Kind(topic)); len(ways) > 0 {
		return Reply{Answer: answer.Help(term.Kind(topic), ways)}, nil
	}
	return Reply{Answer: answer.Overview(grammar.Examples)}, nil
}

// word gives a word that a question says under a name.
func word(q grammar.Question, n term.Name) (string, bool) {
	for _, g := range q.Given {
		if w, ok := g.Value.(term.Word); ok && g.Name == n {
			return string(w), true
		}
	}
	return "", false
}
