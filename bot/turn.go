package bot

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"lastrow/bot/job"
	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/term"
	"lastrow/grammar"
	"lastrow/store"
)

// remembered is how long after its last message a conversation goes on.
const remembered = 2 * time.Hour

// turn is one message's turn in its conversation: where it was said, the job that it is about, what was said before.
type turn struct {
	bot       *Bot
	msg       Message
	place     store.Job // zero where there is no job yet
	job       *calc.Job
	standing  []grammar.Statement
	jobs      []store.Job
	memory    memory
	change    store.Change // what the message changes, stored at its end
	retract   []string     // texts that take out what the message puts something else in the place of
	forgotten bool         // the user was forgotten: nothing is kept
	signs     []string
	measured  bool // the message measures in system
	system    length.System
}

func (b *Bot) turn(ctx context.Context, m Message) (*turn, error) {
	t := &turn{bot: b, msg: m}
	err := b.letGo(ctx, m.At)
	if err != nil {
		return nil, err
	}
	if t.jobs, err = b.store.Jobs(ctx, m.User, m.Channel); err != nil {
		return nil, err
	}
	place, err := b.store.Current(ctx, m.User, m.Channel)
	if err != nil && !errors.Is(err, store.ErrNotFound) {
		return nil, err
	}
	if err = t.load(ctx, place); err != nil {
		return nil, err
	}
	talk, err := b.store.Talk(ctx, m.User, m.Channel)
	if err != nil {
		return nil, err
	}
	if m.At.Sub(talk.At) <= remembered {
		t.memory = recall(talk.Text)
	}
	return t, nil
}

// load makes a job the one that the turn is about. The zero store.Job is one with nothing said.
func (t *turn) load(ctx context.Context, place store.Job) error {
	t.place, t.job, t.standing = place, job.New(place.Name), nil
	if place.ID == 0 {
		return nil
	}
	texts, err := t.texts(ctx)
	if err != nil {
		return err
	}
	if t.standing, err = job.Parse(texts); err != nil {
		return fmt.Errorf("job %q: %w", place.Name, err)
	}
	t.job = job.Replay(place.Name, t.standing)
	return nil
}

func (t *turn) texts(ctx context.Context) ([]string, error) {
	lines, err := t.bot.store.Texts(ctx, t.place.ID)
	var texts []string
	for _, l := range lines {
		texts = append(texts, l.Text)
	}
	return texts, err
}

// context is what the grammar may lean on.
func (t *turn) context() grammar.Context {
	c := grammar.Context{
		System: t.job.Tape.System, Known: t.settled(),
		Group: !t.msg.Addressed, Shared: t.place.Group != "" && t.place.Group == t.msg.Channel,
		Pending: t.memory.Pending, Missing: t.memory.Missing, Last: t.memory.Last, Setting: t.memory.Setting,
		Statements: t.standing,
	}
	for _, j := range t.jobs {
		c.Jobs = append(c.Jobs, j.Name)
	}
	c.Current = t.place.Name
	if !c.Known && t.memory.Measured {
		c.System, c.Known = t.memory.System, true
	}
	if s, err := grammar.ParseStatement(t.memory.LastSet); err == nil {
		c.LastSet, c.Told = s, t.memory.Told
	}
	return c
}

func (t *turn) settled() bool {
	_, ok := t.job.Facts[job.Settled]
	return ok
}

// systemName is the name under which a question says which system to answer in: "same but metric".
const systemName term.Name = "system"

// tape is what the reply shows lengths on: the job's, or else the system that the message or the conversation measures in.
func (t *turn) tape(said ...term.Given) length.Tape {
	switch {
	case t.memory.Prefer != "":
		t.job.Tape.System = length.Imperial
		if t.memory.Prefer == "metric" {
			t.job.Tape.System = length.Metric
		}
	case t.settled():
	case t.measured:
		t.job.Tape.System = t.system
	case t.memory.Measured:
		t.job.Tape.System = t.memory.System
	case allMetric(said):
		t.job.Tape.System = length.Metric
	}
	t.job.Plan.Metric = t.job.Tape.System == length.Metric
	return t.job.Tape
}

// named finds one of the user's jobs by its name, however it is written.
func (t *turn) named(name string) (store.Job, bool) {
	for _, j := range t.jobs {
		if strings.EqualFold(j.Name, name) && (j.Owner == t.msg.User || j.Group != "") {
			return j, true
		}
	}
	return store.Job{}, false
}

// kinds are those of statements, each once.
func kinds(ss []grammar.Statement) []term.Kind {
	var ks []term.Kind
	for _, s := range ss {
		ks = append(ks, s.Kind())
	}
	return ks
}

// allMetric says whether lengths were all said in millimetres: thicknesses alone, which inch jobs are sold in too, do
// not make a job metric, but what is said in millimetres throughout is answered in them.
func allMetric(gs []term.Given) bool {
	inchless := false
	for _, g := range gs {
		for _, l := range lengths(g.Value) {
			if l%length.Millimetre != 0 {
				return false
			}
			inchless = inchless || l%length.SixtyFourth != 0
		}
	}
	return inchless
}

func lengths(v term.Value) []length.Length {
	switch v := v.(type) {
	case term.Len:
		return []length.Length{length.Length(v)}
	case term.Lens:
		return v
	}
	return nil
}
