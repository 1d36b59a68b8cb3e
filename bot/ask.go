package bot

import (
	"errors"

	"lastrow/bot/answer"
	"lastrow/calc"
	"lastrow/calc/caution"
	"lastrow/calc/term"
	"lastrow/grammar"
)

// ask answers a question from the message, the job and what was said earlier, or asks back for what is missing.
func (t *turn) ask(q grammar.Question, set []grammar.Statement) (Reply, error) {
	if w, ok := word(q, systemName); ok {
		t.memory.Prefer = w
	}
	tape := t.tape(q.Given...)
	asked := calc.Question{Kind: q.Kind, Given: q.Given}
	result, err := t.compute(&asked)
	q.Given = asked.Given
	t.hear(q, result)
	var missing *calc.Missing
	if errors.As(err, &missing) {
		t.memory.Pending, t.memory.Missing = &q, missing.Needs
		return Reply{Answer: t.warned(answer.Back(result, missing, tape))}, nil
	}
	if err != nil {
		return t.refuse(err)
	}
	t.memory.Pending, t.memory.Missing, t.memory.Last, t.memory.Told = nil, nil, &q, false
	cautions := t.cautions(caution.Circumstance{Job: t.job, Question: asked, Result: result, Set: kinds(set), Signs: t.signs})
	return t.illustrate(Reply{Answer: answer.Compose(result, tape, cautions)}, result)
}

// compute answers, taking from earlier messages what is missing.
func (t *turn) compute(q *calc.Question) (calc.Result, error) {
	for {
		r, err := calc.Answer(t.job, *q)
		var missing *calc.Missing
		if !errors.As(err, &missing) || !t.fill(q, missing.Needs) {
			return r, err
		}
	}
}

// fill adds what was said earlier under the names that are missing, and says whether there was any.
func (t *turn) fill(q *calc.Question, needs [][]term.Name) bool {
	found := false
	for _, need := range needs {
		for _, n := range need {
			if g, ok := t.memory.heard(n); ok && !says(q.Given, n) {
				q.Given = append(q.Given, g)
				found = true
				break
			}
		}
	}
	return found
}

func says(gs []term.Given, n term.Name) bool {
	for _, g := range gs {
		if g.Name == n {
			return true
		}
	}
	return false
}

// lasting are the names that go on holding in a conversation: what the floor and the goods are, and how much was found.
var lasting = map[term.Name]bool{
	term.Room: true, term.FloorArea: true, term.PlankWidth: true, term.PlankLength: true, term.PlankThickness: true,
	term.PlanksPerBox: true, term.BoxCoverage: true, term.UnderlayThickness: true, term.RollWidth: true, term.RollLength: true,
	term.StickLength: true, term.TrimThickness: true, term.TrimLength: true, term.Perimeter: true, term.Boxes: true,
	term.Price: true, term.Subfloor: true, term.FloorHeight: true, term.Dip: true, term.Straightedge: true,
}

// hear keeps what a question said, and what its answer found, for the messages that follow.
func (t *turn) hear(q grammar.Question, r calc.Result) {
	if t.measured {
		t.memory.Measured, t.memory.System = true, t.system
	}
	for _, g := range q.Given {
		if lasting[g.Name] {
			t.memory.hears(g.Name, g.Value)
		}
	}
	for _, v := range r.Values {
		if lasting[v.Name] && !says(q.Given, v.Name) {
			t.memory.hears(v.Name, v.Value)
		}
	}
}

// problem says what was not understood, or what is missing or impossible in it.
func (t *turn) problem(p *grammar.Problem) (Reply, error) {
	if p.Asked != nil || p.Setting != "" {
		t.memory.Pending, t.memory.Setting = p.Asked, p.Setting
		t.memory.Missing = nil
		for _, n := range p.Missing {
			t.memory.Missing = append(t.memory.Missing, []term.Name{n})
		}
	}
	return Reply{Answer: t.warned(answer.Problem(p))}, nil
}

// warned adds the cautions for the dangers that a message mentions to an answer that gives nothing else.
func (t *turn) warned(a answer.Answer) answer.Answer {
	if len(t.signs) > 0 {
		a.Cautions = t.cautions(caution.Circumstance{Job: t.job, Signs: t.signs})
		a.Text = answer.Limit(a.Text + "\n" + answer.Warn(a.Cautions))
	}
	return a
}
