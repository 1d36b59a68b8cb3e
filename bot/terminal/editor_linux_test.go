package terminal

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"

	"lastrow/bot"
	"lastrow/bot/answer"
)

// talker, where set, makes the test binary a chat that repeats what it is told, with its history in that file.
const talker = "TERMINAL_TEST_HISTORY"

func TestMain(m *testing.M) {
	if history := os.Getenv(talker); history != "" {
		c := Chat{User: "ann", Out: os.Stdout, History: history, Now: time.Now, Reply: repeat}
		ctx, stop := signal.NotifyContext(context.Background(), unix.SIGTERM)
		defer stop()
		if err := c.Run(ctx, os.Stdin); err != nil {
			panic(err)
		}
		fmt.Println("left")
		os.Exit(0)
	}
	os.Exit(m.Run())
}

func repeat(_ context.Context, m bot.Message) (bot.Reply, error) {
	return bot.Reply{Answer: answer.Answer{Text: "heard " + m.Text + "."}}, nil
}

// typed is a chat in a terminal, and what it has shown.
type typed struct {
	t     *testing.T
	keys  *os.File
	tty   *os.File
	shown chan string
	all   string
	chat  *exec.Cmd
}

func sit(t *testing.T, history string) *typed {
	keys, err := os.OpenFile("/dev/ptmx", os.O_RDWR, 0)
	require.NoError(t, err)
	t.Cleanup(func() { _ = keys.Close() })
	require.NoError(t, unix.IoctlSetPointerInt(int(keys.Fd()), unix.TIOCSPTLCK, 0))
	require.NoError(t, unix.IoctlSetWinsize(int(keys.Fd()), unix.TIOCSWINSZ, &unix.Winsize{Row: 24, Col: 80}))
	n, err := unix.IoctlGetInt(int(keys.Fd()), unix.TIOCGPTN)
	require.NoError(t, err)
	screen, err := os.OpenFile(fmt.Sprintf("/dev/pts/%d", n), os.O_RDWR|unix.O_NOCTTY, 0)
	require.NoError(t, err)
	t.Cleanup(func() { _ = screen.Close() }) // open to the end: the last to close it may lose what was written
	chat := exec.Command(os.Args[0])
	chat.Env = []string{talker + "=" + history, "TERM=xterm"}
	chat.Stdin, chat.Stdout, chat.Stderr = screen, screen, screen
	require.NoError(t, chat.Start())
	t.Cleanup(func() { _ = chat.Process.Kill() })
	s := &typed{t: t, keys: keys, tty: screen, shown: make(chan string, 100), chat: chat}
	go s.watch()
	return s
}

func (s *typed) watch() {
	defer close(s.shown)
	b := make([]byte, 1<<12)
	for {
		n, err := s.keys.Read(b)
		if err != nil {
			return
		}
		s.shown <- string(b[:n])
	}
}

// shows waits until the terminal has shown a text since it was last asked.
func (s *typed) shows(text string) {
	s.t.Helper()
	limit := time.After(10 * time.Second)
	for !strings.Contains(s.all, text) {
		select {
		case more, ok := <-s.shown:
			if !ok {
				require.Fail(s.t, "the terminal is closed", "%q, not %q", s.all, text)
			}
			s.all += more
		case <-limit:
			require.Fail(s.t, "not shown", "%q, not %q", s.all, text)
		}
	}
	_, s.all, _ = strings.Cut(s.all, text)
}

func (s *typed) press(keys string) {
	_, err := s.keys.WriteString(keys)
	require.NoError(s.t, err)
}

const up, left, backspace, ctrlC, ctrlD = "\x1b[A", "\x1b[D", "\x7f", "\x03", "\x04"

func TestLinesAreEditedAndComeBack(t *testing.T) {
	history := filepath.Join(t.TempDir(), "history")
	s := sit(t, history)
	s.shows(prompt)
	s.press("laid 66" + backspace + " ros" + left + "w\r")
	s.shows("heard laid 6 rows.")
	s.shows(prompt)
	s.press("undo\r")
	s.shows("heard undo.")
	s.shows(prompt)
	s.press(up + up + "\r")
	s.shows("heard laid 6 rows.")
	s.shows(prompt)
	s.press(ctrlD)
	s.shows("left")
	require.NoError(t, s.chat.Wait())
	info, err := os.Stat(history)
	require.NoError(t, err)
	require.Equal(t, os.FileMode(0o600), info.Mode().Perm())

	s = sit(t, history)
	s.shows(prompt)
	s.press(up + up + "\r")
	s.shows("heard undo.")
	s.shows(prompt)
	s.press("half a line")
	s.shows("line") // the prompt is shown a moment before the editor takes Ctrl-C for itself
	s.press(ctrlC)
	s.shows("left")
	require.NoError(t, s.chat.Wait())
}

func TestToldToStopItLeavesTheTerminalAsItWas(t *testing.T) {
	s := sit(t, filepath.Join(t.TempDir(), "history"))
	mode := func() uint32 {
		m, err := unix.IoctlGetTermios(int(s.tty.Fd()), unix.TCGETS)
		require.NoError(t, err)
		return m.Lflag & (unix.ECHO | unix.ICANON)
	}
	s.shows(prompt)
	s.press("half")
	s.shows("half")
	require.NotEqual(t, uint32(unix.ECHO|unix.ICANON), mode())
	require.NoError(t, s.chat.Process.Signal(unix.SIGTERM))
	s.shows("left")
	require.NoError(t, s.chat.Wait())
	require.Equal(t, uint32(unix.ECHO|unix.ICANON), mode())
}
