package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestAskShares begins and shares a job in a channel; from then on what is said there is overheard, and only what is
// wholly of the job's kind is answered.
func TestAskShares(t *testing.T) {
	out, _, code := said(t, "", "ask", "--db", ":memory:", "--in", "site", "job Magpie attic", "share",
		"room 11ft 4in x 12ft 6in", "got 3 boxes in the truck, be there at 8", "last row with a 7 5/8 plank?")
	require.Equal(t, done, code)
	require.Equal(t, 1, strings.Count(out, "is shared here now"))
	require.Contains(t, out, "Noted: room 11 ft 4 in x 12 ft 6 in.")
	require.NotContains(t, out, "3 boxes")
	require.Contains(t, out, "18 rows")
}
