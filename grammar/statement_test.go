package grammar

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestCanonicalStatementsParseToThemselves(t *testing.T) {
	for _, text := range []string{
		"job Alder basement", "room 11 ft 4 in x 12 ft 6 in", "room 3400 mm x 2900 mm, without 900 mm x 400 mm at ne",
		"plank 7 5/8 in wide, 47 1/2 in long, 12 mm thick, 8 per box", "plank 8 per box, 20.1 sq ft per box", "gap 3/8 in", "gap 0 in at south",
		"underlay 2 mm thick, roll 48 in x 25 ft", "start south", "direction east-west", "first-row 5 in", "price 31.90 per box, usd", "price 31.90 per box",
		"laid 6 rows", "laid 2 more rows", "damaged 2 planks", "note hold the bath threshold, it's late", "height other-height 5/8 in",
		"reading rh 78 %", "reading calcium-chloride 3.50 lb", "reading dip 3/16 in under 10 ft", "subfloor concrete, heated", "spare 10 %",
		"walls east 12 ft 4 in, south 9 ft, west 36 in", "closet 60 in x 24 in on north, 36 in from west, opening 48 in",
		"post 4 in x 4 in, 36 in from west, 60 in from south", "pipe 2 in, 36 in from west, 60 in from south", "trim 1/2 in thick, sticks 16 ft", "out-of-sight north",
		"doorway 32 in on south, 24 in from west",
	} {
		s, err := ParseStatement(text)
		require.NoError(t, err, text)
		require.Equal(t, text, s.String())
	}
}
