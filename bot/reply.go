package bot

import (
	"context"
	"encoding/json"
	"fmt"
	"runtime/debug"

	"lastrow/bot/answer"
	"lastrow/grammar"
)

// Reply is a message's whole way through the program. With an error the reply says in one plain line that the fault is
// ours, nothing of the message was stored, and the error is for the log.
func (b *Bot) Reply(ctx context.Context, m Message) (reply Reply, err error) {
	defer b.hold(m)()
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("message %q: %v\n%s", m.ID, r, debug.Stack())
		}
		if err != nil {
			reply = Reply{Answer: answer.Fault()}
		}
		reply.Answer.Message = m.Text
	}()
	if reply, again, err := b.replied(ctx, m); again || err != nil {
		return reply, err
	}
	t, err := b.turn(ctx, m)
	if err != nil {
		return reply, err
	}
	reading := grammar.Read(m.Text, t.context())
	if reading.Silent {
		return Reply{Answer: answer.Answer{Outcome: answer.Silent}}, nil
	}
	if reply, err = t.act(ctx, reading); err != nil {
		return reply, err
	}
	return reply, t.keep(ctx, reply)
}

// act does what a reading says.
func (t *turn) act(ctx context.Context, r grammar.Reading) (Reply, error) {
	t.signs, t.measured, t.system = r.Signs, r.Measured, r.System
	switch {
	case r.Problem != nil:
		return t.problem(r.Problem)
	case r.Follow != "":
		return t.follow(r.Follow)
	case len(r.Statements) > 0 || r.Question != nil:
		return t.do(ctx, r)
	case r.Courtesy:
		return Reply{Answer: answer.Courtesy()}, nil
	}
	return Reply{Answer: answer.Nothing()}, nil
}

// replied gives the reply to a message that was delivered before.
func (b *Bot) replied(ctx context.Context, m Message) (reply Reply, ok bool, err error) {
	if m.ID == "" {
		return reply, false, nil
	}
	kept, ok, err := b.store.Replied(ctx, m.ID)
	if err != nil || !ok {
		return reply, false, err
	}
	return reply, true, json.Unmarshal(kept, &reply)
}

// keep stores what the message changes and, for one delivered twice, the reply.
func (t *turn) keep(ctx context.Context, r Reply) error {
	if t.forgotten {
		return nil
	}
	r.Answer.Message = t.msg.Text
	t.memory.Text = r.Answer.Text
	if t.msg.ID == "" {
		return t.commit(ctx, nil)
	}
	kept, err := json.Marshal(r)
	if err != nil {
		return err
	}
	return t.commit(ctx, kept)
}
