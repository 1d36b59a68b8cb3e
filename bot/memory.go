package bot

import (
	"encoding/json"

	"lastrow/bot/answer"
	"lastrow/calc/length"
	"lastrow/calc/term"
	"lastrow/grammar"
)

// memory is what a conversation is about between two messages. It is kept as JSON.
type memory struct {
	Last     *grammar.Question
	Pending  *grammar.Question
	Missing  [][]term.Name
	Setting  term.Kind
	LastSet  string // canonical text
	Told     bool   // whether that was after the last question
	Heard    []term.Given
	Measured bool // whether the conversation has measured in System
	System   length.System
	Prefer   string           // "metric" or "imperial", where someone asked for it
	Cautions []answer.Caution // of the last reply, those not shown too
	Text     string           // of the last reply
}

func (m *memory) heard(n term.Name) (term.Given, bool) {
	for _, g := range m.Heard {
		if g.Name == n {
			return g, true
		}
	}
	return term.Given{}, false
}

// hears keeps a value under its name, in place of an earlier one. A room and an area stand for each other.
func (m *memory) hears(n term.Name, v term.Value) {
	var kept []term.Given
	for _, g := range m.Heard {
		if g.Name != n && !(n == term.Room && g.Name == term.FloorArea) && !(n == term.FloorArea && g.Name == term.Room) {
			kept = append(kept, g)
		}
	}
	m.Heard = append(kept, term.Given{Name: n, Value: v, From: term.Earlier})
}

// kept is memory as JSON: its questions and values in the form of package codec.
type kept struct {
	memory
	Last, Pending *keptQuestion
	Heard         []keptGiven
}

type keptQuestion struct {
	Kind  term.Kind
	Job   string
	Given []keptGiven
}

type keptGiven struct {
	Name  term.Name
	From  term.From
	Type  string
	Value string
}

func (m memory) text() (string, error) {
	k := kept{memory: m, Last: keepQuestion(m.Last), Pending: keepQuestion(m.Pending), Heard: keepGiven(m.Heard)}
	b, err := json.Marshal(k)
	return string(b), err
}

// recall reads what text wrote. A memory of another form is none: forgetting a conversation does no harm.
func recall(text string) memory {
	var k kept
	if text == "" || json.Unmarshal([]byte(text), &k) != nil {
		return memory{}
	}
	m := k.memory
	m.Last, m.Pending, m.Heard = recallQuestion(k.Last), recallQuestion(k.Pending), recallGiven(k.Heard)
	return m
}

func keepQuestion(q *grammar.Question) *keptQuestion {
	if q == nil {
		return nil
	}
	return &keptQuestion{q.Kind, q.Job, keepGiven(q.Given)}
}

func recallQuestion(k *keptQuestion) *grammar.Question {
	if k == nil {
		return nil
	}
	return &grammar.Question{Kind: k.Kind, Job: k.Job, Given: recallGiven(k.Given)}
}

func keepGiven(gs []term.Given) []keptGiven {
	var out []keptGiven
	for _, g := range gs {
		if kind, text := term.Encode(g.Value); kind != "" {
			out = append(out, keptGiven{g.Name, g.From, kind, text})
		}
	}
	return out
}

func recallGiven(ks []keptGiven) []term.Given {
	var out []term.Given
	for _, k := range ks {
		if v, err := term.Decode(k.Type, k.Value); err == nil {
			out = append(out, term.Given{Name: k.Name, Value: v, From: k.From})
		}
	}
	return out
}
