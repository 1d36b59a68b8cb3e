package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"strconv"
	"syscall"
	"time"

	"lastrow/bot"
	"lastrow/bot/discord"
	"lastrow/store"
)

type serveCmd struct {
	DB string `name:"db" placeholder:"FILE" help:"The database; :memory: keeps nothing. Default: in the data folder."`
}

// Help names the settings, which are read from the environment so that the token is in no list of processes.
func (serveCmd) Help() string {
	return "Settings are read from the environment: DISCORD_TOKEN is needed, .env.example lists all of them."
}

// Run serves until it is told to stop.
func (c *serveCmd) Run(ctx context.Context, w world) error {
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
	defer stop()
	config, err := discordConfig(w)
	if err != nil {
		return err
	}
	s, err := openStore(ctx, c.DB, w)
	if err != nil {
		return err
	}
	defer s.Close()
	go letGo(ctx, s, config)
	config.Log.Info("serving Discord; stop with Ctrl-C")
	return discord.Serve(ctx, config, bot.New(s).Reply)
}

func discordConfig(w world) (discord.Config, error) {
	c := discord.Config{Token: w.env("DISCORD_TOKEN"), API: w.env("DISCORD_API_BASE"), Gateway: w.env("DISCORD_GATEWAY"), Log: logger(w)}
	if c.Token == "" {
		return c, errors.New("no Discord token: set DISCORD_TOKEN to your bot's token (Discord's developer portal shows it once, under Bot)")
	}
	if said := w.env("DISCORD_MESSAGE_CONTENT"); said != "" {
		contents, err := strconv.ParseBool(said)
		if err != nil {
			return c, fmt.Errorf("DISCORD_MESSAGE_CONTENT is %q; it may be true or false", said)
		}
		c.Contents = contents
	}
	return c, nil
}

// letGo drops conversations that are over, and replies that no one will ask for again, for as long as the program runs.
func letGo(ctx context.Context, s *store.Store, c discord.Config) {
	hour := time.NewTicker(time.Hour)
	defer hour.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case now := <-hour.C:
			if err := s.LetGo(ctx, now.Add(-keep)); err != nil {
				c.Log.Error("old conversations could not be dropped", "error", err)
			}
		}
	}
}
