package discord

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"net/http"
	"strings"
	"time"

	"github.com/bwmarrin/discordgo"
)

// target is where an answer goes: a channel, as the reply to a message; or an interaction.
type target struct {
	channel, guild id
	message        id
	nonce          id     // of what is answered
	token          string // of the interaction, "" for a message
	app            id
	until          time.Time // the interaction may be answered so long
	opened         chan bool // tells whether the interaction took its first answer
}

// post is the body of a request that makes or edits a message.
type post struct {
	Content     string                      `json:"content"`
	Nonce       string                      `json:"nonce,omitempty"`
	Enforce     bool                        `json:"enforce_nonce,omitempty"`
	Reference   *discordgo.MessageReference `json:"message_reference,omitempty"`
	Mentions    mentions                    `json:"allowed_mentions"`
	Attachments []attachment                `json:"attachments,omitempty"`

	files []file
}

// mentions lets no mention in a message reach anyone.
type mentions struct {
	Parse   [0]string `json:"parse"`
	Replied bool      `json:"replied_user"`
}

type attachment struct {
	ID          int    `json:"id"`
	Filename    string `json:"filename"`
	Description string `json:"description,omitempty"`
}

// deliver sends a reply, in as many messages as it takes.
func (s *server) deliver(ctx context.Context, to target, text string, files []file) {
	if to.token != "" {
		s.deliverToInteraction(ctx, to, text, files)
		return
	}
	for i, p := range parts(text, files) {
		if err := s.post(ctx, to, i, p); err != nil {
			s.log.Error("a reply was not delivered", "channel", to.channel, "message", to.message, "error", brief(err))
			return
		}
	}
}

// post sends one part of a reply. The nonce comes of the message that is answered, so that the server takes it for the same
// part when it is sent again.
func (s *server) post(ctx context.Context, to target, i int, p part) error {
	m := post{Content: p.text, Nonce: short(fmt.Sprintf("%s-%d", to.nonce, i), 25), Enforce: true, files: p.files}
	if i == 0 && to.message != "" {
		soft := false
		m.Reference = &discordgo.MessageReference{MessageID: string(to.message), ChannelID: string(to.channel), GuildID: string(to.guild), FailIfNotExists: &soft}
	}
	return s.insist(ctx, http.MethodPost, discordgo.EndpointChannelMessages(string(to.channel)), m)
}

// insist sends a message, and one that is refused without what may not be there: the reference, or the files.
func (s *server) insist(ctx context.Context, method, endpoint string, m post) error {
	for {
		answer, err := s.send(ctx, method, endpoint, m)
		if err == nil {
			if sent := read[message](answer).ID; sent != "" {
				s.sent.add(sent)
			}
			return nil
		}
		less, ok := m.less(err)
		if !ok {
			return err
		}
		s.log.Warn("a reply was refused, sending it with less", "endpoint", endpoint, "error", brief(err))
		m = less
	}
}

func (s *server) send(ctx context.Context, method, endpoint string, m post) ([]byte, error) {
	if len(m.files) == 0 {
		return s.rest.call(ctx, method, endpoint, m)
	}
	files := make([]*discordgo.File, len(m.files))
	m.Attachments = make([]attachment, len(m.files))
	for i, f := range m.files {
		files[i] = &discordgo.File{Name: f.Name, ContentType: f.Type, Reader: bytes.NewReader(f.Data)}
		m.Attachments[i] = attachment{i, f.Name, short(f.Alt, mostAlt)}
	}
	contentType, body, err := discordgo.MultipartBodyWithJSON(m, files)
	if err != nil {
		return nil, err
	}
	return s.rest.raw(ctx, method, endpoint, contentType, body)
}

// Discord's codes for what a message may lack the right to.
const (
	codeMissingAccess    = 50001
	codeUnknownMessage   = 10008
	codeUnknownChannel   = 10003
	codeTooLarge         = 40005
	codeNoHistory        = 160002
	codeInvalidReference = 50035
)

// less is a refused message without the part that it may have been refused for.
func (m post) less(err error) (post, bool) {
	status, code, ok := refusal(err)
	switch {
	case !ok || code == codeMissingAccess || code == codeUnknownChannel:
		return m, false
	case m.Reference != nil && aboutReference(err, code):
		m.Reference = nil
	case len(m.files) > 0 && (status == http.StatusForbidden || status == http.StatusRequestEntityTooLarge || code == codeTooLarge):
		m.files, m.Attachments = nil, nil
		m.Content = strings.TrimSpace(split(m.Content, mostText-len(noFiles)-1)[0] + "\n" + noFiles)
	case m.Reference != nil && status == http.StatusBadRequest:
		m.Reference = nil
	default:
		return m, false
	}
	return m, true
}

func aboutReference(err error, code int) bool {
	var e *discordgo.RESTError
	return code == codeNoHistory || code == codeUnknownMessage ||
		code == codeInvalidReference && errors.As(err, &e) && bytes.Contains(e.ResponseBody, []byte("message_reference"))
}
