package calc

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/term"
)

// What an answer adds where it knows more than it was asked. The figures: 1 mm a day to 50 mm and half below, so 70 days for
// 60 mm; 3/4 in of old threshold with twice that of bevel (2010 ADA Standards, 404.2.5); 12 mm / 0.14 W/mK = 0.0857, of 0.15;
// 2 x 5/8 in x tan 1° = 0.0218 in.
func TestAsides(t *testing.T) {
	for _, c := range []struct {
		kind  term.Kind
		pairs []any
		want  string
		not   []any
	}{
		{term.AskMoisture, []any{term.SlabThickness, term.Len(mm(60))}, "70 days", []any{term.Test, term.Word("rh"), term.SlabThickness, term.Len(mm(60))}},
		{term.AskTransition, []any{term.FloorHeight, term.Len(in(.75)), term.OtherHeight, term.Len(0)}, "threshold that was there before",
			[]any{term.FloorHeight, term.Len(in(.76)), term.OtherHeight, term.Len(0)}},
		{term.AskTransition, []any{term.FloorHeight, term.Len(in(.75)), term.OtherHeight, term.Len(0)}, "with 1 1/2 in of bevel",
			[]any{term.FloorHeight, term.Len(in(.5)), term.OtherHeight, term.Len(0)}},
		{term.AskUnderlay, []any{term.Room, term.Lens{in(120), in(100)}, term.RollWidth, term.Len(in(48)), term.RollLength, term.Len(in(300)), term.PlankThickness, term.Len(mm(12)), term.Subfloor, term.Word("heated screed")},
			"0.086 of the 0.15 m²K/W allowed (heating texts on EN 1264): 0.064 left",
			[]any{term.Room, term.Lens{in(120), in(100)}, term.RollWidth, term.Len(in(48)), term.RollLength, term.Len(in(300)), term.PlankThickness, term.Len(mm(12)), term.Subfloor, term.Word("unheated screed")}},
		{term.AskMiter, []any{term.Corner, term.Degrees(92), term.TrimThickness, term.Len(in(.625))}, "open by 0.554 mm (about 1/64 in)", []any{term.Corner, term.Degrees(90), term.TrimThickness, term.Len(in(.625))}},
	} {
		require.Contains(t, strings.Join(ask(t, c.kind, c.pairs...).Working, "\n"), c.want)
		require.NotContains(t, strings.Join(ask(t, c.kind, c.not...).Working, "\n"), c.want)
	}
}
