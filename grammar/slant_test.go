package grammar

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Slanted walls, corners cut off, rows along a wall and fixtures in a closet, as people tell them.
func TestSlantedWallsAndWhatStandsByThem(t *testing.T) {
	for said, want := range map[string]string{
		"walls E 12', NE 3', N 6', W 14', S 8'":                                                          "walls east 12 ft, north-east 36 in, north 72 in, west 14 ft, south 8 ft",
		"walls E 12', NE 2' x 3', N 6', W 14', S 9'":                                                     "walls east 12 ft, north-east 24 in x 36 in, north 72 in, west 14 ft, south 9 ft",
		"walls east 12 ft, north east 3 ft, north 72 in, west 14 ft, south 8 ft":                         "walls east 12 ft, north-east 36 in, north 72 in, west 14 ft, south 8 ft",
		"walls N 12'4, E 9'2, S 12'1, W 9'2, diagonal NW-SE 15'3 1/2":                                    "walls north 12 ft 4 in, east 9 ft 2 in, south 12 ft 1 in, west 9 ft 2 in, diagonal nw-se 15 ft 3 1/2 in",
		"room 12 x 10 with the NE corner cut off 2' x 2' at an angle":                                    "room 12 ft x 10 ft, without 24 in x 24 in at ne angled",
		"room 12' x 10' with 2' x 2' cut off the NE corner at 45 degrees":                                "room 12 ft x 10 ft, without 24 in x 24 in at ne angled",
		"room 12x10, NE corner clipped 2x2":                                                              "room 12 ft x 10 ft, without 24 in x 24 in at ne angled",
		"room 12' x 10' with an angled corner at the SE, 2' x 3'":                                        "room 12 ft x 10 ft, without 24 in x 36 in at se angled",
		"begin at the diagonal wall":                                                                     "start slanted",
		"planks should follow the north-west wall":                                                       "direction along north-west",
		"room 12' x 10' with the SW corner angled off 2' x 3'":                                           "room 12 ft x 10 ft, without 24 in x 36 in at sw angled",
		"room 12'4\" x 9'2\" with 3' x 2'6\" out of the NE corner":                                       "room 12 ft 4 in x 9 ft 2 in, without 36 in x 30 in at ne",
		"room 12' x 10' with 2' x 2' cut off the NE corner at an angle and 3' x 1' out of the SW corner": "room 12 ft x 10 ft, without 24 in x 24 in at ne angled, without 36 in x 12 in at sw",
		"rows run along the west wall":                                                                   "direction along west",
		"lay along the north wall":                                                                       "direction along north",
		"run the planks parallel to the east wall":                                                       "direction along east",
		"lay the rows along the slanted wall":                                                            "direction along slanted",
		"rows run along the NE wall":                                                                     "direction along north-east",
		"rows run east-west":                                                                             "direction east-west",
		"start along the slanted wall":                                                                   "start slanted",
		"start at the north-east wall":                                                                   "start north-east",
		"start at the south wall":                                                                        "start south",
		"gap 1/2 at the NE wall":                                                                         "gap 1/2 in at north-east",
		"north-east wall tight":                                                                          "gap 0 in at north-east",
		"door 32in in the NE wall, 6in from the north corner":                                            "doorway 32 in on north-east, 6 in from north",
		"door 32in in the south wall, 2' from the SW corner":                                             "doorway 32 in on south, 24 in from south-west",
		"door 30in in the slanted wall":                                                                  "doorway 30 in on slanted",
		"closet 3' x 2' off the slanted wall, 6in from the NW corner":                                    "closet 36 in x 24 in on slanted, 6 in from north-west",
		"post 4in x 4in in the hall, 3' from west, 5' from south":                                        "post 4 in x 4 in in hall, 36 in from west, 60 in from south",
		"pipe 2in in the closet, 4in from the east wall, 6in from the north":                             "pipe 2 in in closet, 4 in from east, 6 in from north",
		"post 4in x 4in inside the annex, 3' from the west wall, 5' from the south wall":                 "post 4 in x 4 in in annex, 36 in from west, 60 in from south",
		"post 4in x 4in, 3' from west, 5' from south":                                                    "post 4 in x 4 in, 36 in from west, 60 in from south",
	} {
		r := Read(said, Context{})
		require.Nil(t, r.Problem, said)
		require.Len(t, r.Statements, 1, said)
		require.Equal(t, want, r.Statements[0].String(), said)
	}
}

// An opening's place in the room that it leads to, where that is wider than the wall between.
func TestOpeningFromItsOwnCorner(t *testing.T) {
	for said, want := range map[string]string{
		"bedroom 20' x 9' off the hall's east wall, opening 3', 18in from its south corner":              "annex 20 ft x 9 ft on hall east, opening 36 in at 18 in",
		"bedroom 20' x 9' off the hall's east wall, opening 3', 2' from its north corner":                "annex 20 ft x 9 ft on hall east, opening 36 in at 15 ft",
		"hall 4' x 9' off the north wall, 2' from the west corner, opening 30in, 3in from its west side": "hall 48 in x 9 ft on north, 24 in from west, opening 30 in at 15 in",
	} {
		r := Read(said, Context{})
		require.Nil(t, r.Problem, said)
		require.Equal(t, want, r.Statements[0].String(), said)
	}
}

// Openings between rooms that are there already.
func TestOpeningsBetweenRooms(t *testing.T) {
	annex, err := ParseStatement("annex 12 ft x 10 ft on hall east, opening 36 in")
	require.NoError(t, err)
	for said, want := range map[string]string{
		"opening 3' between the hall and the annex, in the hall's east wall":                                                                        "opening 36 in on hall east, to annex",
		"another opening 3' between the annex and the hall in the annex west wall, 2' from the north corner":                                        "opening 36 in on annex west, 24 in from north, to hall",
		"another 3' opening from the hall to the annex, in the hall's east wall":                                                                    "opening 36 in on hall east, to annex",
		"the hall and the annex are also joined by a 3' opening in the hall's east wall":                                                            "opening 36 in on hall east, to annex",
		"opening 30in between the main room and the hall, in the east wall, 2' from the south corner":                                               "opening 30 in on east, 24 in from south, to hall",
		"opening 3' between the hall and the bedroom in the hall's east wall, 6in from the north corner, 18in from the north corner of the bedroom": "opening 36 in on hall east, 6 in from north, to annex, 18 in from north",
		"opening 3' between the hall and the annex, in the hall's slanted wall":                                                                     "opening 36 in on hall slanted, to annex",
	} {
		for _, say := range []string{said, want} {
			r := Read(say, Context{Statements: []Statement{annex}})
			require.Nil(t, r.Problem, say)
			require.Len(t, r.Statements, 1, say)
			require.Equal(t, want, r.Statements[0].String(), say)
		}
	}
}

// A question may lay the rows along a wall for once; its canonical form says so.
func TestAskedAlongAWall(t *testing.T) {
	r := Read("how many planks if the rows run along the west wall", Context{})
	require.NotNil(t, r.Question)
	require.Contains(t, r.Question.String(), "direction along west")
	again := Read(r.Question.String(), Context{})
	require.Equal(t, r.Question.String(), again.Question.String())
}
