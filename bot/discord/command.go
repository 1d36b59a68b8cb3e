package discord

import (
	"context"
	"net/http"

	"github.com/bwmarrin/discordgo"
)

const commandName = "lastrow"

// command is the one slash command: a text, said as if it were a message.
func command() *discordgo.ApplicationCommand {
	return &discordgo.ApplicationCommand{
		Type:        discordgo.ChatApplicationCommand,
		Name:        commandName,
		Description: commandFor,
		Options: []*discordgo.ApplicationCommandOption{{
			Type: discordgo.ApplicationCommandOptionString, Name: "text", Description: optionFor, Required: true,
		}},
	}
}

// register sees to it that the server has the command, once for this process and only where it has not: Discord counts.
func (s *server) register(ctx context.Context) {
	s.mu.Lock()
	app, done := s.app, s.registered
	s.registered = true
	s.mu.Unlock()
	if done || app == "" {
		return
	}
	endpoint := discordgo.EndpointApplicationGlobalCommands(string(app))
	if there, err := s.rest.call(ctx, http.MethodGet, endpoint, nil); err == nil && has(read[[]*discordgo.ApplicationCommand](there), command()) {
		return
	}
	if _, err := s.rest.call(ctx, http.MethodPost, endpoint, command()); err != nil {
		s.log.Error("the slash command is not registered", "error", brief(err))
		s.mu.Lock()
		s.registered = false
		s.mu.Unlock()
	}
}

// has says whether a command is among others, and the same.
func has(there []*discordgo.ApplicationCommand, c *discordgo.ApplicationCommand) bool {
	for _, t := range there {
		if t == nil || t.Name != c.Name || t.Type > c.Type {
			continue
		}
		if t.Description != c.Description || len(t.Options) != len(c.Options) {
			return false
		}
		for i, o := range c.Options {
			if t.Options[i].Name != o.Name || t.Options[i].Description != o.Description || t.Options[i].Type != o.Type || t.Options[i].Required != o.Required {
				return false
			}
		}
		return true
	}
	return false
}
