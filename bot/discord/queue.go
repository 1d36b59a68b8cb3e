package discord

import (
	"context"
	"fmt"
	"log/slog"
	"sync"
	"time"
)

const (
	longest = 128 // jobs that wait in one conversation
	widest  = 8   // jobs at work at once, over all
)

// queues does jobs: those of one conversation in their order, those of several side by side.
type queues struct {
	log     *slog.Logger
	ctx     context.Context // of the conversations
	cancel  context.CancelFunc
	aside   context.Context // of what is done beside them
	leave   context.CancelFunc
	patient time.Duration

	mu      sync.Mutex
	waiting map[id][]func(context.Context) // a conversation is here for as long as it is worked at
	slots   chan struct{}
	running sync.WaitGroup
	closed  bool
}

func newQueues(l *slog.Logger, patient time.Duration) *queues {
	ctx, cancel := context.WithCancel(context.Background())
	aside, leave := context.WithCancel(ctx)
	return &queues{
		log: l, ctx: ctx, cancel: cancel, aside: aside, leave: leave, patient: patient,
		waiting: map[id][]func(context.Context){}, slots: make(chan struct{}, widest),
	}
}

// add puts a job at the end of its conversation, or says that no more may wait there.
func (q *queues) add(conversation id, job func(context.Context)) bool {
	q.mu.Lock()
	defer q.mu.Unlock()
	jobs, worked := q.waiting[conversation]
	if q.closed || len(jobs) >= longest {
		return false
	}
	q.waiting[conversation] = append(jobs, job)
	if !worked {
		q.running.Go(func() { q.drain(conversation) })
	}
	return true
}

// drain does a conversation's jobs until none waits.
func (q *queues) drain(conversation id) {
	for {
		job := q.next(conversation)
		if job == nil {
			return
		}
		q.slots <- struct{}{}
		q.do(q.ctx, job)
		<-q.slots
	}
}

func (q *queues) next(conversation id) func(context.Context) {
	q.mu.Lock()
	defer q.mu.Unlock()
	jobs := q.waiting[conversation]
	if len(jobs) == 0 {
		delete(q.waiting, conversation)
		return nil
	}
	q.waiting[conversation] = jobs[1:]
	return jobs[0]
}

// background does a job beside the conversations.
func (q *queues) background(job func(context.Context)) {
	q.mu.Lock()
	defer q.mu.Unlock()
	if !q.closed {
		q.running.Go(func() { q.do(q.aside, job) })
	}
}

func (q *queues) do(ctx context.Context, job func(context.Context)) {
	defer func() {
		if r := recover(); r != nil {
			q.log.Error("job failed", "panic", fmt.Sprint(r))
		}
	}()
	job(ctx)
}

// finish takes no more jobs and lets those at hand come to their end, for a while.
func (q *queues) finish() {
	q.mu.Lock()
	q.closed = true
	q.mu.Unlock()
	q.leave()
	done := make(chan struct{})
	go func() { q.running.Wait(); close(done) }()
	select {
	case <-done:
	case <-time.After(q.patient):
		q.log.Warn("serving ends with work in hand")
	}
	q.cancel()
}
