package calc

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// basement is a bedroom in a basement, out of square, with a closet, two doorways and a nib of wall at the south wall.
// The walls are read to the tape's mark: whole millimetres or sixteenths.
func basement(tape length.Tape) *Job {
	to := func(sixteenths int64) length.Length { return tape.Round(length.Length(sixteenths) * length.Inch / 16) }
	metric := tape.System == length.Metric
	j := &Job{
		Name: "Alder basement", Tape: tape, Facts: map[term.Name]term.Value{},
		Plank: plank.Plank{Width: in(7.625), Length: in(47.5), Thickness: mm(12), PerBox: 8},
		Plan: room.Plan{
			Quad: &room.Quad{North: to(148 * 16), East: to(110*16 + 8), South: to(145 * 16), West: to(110 * 16), NWSE: to(183*16 + 4)},
			Closets: []room.Closet{{
				Wall: room.North, Wide: to(60 * 16), Deep: to(24 * 16), From: to(36 * 16), FromEnd: room.West, Opening: to(48 * 16),
			}},
			Doorways: []room.Doorway{
				{Wall: room.South, Wide: to(32 * 16), From: to(24 * 16), FromEnd: room.West, Into: to(2 * 16)},
				{Wall: room.East, Wide: to(30 * 16), From: to(40 * 16), FromEnd: room.South, Into: to(2 * 16)},
			},
			Fixtures: []room.Fixture{{What: "nib", Wide: to(5 * 16), Deep: to(18 * 16), FromX: to(90 * 16), FromY: 0, SideX: room.West, SideY: room.South}},
			Metric:   metric,
		},
	}
	if metric {
		j.Plank.Width, j.Plank.Length, j.Plank.PerBox = mm(193), mm(1285), 8
	}
	return j
}

func TestDemo(t *testing.T) {
	for name, tape := range map[string]length.Tape{"inch": {}, "metric": {System: length.Metric}} {
		t.Run(name, func(t *testing.T) {
			j := basement(tape)
			plan, err := Answer(j, Question{Kind: term.AskPlan})
			require.NoError(t, err)
			list, err := Answer(j, Question{Kind: term.AskCutList})
			require.NoError(t, err)
			text := layoutText(plan.Layout, tape) + "\n" + strings.Join(list.Working, "\n") + "\n"
			file := filepath.Join("testdata", "basement-"+name+".golden")
			if *update {
				require.NoError(t, os.MkdirAll("testdata", 0o755))
				require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
			}
			want, err := os.ReadFile(file)
			require.NoError(t, err)
			require.Equal(t, string(want), text)
		})
	}
}

// layoutText is a layout as text: how it begins, then a line a row.
func layoutText(l *layout.Layout, tape length.Tape) string {
	var b strings.Builder
	fmt.Fprintf(&b, "rows %s from the %s wall, laid %s to %s\n%s\n", l.Along, l.StartWall, l.From, l.To, l.Why)
	fmt.Fprintf(&b, "%d planks, never fewer than %d\n\n", l.Planks, l.Bound)
	for _, row := range l.Rows {
		fmt.Fprintf(&b, "row %d, %s wide:", row.N, tape.Text(row.Width))
		for i, run := range row.Runs {
			if i > 0 {
				b.WriteString(" |")
			}
			for _, p := range run.Pieces {
				fmt.Fprintf(&b, " %s", tape.Text(p.Right-p.Left))
			}
		}
		b.WriteString("\n")
	}
	for _, broken := range l.Broken {
		fmt.Fprintf(&b, "%s, %s: %s\n", broken.Rule, broken.Where, broken.Why)
	}
	return b.String()
}
