package main

import (
	"cmp"
	"context"
	"errors"
	"time"

	"lastrow/bot"
	"lastrow/bot/discord"
)

type serveCmd struct {
	DB string `name:"db" placeholder:"FILE" help:"The database. Default: in the user's data folder."`
}

// letGo is how long a conversation and a kept reply last; the bot itself lets a conversation go sooner.
const letGo = 24 * time.Hour

// Run answers on Discord until it is told to stop.
func (c *serveCmd) Run(ctx context.Context, w world) error {
	token := w.env("DISCORD_TOKEN")
	if token == "" {
		return errors.New("no token: set DISCORD_TOKEN to the bot's token (.env.example lists every setting)")
	}
	s, err := openStore(ctx, c.DB, w)
	if err != nil {
		return err
	}
	defer s.Close()
	if err := s.LetGo(ctx, time.Now().Add(-letGo)); err != nil {
		return err
	}
	return discord.Serve(ctx, discord.Config{
		Token: token, API: cmp.Or(w.env("DISCORD_API_BASE"), "https://discord.com"), Gateway: w.env("DISCORD_GATEWAY"),
		Contents: w.env("DISCORD_MESSAGE_CONTENT") == "1", Log: logger(w),
	}, bot.New(s).Reply)
}
