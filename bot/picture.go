package bot

import (
	"fmt"

	"lastrow/bot/draw"
	"lastrow/calc"
	"lastrow/calc/term"
)

// pictured are the kinds that people would rather look at than read.
var pictured = map[term.Kind]bool{term.AskPlan: true, term.AskStart: true}

// illustrate attaches the plan of a floor laid, where the kind is one to look at, or a long cut list.
func (t *turn) illustrate(r Reply, result calc.Result) (Reply, error) {
	if result.Kind == term.AskCutList {
		return attachCuts(r, result)
	}
	if result.Layout == nil || !pictured[result.Kind] {
		return r, nil
	}
	png, err := draw.Plan(result.Layout, t.title(result)).PNG()
	if err != nil {
		return r, err
	}
	r.Files = append(r.Files, File{
		Name: "plan.png", Type: "image/png", Data: png,
		Alt: fmt.Sprintf("plan of the floor: %d rows, %d planks, laid from the %s wall", len(result.Layout.Rows), result.Layout.Planks, result.Layout.StartWall),
	})
	return r, nil
}

func (t *turn) title(result calc.Result) draw.Title {
	title := draw.Title{
		Job: t.place.Name, Tape: t.job.Tape, Plank: result.Layout.Request.Plank, Planks: int64(result.Layout.Planks), Changed: t.place.Done,
	}
	if rect := result.Layout.Request.Floor.Plan.Rect; rect != nil {
		title.Room = title.Tape.Room(rect.EastWest) + " x " + title.Tape.Room(rect.NorthSouth)
	}
	for _, v := range result.Values {
		if n, ok := v.Value.(term.Count); ok && v.Name == term.Boxes {
			title.Boxes = int64(n)
		}
	}
	return title
}
