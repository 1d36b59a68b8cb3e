package main

import (
	"context"
	"os/signal"
	"path/filepath"
	"syscall"
	"time"

	"lastrow/bot"
	"lastrow/bot/terminal"
)

type chatCmd struct {
	DB string `name:"db" placeholder:"FILE" help:"The database; :memory: keeps nothing. Default: in the user's data folder."`
	As string `placeholder:"USER" default:"me" help:"The user who speaks."`
}

// Run talks until the input ends or the program is told to stop.
func (c *chatCmd) Run(ctx context.Context, w world) error {
	ctx, stop := signal.NotifyContext(ctx, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	folder, err := dataFolder(w)
	if err != nil {
		return err
	}
	s, err := openStore(ctx, c.DB, w)
	if err != nil {
		return err
	}
	defer s.Close()
	log := logger(w)
	return terminal.Chat{
		Reply: bot.New(s).Reply, User: c.As, Out: w.out, Folder: folder, History: filepath.Join(folder, "history"), Now: time.Now,
		Fault: func(err error) { log.Error("a message could not be answered", "error", err) },
	}.Run(ctx, w.in)
}
