package calc

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

func BenchmarkAnswer(b *testing.B) {
	sized := func(eastWest, northSouth length.Length) *Job {
		return &Job{
			Plank: plank.Plank{Width: in(7.625), Length: in(47.5), Thickness: mm(12), PerBox: 8},
			Plan:  room.Plan{Rect: &room.Rect{EastWest: eastWest, NorthSouth: northSouth}},
			Facts: map[term.Name]term.Value{},
		}
	}
	bedroom := sized(136*length.Inch, 150*length.Inch)
	for _, c := range []struct {
		name string
		job  *Job
		kind term.Kind
	}{
		{"rows/bedroom", bedroom, term.AskRows},
		{"boxes/bedroom", bedroom, term.AskBoxes},
		{"boxes/floor=100m2", sized(10*length.Metre, 10*length.Metre), term.AskBoxes},
		{"boxes/floor=1000m2", sized(25*length.Metre, 40*length.Metre), term.AskBoxes},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, err := Answer(c.job, Question{Kind: c.kind})
				require.NoError(b, err)
			}
		})
	}
}
