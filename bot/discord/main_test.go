package discord

import (
	"testing"

	"go.uber.org/goleak"
)

// TestMain sees to it that serving leaves nothing at work when it ends.
func TestMain(m *testing.M) { goleak.VerifyTestMain(m) }
