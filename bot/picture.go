package bot

import (
	"fmt"

	"lastrow/bot/draw"
	"lastrow/bot/draw/sheet"
	"lastrow/bot/list"
	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/material"
	"lastrow/calc/plank"
	"lastrow/calc/term"
)

// pictured draw what people would rather look at than read, by the kind that was asked.
var pictured = map[term.Kind]func(*turn, calc.Result) ([]File, error){
	term.AskPlan: (*turn).plan, term.AskStart: (*turn).plan, term.AskRow: (*turn).row, term.AskPiece: (*turn).piece,
	term.AskLeftover: (*turn).plan, term.AskCutList: (*turn).cutList, term.AskUnderlay: (*turn).underlay, term.AskTrim: (*turn).trim,
}

// ofFloor are the kinds that a floor that is not laid out will do for.
var ofFloor = map[term.Kind]bool{term.AskUnderlay: true, term.AskTrim: true}

// illustrate attaches the drawing or the list that goes with an answer from the job's floor.
func (t *turn) illustrate(r Reply, result calc.Result) (Reply, error) {
	picture := pictured[result.Kind]
	if picture == nil || result.Floor == nil || result.Layout == nil && !ofFloor[result.Kind] {
		return r, nil
	}
	var err error
	r.Files, err = picture(t, result)
	return r, err
}

// mostSheets is how many sheets of rows go with the overview of a large floor.
const mostSheets = 8

func (t *turn) plan(r calc.Result) ([]File, error) {
	title := t.title(r)
	alt := fmt.Sprintf("plan of the floor: %d rows, %d planks, laid from the %s", len(r.Layout.Rows), r.Layout.Planks, r.Layout.Start())
	files, err := picture("plan.png", alt, draw.Plan(r.Layout, title))
	if err != nil || !draw.Crowded(r.Layout) {
		return files, err
	}
	for i, s := range draw.RowSheets(r.Layout, title) {
		if i == mostSheets {
			break
		}
		more, err := picture(fmt.Sprintf("rows-%d.png", i+1), fmt.Sprintf("the rows and their pieces, sheet %d", i+1), s)
		if err != nil {
			return files, err
		}
		files = append(files, more...)
	}
	return files, nil
}

func (t *turn) row(r calc.Result) ([]File, error) {
	n := count(r, term.Row)
	s, ok := draw.Row(r.Layout, n, t.title(r))
	if !ok {
		return nil, nil
	}
	return picture("row.png", fmt.Sprintf("row %d with its pieces and their lengths", n), s)
}

func (t *turn) piece(r calc.Result) ([]File, error) {
	row, n := count(r, term.Row), count(r, term.Piece)
	s, ok := draw.Piece(r.Layout, row, n, t.title(r))
	if !ok {
		return nil, nil
	}
	return picture("piece.png", fmt.Sprintf("row %d piece %d, face up and face down, with its cuts", row, n), s)
}

func (t *turn) underlay(r calc.Result) ([]File, error) {
	roll := plank.Roll{Width: given(r, term.RollWidth), Length: given(r, term.RollLength), Overlap: given(r, term.Overlap)}
	if material.CheckRoll(roll) != nil {
		return nil, nil
	}
	return picture("underlay.png", "plan of the underlay: strips, seams and tape", draw.Underlay(r.Floor, roll, pieced(r), t.title(r)))
}

// pieced says whether strips may be made up of more than one length.
func pieced(r calc.Result) bool {
	for _, g := range r.Given {
		if g.Name == term.Piecing && g.Value == term.Value(term.Word("pieced")) {
			return true
		}
	}
	return false
}

func (t *turn) trim(r calc.Result) ([]File, error) {
	stick := draw.Stick{Length: given(r, term.StickLength), Thickness: given(r, term.TrimThickness), Kerf: given(r, term.Kerf)}
	return picture("trim.png", "plan of the trim: numbered pieces round the room", draw.Trim(r.Floor, stick, t.title(r)))
}

// given is a length among what an answer rests on, or 0.
func given(r calc.Result, n term.Name) length.Length {
	for _, g := range r.Given {
		if l, ok := g.Value.(term.Len); ok && g.Name == n {
			return length.Length(l)
		}
	}
	return 0
}

// cutList gives the whole list, which a message does not hold, as text and as comma-separated values.
func (t *turn) cutList(r calc.Result) ([]File, error) {
	lines := list.Lines(r.Layout, t.job.Tape)
	table, err := list.CSV(lines)
	return []File{
		{Name: "cut-list.txt", Type: "text/plain; charset=utf-8", Alt: "the whole cut list", Data: []byte(list.Text(lines))},
		{Name: "cut-list.csv", Type: "text/csv; charset=utf-8", Alt: "the whole cut list as a table", Data: []byte(table)},
	}, err
}

func picture(name, alt string, s *sheet.Sheet) ([]File, error) {
	png, err := s.PNG()
	return []File{{Name: name, Type: "image/png", Alt: alt, Data: png}}, err
}

// count is a whole number among the results, or 0.
func count(r calc.Result, n term.Name) int {
	for _, v := range r.Values {
		if c, ok := v.Value.(term.Count); ok && v.Name == n {
			return int(c)
		}
	}
	return 0
}

func (t *turn) title(r calc.Result) draw.Title {
	title := draw.Title{Job: t.place.Name, Tape: t.job.Tape, Changed: t.place.Done, Doors: t.doors(r)}
	if r.Layout != nil {
		title.Plank, title.Planks = r.Layout.Request.Plank, int64(r.Layout.Planks)
		title.Boxes = int64(count(t.known(term.AskBoxes), term.Boxes))
	}
	if rect := r.Floor.Plan.Rect; rect != nil {
		title.Room = title.Tape.Room(rect.EastWest) + " x " + title.Tape.Room(rect.NorthSouth)
	}
	return title
}

// known answers another kind from the job alone; an empty result where the job does not say enough.
func (t *turn) known(k term.Kind) calc.Result {
	r, err := calc.Answer(t.job, calc.Question{Kind: k})
	if err != nil {
		return calc.Result{}
	}
	return r
}

// doors says what lies beyond each doorway and what bridges to it, where the job knows how high that floor is.
func (t *turn) doors(r calc.Result) []draw.Door {
	bridged := t.known(term.AskTransition)
	var d draw.Door
	for _, v := range bridged.Values {
		if w, ok := v.Value.(term.Word); ok && v.Name == term.Profile {
			d.Profile = string(w)
		}
	}
	for _, g := range bridged.Given {
		if w, ok := g.Value.(term.Word); ok && g.Name == term.OtherFloor {
			d.Beyond = string(w)
		}
	}
	out := make([]draw.Door, len(r.Floor.Doors()))
	for i := range out {
		out[i] = d
	}
	return out
}
