// Package bot holds a conversation: one message in, one reply out, whichever way it came.
package bot

import "time"

// Message is one message as a transport received it.
type Message struct {
	ID        string // the transport's own, "" where it has none; a message delivered twice counts once
	User      string
	Channel   string // a group channel, or "" for a private chat
	Addressed bool   // mentions the bot, replies to it, or is private
	Text      string
	At        time.Time
}

// File is something to attach.
type File struct {
	Name string // "plan.png"
	Type string // "image/png"
	Alt  string // what it shows, for those who can't see it
	Data []byte
}
