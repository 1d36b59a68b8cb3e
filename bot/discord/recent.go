package discord

import (
	"sync"
	"time"

	"golang.org/x/time/rate"
)

// recent remembers the last ids it was given.
type recent struct {
	mu   sync.Mutex
	ids  map[id]bool
	ring []id
	next int
}

func newRecent(n int) *recent { return &recent{ids: make(map[id]bool, n), ring: make([]id, n)} }

// add remembers an id and says whether it is new.
func (r *recent) add(i id) bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.ids[i] {
		return false
	}
	delete(r.ids, r.ring[r.next])
	r.ring[r.next], r.ids[i] = i, true
	r.next = (r.next + 1) % len(r.ring)
	return true
}

func (r *recent) has(i id) bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.ids[i]
}

// limits holds each user to so many messages a second.
type limits struct {
	pace  *pace
	mu    sync.Mutex
	users map[id]*limit
}

type limit struct {
	*rate.Limiter
	told bool // that it was too much
}

// crowd is the count of users at which those who have been quiet for a while are forgotten.
const crowd = 4096

func newLimits(p *pace) *limits { return &limits{pace: p, users: map[id]*limit{}} }

// allow says whether one more message of a user's is taken, and if not, whether to tell.
func (l *limits) allow(u id) (ok, tell bool) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if len(l.users) >= crowd {
		l.evict()
	}
	own := l.users[u]
	if own == nil {
		own = &limit{Limiter: rate.NewLimiter(l.pace.user, l.pace.userBurst)}
		l.users[u] = own
	}
	if own.Allow() {
		own.told = false
		return true, false
	}
	tell, own.told = !own.told, true
	return false, tell
}

// evict forgets all users who may send as much as someone new.
func (l *limits) evict() {
	now := time.Now()
	for u, own := range l.users {
		if own.TokensAt(now) >= float64(l.pace.userBurst) {
			delete(l.users, u)
		}
	}
}
