package discord

import (
	"bytes"
	"encoding/json"
	"strconv"
	"time"
)

// The objects of Discord's that are read here have only the fields that are used, so that a change elsewhere in them, or a
// field left out, costs nothing. What can't be read of them is as if left out.

// id is a snowflake: digits in a string, or by some servers a number.
type id string

func (i *id) UnmarshalJSON(b []byte) error {
	b = bytes.Trim(b, `"`)
	if string(b) == "null" {
		return nil
	}
	*i = id(b)
	return nil
}

// epoch is the first millisecond of Discord's clock, in Unix time.
const epoch = 1420070400000

// at is when the thing with this id came to be; zero where the id isn't of Discord's making.
func (i id) at() time.Time {
	n, err := strconv.ParseUint(string(i), 10, 64)
	if err != nil || n < 1<<40 {
		return time.Time{}
	}
	return time.UnixMilli(int64(n>>22) + epoch)
}

// after says whether an id is newer than another.
func (i id) after(j id) bool {
	if len(i) != len(j) {
		return len(i) > len(j)
	}
	return i > j
}

type user struct {
	ID     id   `json:"id"`
	Bot    bool `json:"bot"`
	System bool `json:"system"`
}

// message kinds that are said by someone; all others are notices.
const (
	kindPlain = 0
	kindReply = 19
)

type message struct {
	ID        id              `json:"id"`
	Channel   id              `json:"channel_id"`
	Guild     id              `json:"guild_id"`
	Author    *user           `json:"author"`
	Member    json.RawMessage `json:"member"`
	Kind      int             `json:"type"`
	Content   string          `json:"content"`
	Webhook   id              `json:"webhook_id"`
	Time      string          `json:"timestamp"`
	Mentions  []user          `json:"mentions"`
	Roles     []id            `json:"mention_roles"`
	Reference *struct {
		Message id `json:"message_id"`
	} `json:"message_reference"`
	Referenced *struct {
		Author *user `json:"author"`
	} `json:"referenced_message"`
}

// at is when the message was sent; zero where nothing says so.
func (m *message) at() time.Time {
	if t, err := time.Parse(time.RFC3339, m.Time); err == nil {
		return t
	}
	return m.ID.at()
}

type channel struct {
	ID      id  `json:"id"`
	Kind    int `json:"type"`
	LastSay id  `json:"last_message_id"`
}

type guild struct {
	ID       id        `json:"id"`
	Channels []channel `json:"channels"`
	Threads  []channel `json:"threads"`
	Roles    []struct {
		ID   id `json:"id"`
		Tags struct {
			Bot id `json:"bot_id"`
		} `json:"tags"`
	} `json:"roles"`
}

type ready struct {
	User        user `json:"user"`
	Application struct {
		ID id `json:"id"`
	} `json:"application"`
	Private []channel `json:"private_channels"`
	Guilds  []guild   `json:"guilds"`
}

type interaction struct {
	ID          id     `json:"id"`
	Application id     `json:"application_id"`
	Kind        int    `json:"type"`
	Token       string `json:"token"`
	Guild       id     `json:"guild_id"`
	Channel     id     `json:"channel_id"`
	User        *user  `json:"user"`
	Member      *struct {
		User *user `json:"user"`
	} `json:"member"`
	Data struct {
		Name    string `json:"name"`
		Options []struct {
			Name  string `json:"name"`
			Value any    `json:"value"`
		} `json:"options"`
	} `json:"data"`
}

// author is who gave the command, nil where nothing says so: a member in a guild, a user elsewhere.
func (i *interaction) author() *user {
	if i.Member != nil && i.Member.User != nil {
		return i.Member.User
	}
	return i.User
}

// read decodes as much as can be read.
func read[T any](data []byte) (v T) {
	_ = json.Unmarshal(data, &v)
	return v
}
