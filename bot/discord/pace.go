package discord

import (
	"time"

	"golang.org/x/time/rate"
)

// pace holds every wait and bound that isn't the protocol's own.
type pace struct {
	dial, hello       time.Duration // to connect; to be greeted, and to be ready
	backoff, most     time.Duration // between connections: at first, and at most
	invalid           time.Duration // at least this long between a refused session and the next, and at most five times this
	identify          rate.Limit    // how often a new session may begin, over a day
	identifyBurst     int
	identifyGap       time.Duration // between two new sessions
	settle            time.Duration // from READY to the look at what was missed
	attempt           time.Duration // for one request
	attempts          int           // of one request
	retry, retryLimit time.Duration // before the second attempt, doubling; the longest wait that a server may ask for
	callback          time.Duration // for the first answer to an interaction
	token             time.Duration // in which an interaction may be answered
	away              time.Duration // how old a message may be that was sent before this program began
	user              rate.Limit    // messages a second from one user
	userBurst         int
	finish            time.Duration // for work in hand when serving ends
}

// discords is the pace for Discord itself. It resets a bot's token after 1000 new sessions in a day, so these are 900 at most.
var discords = pace{
	dial: 15 * time.Second, hello: 30 * time.Second,
	backoff: time.Second, most: 2 * time.Minute,
	invalid:  time.Second,
	identify: rate.Every(108 * time.Second), identifyBurst: 100, identifyGap: 5 * time.Second,
	settle:  2 * time.Second,
	attempt: 20 * time.Second, attempts: 5,
	retry: 500 * time.Millisecond, retryLimit: time.Minute,
	callback: 2800 * time.Millisecond, token: 14*time.Minute + 30*time.Second,
	away: 10 * time.Minute,
	user: 2, userBurst: 60,
	finish: 8 * time.Second,
}
