package bot

import (
	"context"
	"fmt"
	"strings"

	"lastrow/bot/answer"
	"lastrow/bot/job"
	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/term"
	"lastrow/grammar"
	"lastrow/store"
)

// commands are the kinds that look after jobs and conversations and compute nothing.
var commands map[term.Kind]func(*turn, context.Context, grammar.Question) (Reply, error)

func init() {
	commands = map[term.Kind]func(*turn, context.Context, grammar.Question) (Reply, error){
		term.AskHelp: (*turn).help, term.AskUnits: (*turn).units, term.AskUndo: (*turn).undo, term.AskHistory: (*turn).history,
		term.AskJobs: (*turn).listJobs, term.AskShare: (*turn).share, term.AskUnshare: (*turn).unshare,
		term.AskExport: (*turn).export, term.AskForget: (*turn).forget,
	}
}

func say(k term.Kind, format string, args ...any) (Reply, error) {
	return Reply{Answer: answer.Say(k, fmt.Sprintf(format, args...))}, nil
}

func refuse(k term.Kind, reason string) (Reply, error) {
	return Reply{Answer: answer.Refuse(&calc.Refusal{Kind: k, Reasons: []string{reason}})}, nil
}

// units says how lengths are read and shown, and changes it where the message says so.
func (t *turn) units(_ context.Context, q grammar.Question) (Reply, error) {
	if w, ok := word(q, systemName); ok {
		t.memory.Prefer = w
	}
	sys := "feet, inches and sixteenths"
	if t.tape().System == length.Metric {
		sys = "millimetres and metres"
	}
	return say(term.AskUnits, "I answer in %s here. Say lengths in either, mixed as you like: 11ft 4in, 7 5/8, 3.45 m, 12mm. "+
		"A bare number is feet for a room, inches for planks and gaps, mm for a thickness over 3.", sys)
}

// undo takes back the last statement still standing.
func (t *turn) undo(context.Context, grammar.Question) (Reply, error) {
	var standing []string
	for _, s := range t.standing {
		standing = append(standing, s.String())
	}
	standing = append(standing, t.change.Texts...)
	if len(standing) == 0 {
		return refuse(term.AskUndo, "there is nothing to take back")
	}
	if t.change.Begin == "" && t.change.Job == 0 {
		t.change.Job = t.place.ID
	}
	t.change.Texts = append(t.change.Texts, job.Undo)
	t.memory.LastSet = ""
	return t.changed(term.AskUndo, "Taken back: %s.", answer.Harmless(standing[len(standing)-1]))
}

// mostLines is how much of a history fits in a reply.
const mostLines = 20

func (t *turn) history(ctx context.Context, _ grammar.Question) (Reply, error) {
	if t.place.ID == 0 {
		return say(term.AskHistory, "No job yet, so no history.")
	}
	lines, err := t.bot.store.Texts(ctx, t.place.ID)
	if err != nil {
		return Reply{}, err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s, %d lines:", answer.Harmless(t.place.Name), len(lines))
	if len(lines) > mostLines {
		b.WriteString(" the last ones")
		lines = lines[len(lines)-mostLines:]
	}
	for _, l := range lines {
		fmt.Fprintf(&b, "\n  %s  %s", l.At.UTC().Format("2 Jan 15:04"), answer.Harmless(l.Text))
	}
	return say(term.AskHistory, "%s", b.String())
}

func (t *turn) listJobs(context.Context, grammar.Question) (Reply, error) {
	if len(t.jobs) == 0 {
		return say(term.AskJobs, `No jobs yet. "job Alder basement" begins one.`)
	}
	var b strings.Builder
	b.WriteString("Jobs:")
	for _, j := range t.jobs {
		b.WriteString("\n  " + answer.Harmless(j.Name))
		if j.ID == t.place.ID {
			b.WriteString(" (on it now)")
		}
		if j.Group != "" {
			b.WriteString(" (shared)")
		}
	}
	return say(term.AskJobs, "%s", b.String())
}

// share lets everyone in the channel ask and add to the job.
func (t *turn) share(ctx context.Context, _ grammar.Question) (Reply, error) {
	switch {
	case t.msg.Channel == "":
		return say(term.AskShare, "%s", `Nothing is shared yet: this chat is private. Say "share" in the group channel, and everyone there can ask and add to the job.`)
	case t.place.ID == 0:
		return refuse(term.AskShare, "there is no job to share yet: \"job Alder basement\" begins one")
	case t.place.Owner != t.msg.User:
		return refuse(term.AskShare, "only its owner shares a job")
	}
	if err := t.bot.store.Share(ctx, t.place.ID, t.msg.Channel); err != nil {
		return Reply{}, err
	}
	return t.changed(term.AskShare, "%s is shared here now: anyone in this channel can ask about it and add to it.", answer.Harmless(t.place.Name))
}

func (t *turn) unshare(ctx context.Context, _ grammar.Question) (Reply, error) {
	if t.msg.Channel == "" || t.place.Group != t.msg.Channel {
		return refuse(term.AskUnshare, "no job is shared here")
	}
	if err := t.bot.store.Unshare(ctx, t.msg.Channel); err != nil {
		return Reply{}, err
	}
	return t.changed(term.AskUnshare, "%s is not shared here any more.", answer.Harmless(t.place.Name))
}

func (t *turn) changed(k term.Kind, format string, args ...any) (Reply, error) {
	r, err := say(k, format, args...)
	r.Answer.Outcome = answer.Recorded
	return r, err
}

// export gives the statements that still stand as a text file, which can be said again.
func (t *turn) export(context.Context, grammar.Question) (Reply, error) {
	if t.place.ID == 0 {
		return refuse(term.AskExport, "there is no job to export yet")
	}
	text := "job " + t.place.Name + "\n"
	for _, s := range t.standing {
		text += s.String() + "\n"
	}
	r, err := say(term.AskExport, "%s as text, %d statements; said again, line by line, it makes the same job.", answer.Harmless(t.place.Name), len(t.standing))
	r.Files = []File{{Name: "job.txt", Type: "text/plain; charset=utf-8", Alt: "the statements of the job " + t.place.Name, Data: []byte(text)}}
	return r, err
}

// forget deletes everything of a user, once they have said so twice.
func (t *turn) forget(ctx context.Context, q grammar.Question) (Reply, error) {
	if strings.ToLower(strings.TrimSpace(t.msg.Text)) != forgetAll {
		r, err := say(q.Kind, "That deletes your jobs and conversations here for good, %d jobs. Say %q to do it.", t.ownJobs(), forgetAll)
		r.Answer.Outcome = answer.AskBack
		return r, err
	}
	if err := t.bot.store.Forget(ctx, t.msg.User); err != nil {
		return Reply{}, err
	}
	t.memory, t.place, t.forgotten = memory{}, store.Job{}, true
	return t.changed(q.Kind, "Forgotten: your jobs and conversations are deleted.")
}

const forgetAll = "forget everything"

func (t *turn) ownJobs() int {
	n := 0
	for _, j := range t.jobs {
		if j.Owner == t.msg.User {
			n++
		}
	}
	return n
}
