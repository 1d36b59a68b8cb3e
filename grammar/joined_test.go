package grammar

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Rooms joined through openings, and what opens off them; what was read reads again as the same.
func TestJoinedRooms(t *testing.T) {
	for text, want := range map[string]string{
		"hall 4ft x 15ft off the east wall, 2 ft from the south corner, opening 3 ft": "hall 48 in x 15 ft on east, 24 in from south, opening 36 in",
		"room 8ft x 6ft off the west wall, opening 30in":                              "annex 8 ft x 72 in on west, opening 30 in",
		"a hallway 1.2m x 4m off the north wall":                                      "hall 1200 mm x 4000 mm on north",
		"closet 5' x 2' off the north wall of the hall, 6' from the east corner":      "closet 60 in x 24 in on hall north, 72 in from east",
		"closet 5' x 2' off the hall's north wall":                                    "closet 60 in x 24 in on hall north",
		"hall 4ft x 6ft off the annex west wall":                                      "hall 48 in x 72 in on annex west",
		"closet 5' x 2' off the north wall, 3' from the west corner, opening 4'":      "closet 60 in x 24 in on north, 36 in from west, opening 48 in",
		"door 32in in the hall's east wall":                                           "doorway 32 in on hall east",
		"door 32in in the east wall of the closet":                                    "doorway 32 in on closet east",
		"door 30 in in the south wall to the hall":                                    "doorway 30 in on south",
		"room 11ft 4in x 12ft 6in":                                                    "room 11 ft 4 in x 12 ft 6 in",
	} {
		for _, say := range []string{text, want} {
			r := Read(say, Context{})
			require.Len(t, r.Statements, 1, say)
			require.Equal(t, want, r.Statements[0].String(), say)
			again, err := ParseStatement(want)
			require.NoError(t, err)
			require.Equal(t, want, again.String())
		}
	}
}
