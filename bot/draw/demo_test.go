package draw

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

// The pictures that README shows are of the demo job as it is drawn today.
func TestDemoPictures(t *testing.T) {
	l := lay(t, layout.Request{
		Floor: build(t, alder()), Plank: oak, Rules: rules, Along: layout.EastWest, StartWall: room.South, FirstRow: 6 * in, Mark: in / 16,
	})
	title := alderTitle(l)
	at := notched(l)
	require.NotNil(t, at)
	row, ok := Row(l, at.Row, title)
	require.True(t, ok)
	piece, ok := Piece(l, at.Row, at.N, title)
	require.True(t, ok)
	for name, s := range map[string]*sheet.Sheet{
		"plan": Plan(l, title), "row": row, "piece": piece,
		"underlay": Underlay(l.Request.Floor, plank.Roll{Thickness: 2 * length.Millimetre, Width: 4 * ft, Length: 25 * ft}, false, title),
		"trim":     Trim(l.Request.Floor, Stick{Length: 8 * ft, Thickness: in / 2, Kerf: in / 8}, title),
	} {
		sound(t, s)
		samePicture(t, s, filepath.Join("..", "..", "testdata", "demo-"+name+".png"))
	}
}

// notched is the first piece after the first row that goes round something.
func notched(l *layout.Layout) *layout.Piece {
	var out *layout.Piece
	for i := range l.Rows[1:] {
		eachIn(&l.Rows[i+1], func(p *layout.Piece) {
			for _, c := range p.Cuts {
				if out == nil && c.What == "notch" {
					out = p
				}
			}
		})
	}
	return out
}
