package calc

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/term"
)

// So many spare planks are added as they are; a share of them is one at least.
func TestSpareOver(t *testing.T) {
	require.Equal(t, int64(68), spare{planks: 3, count: true}.over(65))
	require.Equal(t, int64(65), spare{count: true}.over(65))
	require.Equal(t, int64(69), spare{share: 5_000}.over(65)) // 68.25, rounded up
	require.Equal(t, int64(4), spare{share: 5_000}.over(3))
	require.Equal(t, "65 + 3 spare = 68 planks", spare{planks: term.Count(3), count: true}.line(65))
}
