// Command lastrow answers a floor installer's questions: once from the command line, in a terminal, or on Discord.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os"

	"github.com/alecthomas/kong"
)

// Exit statuses.
const (
	done     = 0
	fault    = 1
	notAll   = 2 // a message was not understood, refused, or needs more
	badUsage = 2
)

type commands struct {
	Ask   askCmd   `cmd:"" help:"Answer messages given as arguments, in order, as one conversation."`
	Chat  chatCmd  `cmd:"" help:"Talk in this terminal."`
	Serve serveCmd `cmd:"" help:"Answer on Discord, until told to stop."`
}

// world is what a command may touch.
type world struct {
	in       *os.File
	out, err io.Writer
	env      func(string) string
}

func main() {
	os.Exit(run(context.Background(), os.Args[1:], world{os.Stdin, os.Stdout, os.Stderr, os.Getenv}))
}

// run does what the arguments say and gives the exit status.
func run(ctx context.Context, args []string, w world) (code int) {
	var c commands
	parser, err := kong.New(&c, kong.Name("lastrow"), kong.UsageOnError(), kong.Writers(w.out, w.err), kong.Exit(func(int) { panic(helped{}) }),
		kong.Description("Answers a floor installer's questions: rows, boxes, cuts, heights, moisture, trim."))
	if err != nil {
		return failed(w, err)
	}
	defer func() {
		if r := recover(); r != nil {
			if _, ok := r.(helped); !ok {
				panic(r)
			}
		}
	}()
	parsed, err := parser.Parse(args)
	if err != nil {
		fmt.Fprintln(w.err, "lastrow:", err)
		return badUsage
	}
	parsed.BindTo(ctx, (*context.Context)(nil))
	if err := parsed.Run(w); err != nil {
		return failed(w, err)
	}
	return done
}

// helped leaves run after a help text.
type helped struct{}

// errNotAll says that a message was not understood, refused, or needs more.
var errNotAll = errors.New("not all was answered")

func failed(w world, err error) int {
	if errors.Is(err, errNotAll) {
		return notAll
	}
	fmt.Fprintln(w.err, "lastrow:", err)
	return fault
}

func logger(w world) *slog.Logger { return slog.New(slog.NewTextHandler(w.err, nil)) }
