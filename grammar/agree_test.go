package grammar

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

// Statements in words that no rule has, and what they record; "" is what is asked about or left.
var toldOtherwise = []struct{ say, record string }{
	{"the first course wants to be 4 1/4, no, 4 1/2", "first-row 4 1/2 in"},
	{"starter course 130 wide", "first-row 130 mm"},
	{"planks are 10 mm thick not 8", "plank 10 mm thick"},
	{"stagger is ten no to fourteen inches minimum", "least-stagger 14 in"},
	{"dining room floor sits 14 mm above the slab", "height other-height 14 mm"},
	{"log a 4 mm hollow under the 2 m level", "reading dip 4 mm under 2000 mm"},
	{"5 rows Saturday and 3 more Sunday", "laid 8 rows"},
	{"snapped one", "damaged 1 planks"},
	{"no kerf, using the shear", "kerf 0 in"},
	{"dome test came back 4.1 lb", "reading calcium-chloride 4.10 lb"},
	{"please save the damp reading, 78 percent", "reading rh 78 %"},
	{"one box costs 28.99", "price 28.99 per box"},
	{"foam is 27 a roll", ""},
	{"cracked 2 boxes worth of planks", ""},
	{"heading over to the Juniper barn job now", "job Juniper barn"},
	{"jot this down the meter cupboard stays open", "note the meter cupboard stays open"},
	{"have the planks point at the window thats the north wall", "direction north-south"},
	{"run the boards lengthways", ""},
	{"underneath is particle board", "subfloor wood"},
	{"a cupboard off the south side, 1.2 m by 0.6 m", "closet 1200 mm x 600 mm on south"},
	{"entry is 36 in the s wall 4 ft from w corner", "doorway 36 in on south, 48 in from west"},
	{"floor vent 4 x 12, 10 in from the west wall, 2 ft from the south", "fixture 4 in x 12 in, 10 in from west, 24 in from south"},
	{"floor vent 4 x 12, 10 from the west wall, 2 ft from the south", ""},
	{"water heater pad two by two in the north west corner", ""},
	{"toilet flange 15 from the east wall, 12 off the north", ""},
	{"ordered a rug, 6 by 9", ""},
	{"I put 30 bucks in the pot for coffee", ""},
}

func TestToldOtherwise(t *testing.T) {
	for _, c := range toldOtherwise {
		r := Read(c.say, Context{System: length.Imperial, Known: true})
		got := ""
		for _, s := range r.Statements {
			got = s.String()
		}
		require.Equal(t, c.record, got, c.say)
		require.Nil(t, r.Question, c.say)
	}
}
