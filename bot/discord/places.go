package discord

import (
	"cmp"
	"slices"
	"sync"
)

// places are the channels that the bot knows of, and how far it has read in them.
type places struct {
	mu     sync.Mutex
	known  map[id]*place
	newest id // message of all
}

// place is one channel. While it isn't caught up, mark is the last message that was read before the bot was away.
type place struct {
	id     id
	group  bool
	read   id // the last message that was read
	say    id // the last message by the server's telling, "" where it hasn't told since the bot was away
	mark   id
	caught bool
}

// most channels that are remembered, and that are read after being away.
const (
	mostPlaces = 20000
	mostRead   = 40
)

func newPlaces() *places { return &places{known: map[id]*place{}} }

func (p *places) at(c id) *place {
	if p.known[c] == nil {
		if len(p.known) >= mostPlaces {
			return &place{id: c}
		}
		p.known[c] = &place{id: c}
	}
	return p.known[c]
}

// talk are the kinds of channel that messages are in.
var talk = []int{0, 2, 5, 10, 11, 12, 13}

func (p *places) group(c channel) {
	if c.ID == "" || !slices.Contains(talk, c.Kind) {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	at := p.at(c.ID)
	at.group, at.say = true, c.LastSay
}

func (p *places) private(c channel) {
	if c.ID == "" {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.at(c.ID).say = c.LastSay
}

func (p *places) saw(c, m id, group bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	_, known := p.known[c]
	at := p.at(c)
	at.group, at.caught = at.group || group, at.caught || !known
	if m.after(at.read) {
		at.read = m
	}
	if m.after(p.newest) {
		p.newest = m
	}
}

// leave marks how far every channel has been read, before anything later comes in.
func (p *places) leave() {
	p.mu.Lock()
	defer p.mu.Unlock()
	for _, at := range p.known {
		if at.caught {
			at.mark, at.caught = at.read, false
		}
		at.say = ""
	}
}

// caughtUp says that a channel has been read.
func (p *places) caughtUp(c id) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.at(c).caught = true
}

// last is the newest message that was read anywhere.
func (p *places) last() id {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.newest
}

func (p *places) isGroup(c id) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.known[c] != nil && p.known[c].group
}

// behind are the channels where something may have been said that wasn't read, those talked in last before others; all, or
// only those where something has been read.
func (p *places) behind(away absence) []place {
	p.mu.Lock()
	defer p.mu.Unlock()
	var some []place
	for _, at := range p.known {
		if !at.caught && (away.all || at.read != "") && at.mayHold(away) {
			some = append(some, *at)
		}
	}
	slices.SortFunc(some, func(a, b place) int {
		return cmp.Or(order(b.read, a.read), order(b.say, a.say), order(b.id, a.id))
	})
	return some[:min(len(some), mostRead)]
}

// mayHold is false where the server has told that nothing was said.
func (at *place) mayHold(away absence) bool {
	if at.say == "" {
		return true
	}
	said := at.say.at()
	return at.say.after(at.mark) && (at.mark != "" || said.IsZero() || said.After(away.since.Add(-skew)))
}
