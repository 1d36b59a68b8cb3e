package bot

import (
	"cmp"
	"context"
	"errors"
	"slices"
	"strings"

	"lastrow/bot/answer"
	"lastrow/bot/job"
	"lastrow/calc"
	"lastrow/calc/caution"
	"lastrow/calc/term"
	"lastrow/grammar"
	"lastrow/store"
)

// firstJob is the name of a job that nobody named.
const firstJob = "my floor"

// do records the statements of a message and answers its question: all of it, or nothing.
func (t *turn) do(ctx context.Context, r grammar.Reading) (Reply, error) {
	name, rest := jobNamed(r.Statements)
	if err := t.turnTo(ctx, name, r.Question); err != nil {
		return Reply{}, err
	}
	if r.Instead != nil {
		t.takeOut(r.Instead)
	}
	if len(rest) > 0 {
		if err := job.Try(t.job, rest); err != nil {
			return t.refuse(err)
		}
	}
	reply := t.recorded(r.Statements)
	if r.Question != nil && commands[r.Question.Kind] == nil {
		asked, err := t.ask(*r.Question, rest)
		if err != nil || asked.Answer.Outcome == answer.Refused {
			return asked, err
		}
		reply = asked
	}
	t.note(name, rest)
	t.memory.Told = t.memory.Told && r.Question == nil
	if r.Question != nil && commands[r.Question.Kind] != nil {
		return t.command(ctx, *r.Question)
	}
	reply.Answer.Reading = reading(r)
	if r.Question == nil && len(rest) > 0 && t.memory.Pending != nil {
		return t.goOn(reply)
	}
	return reply, nil
}

// takeOut takes a statement out of the job, for another to come in its place: it and the later ones are taken back, and
// the later ones said again.
func (t *turn) takeOut(old grammar.Statement) {
	at := -1
	for i, s := range t.standing {
		if s.String() == old.String() {
			at = i
		}
	}
	if at < 0 {
		return
	}
	for range t.standing[at:] {
		t.retract = append(t.retract, job.Undo)
	}
	for _, s := range t.standing[at+1:] {
		t.retract = append(t.retract, s.String())
	}
	t.standing = slices.Delete(slices.Clone(t.standing), at, at+1)
	t.job = job.Replay(t.place.Name, t.standing)
}

// goOn adds to what was recorded the answer to the question that waited for it, or what that still waits for.
func (t *turn) goOn(recorded Reply) (Reply, error) {
	q := *t.memory.Pending
	for i := range q.Given {
		q.Given[i].From = term.Earlier
	}
	waited, err := t.ask(q, nil)
	if err != nil || waited.Answer.Outcome == answer.Refused {
		return recorded, err
	}
	recorded.Answer.Text = answer.Limit(recorded.Answer.Text + "\n" + waited.Answer.Text)
	recorded.Files = waited.Files
	return recorded, nil
}

// turnTo makes the job that a message names the one that the turn is about: one to switch to, or one asked about.
func (t *turn) turnTo(ctx context.Context, name string, q *grammar.Question) error {
	if name != "" {
		place, _ := t.named(name)
		return t.load(ctx, place)
	}
	if q == nil {
		return nil
	}
	if place, ok := t.named(q.Job); ok && place.ID != t.place.ID {
		return t.load(ctx, place)
	}
	return nil
}

// command looks after the jobs as the message leaves them. An undo may take back what it says itself.
func (t *turn) command(ctx context.Context, q grammar.Question) (Reply, error) {
	if q.Kind != term.AskUndo && (t.change.Switch || len(t.change.Texts) > 0) {
		if err := t.commit(ctx, nil); err != nil {
			return Reply{}, err
		}
		again, err := t.bot.turn(ctx, t.msg)
		if err != nil {
			return Reply{}, err
		}
		t.jobs, t.standing = again.jobs, again.standing
	}
	return commands[q.Kind](t, ctx, q)
}

// jobNamed takes out of statements the ones that begin or switch a job. The last one named counts.
func jobNamed(ss []grammar.Statement) (name string, rest []grammar.Statement) {
	for _, s := range ss {
		if j, ok := s.(grammar.JobName); ok {
			name = j.Name
		} else {
			rest = append(rest, s)
		}
	}
	return name, rest
}

func reading(r grammar.Reading) string {
	var parts []string
	for _, s := range r.Statements {
		parts = append(parts, s.String())
	}
	if r.Question != nil {
		parts = append(parts, r.Question.String())
	}
	return strings.Join(parts, "\n")
}

// note puts statements in the change, for the job named or else the one that the turn is about.
func (t *turn) note(name string, ss []grammar.Statement) {
	t.change.Job = t.place.ID
	if place, ok := t.named(name); ok {
		t.change.Job, t.change.Switch = place.ID, true
	} else if name != "" || len(ss) > 0 && t.place.ID == 0 {
		t.change.Begin, t.change.Switch = cmp.Or(name, firstJob), true
	}
	t.change.Texts = append(t.change.Texts, t.retract...)
	for _, s := range ss {
		t.change.Texts = append(t.change.Texts, s.String())
		t.memory.LastSet, t.memory.Told = s.String(), true
	}
}

// readsBack wants every text to be one that the grammar parses: another would spoil its job for ever.
func readsBack(texts []string) error {
	for _, text := range texts {
		if text == job.Undo {
			continue
		}
		if _, err := grammar.ParseStatement(text); err != nil {
			return err
		}
	}
	return nil
}

// commit stores what the message changes, all of it or nothing, with the reply to it if there is one yet.
func (t *turn) commit(ctx context.Context, reply []byte) error {
	if err := readsBack(t.change.Texts); err != nil {
		return err
	}
	text, err := t.memory.text()
	if err != nil {
		return err
	}
	c := t.change
	c.MessageID, c.User, c.Channel, c.At, c.Talk, c.Reply = t.msg.ID, t.msg.User, t.msg.Channel, t.msg.At, text, reply
	place, err := t.bot.store.Commit(ctx, c)
	t.change = store.Change{}
	if err == nil && c.Switch {
		t.place = place
	}
	return err
}

// recorded says what was noted, and how big the floor is now where a statement shaped it.
func (t *turn) recorded(ss []grammar.Statement) Reply {
	var texts []string
	var given []term.Given
	shaped := false
	for _, s := range ss {
		texts = append(texts, s.String())
		given = appendNew(given, s.Given())
		shaped = shaped || job.Shapes(s)
	}
	a := answer.Answer{}
	tape := t.tape()
	var floor []term.Named
	var taken []string
	if shaped {
		floor, taken = calc.Extent(t.job), calc.Taken(t.job)
	}
	cautions := t.cautions(caution.Circumstance{Job: t.job, Set: kinds(ss), Signs: t.signs})
	if len(ss) > 0 {
		a = answer.Record(ss[0].Kind(), texts, given, append(floor, t.totals(ss)...), taken, tape, cautions)
	}
	return Reply{Answer: a}
}

// totals are the job's counts that statements have added to.
func (t *turn) totals(ss []grammar.Statement) []term.Named {
	var out []term.Named
	for _, s := range ss {
		n := term.Name(s.Kind())
		if c, ok := t.job.Facts[n].(term.Count); ok && job.Adds(s) {
			out = append(out, term.Named{Name: n, Value: c})
		}
	}
	return out
}

func (t *turn) cautions(c caution.Circumstance) []answer.Caution {
	var out []answer.Caution
	for _, w := range caution.For(c) {
		out = append(out, answer.Caution{ID: w.ID, Text: w.Text, Source: w.Source})
	}
	t.memory.Cautions = out
	return out
}

// refuse says which rules a message breaks. Nothing of it is stored.
func (t *turn) refuse(err error) (Reply, error) {
	var r *calc.Refusal
	if !errors.As(err, &r) {
		return Reply{}, err
	}
	return Reply{Answer: answer.Refuse(r)}, nil
}

// appendNew appends the inputs whose names are not there yet: "gap 3/8, south wall tight" gives one gap, the floor's.
func appendNew(given, more []term.Given) []term.Given {
	for _, g := range more {
		if !slices.ContainsFunc(given, func(h term.Given) bool { return h.Name == g.Name }) {
			given = append(given, g)
		}
	}
	return given
}
