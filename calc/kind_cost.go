package calc

import (
	"fmt"
	"slices"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/material"
	"lastrow/calc/term"
)

func init() {
	handlers[term.AskCost] = cost
	handlers[term.AskShopping] = shopping
}

// bought is one thing to buy, with the name that its count goes by and the arithmetic of it.
type bought struct {
	material.Item
	name    term.Name
	working []string
}

// cost prices the boxes, and whatever else of the job has a price.
func cost(in *inputs) (Result, error) {
	price := in.price(term.Price)
	if price == nil {
		in.lack(term.Price)
	}
	boxes, err := in.planksToBuy(price)
	if err != nil {
		return Result{}, err
	}
	return in.priced(append([]bought{boxes}, in.pricedRest()...))
}

// shopping lists everything to buy for the job.
func shopping(in *inputs) (Result, error) {
	boxes, err := in.planksToBuy(in.price(term.Price))
	if err != nil {
		return Result{}, err
	}
	return in.priced(append([]bought{boxes}, in.restOfJob()...))
}

// priced adds a list up. Its lines come first, the arithmetic of each count after.
func (in *inputs) priced(list []bought) (Result, error) {
	var items []material.Item
	var r Result
	for _, b := range list {
		items = append(items, b.Item)
		r.Values = append(r.Values, term.Named{Name: b.name, Value: term.Count(b.N)})
		r.Working = append(r.Working, b.Line())
	}
	sum, unpriced, err := material.Total(items)
	if err != nil {
		in.refuse("%v", err)
	}
	if unpriced < len(items) {
		r.Values = append(r.Values, term.Named{Name: term.Amount, Value: sum})
		r.Working = append(r.Working, totalLine(sum, len(items)-unpriced, unpriced))
	}
	for _, b := range list {
		r.Working = append(r.Working, b.working...)
	}
	return r, in.err()
}

func totalLine(sum term.Money, priced, unpriced int) string {
	line := "together " + material.MoneyText(sum)
	if priced == 1 && unpriced == 0 {
		line = "in all " + material.MoneyText(sum)
	}
	if unpriced > 0 {
		line += fmt.Sprintf("; %d without a price", unpriced)
	}
	return line
}

// price gives a price that was said or stands in the job, or nil.
func (in *inputs) price(n term.Name) *term.Money {
	m, ok := get[term.Money](in, n)
	if !ok {
		return nil
	}
	if m.Minor < 0 || m.Minor >= 1_000_000_000 {
		in.refuse("%s of %s is out of bounds: 0 to 9 999 999.99", n, material.MoneyText(m))
	}
	return &m
}

// planksToBuy gives the boxes: as said, or as the boxes question answers.
func (in *inputs) planksToBuy(price *term.Money) (bought, error) {
	b := bought{Item: material.Item{What: "planks", Of: "box", Each: price}, name: term.Boxes}
	if n, ok := get[term.Count](in, term.Boxes); ok {
		b.N = int64(n)
		return b, in.err()
	}
	r, err := in.boxesAnswer()
	if err != nil {
		return b, err
	}
	for _, v := range r.Values {
		if n, ok := v.Value.(term.Count); ok && v.Name == term.Boxes {
			b.N, b.working = int64(n), r.Working
		}
	}
	return b, in.err()
}

// boxesAnswer asks the boxes question with the same inputs, or goes by the rule of thumb.
func (in *inputs) boxesAnswer() (Result, error) {
	if boxes, ok := handlers[term.AskBoxes]; ok {
		return boxes(in)
	}
	floor := in.needArea()
	box, _ := in.boxArea(true)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	waste := percentOf(limit.WasteByArea)
	n := material.BoxesByArea(floor, waste, box)
	return Result{
		Values:  []term.Named{{Name: term.Boxes, Value: term.Count(n)}},
		Working: []string{fmt.Sprintf("%s + %s / %s a box = %d boxes, rounded up", in.tape.Area(floor), percent(waste), in.tape.Area(box), n)},
	}, nil
}

// restOfJob is what else can be counted: underlay where the roll is known, trim, profiles and spacers where the walls are.
func (in *inputs) restOfJob() []bought {
	list := slices.Concat(in.underlayRolls(), in.trimSticks(), in.profiles())
	if in.wallsKnown() {
		list = append(list, in.spacers()...)
	}
	return list
}

// pricedRest is what else has a price.
func (in *inputs) pricedRest() (list []bought) {
	if in.has(term.RollPrice) {
		list = append(list, in.underlayRolls()...)
	}
	if in.has(term.StickPrice) {
		list = append(list, in.trimSticks()...)
	}
	return list
}

func (in *inputs) wallsKnown() bool {
	_, _, sides := in.sides()
	return sides || in.has(term.TrimLength, term.Perimeter, term.Walls)
}

func (in *inputs) underlayRolls() []bought {
	_, _, sides := in.sides()
	if !in.has(term.RollWidth) || !in.has(term.RollLength) || !sides && !in.has(term.FloorArea) {
		return nil
	}
	return in.counted(underlay, term.Rolls, material.Item{What: "underlay", Of: "roll", Each: in.price(term.RollPrice)})
}

// profiles are the strips in the doorways, cut from lengths as sold, each of which may be a little short of its name.
func (in *inputs) profiles() []bought {
	var wide []length.Length
	for _, d := range in.job.Plan.Doorways {
		wide = append(wide, d.Wide)
	}
	if len(wide) == 0 || in.saysRoom() {
		return nil
	}
	sold := in.lengthOr(term.ProfileLength, limit.ProfileLength.In(in.tape.System))
	plan, joints, err := material.Sticks(wide, sold-limit.ShortStick.In(in.tape.System), limit.Kerf.In(in.tape.System))
	if err != nil {
		in.refuse("doorway profiles: %v", err)
		return nil
	}
	line := fmt.Sprintf("profiles for %s from %s of %s", some(int64(len(wide)), "doorway"), some(int64(len(plan.Sticks)), "length"), in.text(sold))
	if joints > 0 {
		line += ", joined where a doorway is wider"
	}
	return []bought{{Item: material.Item{What: "doorway profile", N: int64(len(plan.Sticks)), Of: "length"}, name: term.Profiles, working: []string{line}}}
}

// counted asks one of the other questions with the same inputs. What it would refuse is noted among the inputs.
func (in *inputs) counted(ask handler, n term.Name, item material.Item) []bought {
	r, err := ask(in)
	if err != nil {
		return nil
	}
	for _, v := range r.Values {
		if c, ok := v.Value.(term.Count); ok && v.Name == n {
			item.N = int64(c)
		}
	}
	return []bought{{Item: item, name: n, working: r.Working}}
}

// trimSticks is the trim with the last line of its arithmetic: its pieces are the trim question's.
func (in *inputs) trimSticks() []bought {
	if !in.wallsKnown() {
		return nil
	}
	list := in.counted(trim, term.Sticks, material.Item{What: "trim", Of: "stick", Each: in.price(term.StickPrice)})
	for i, b := range list {
		list[i].working = b.working[max(0, len(b.working)-1):]
	}
	return list
}

// spacers hold the gap while the floor is laid: a pair each so far round the walls.
func (in *inputs) spacers() []bought {
	around, _, ok := in.perimeter()
	if !ok {
		return nil
	}
	apart := limit.SpacerSpacing.In(in.tape.System)
	n := (int64(around) + int64(apart) - 1) / int64(apart)
	return []bought{{
		Item:    material.Item{What: "spacers", N: n, Of: "pair"},
		name:    term.Spacers,
		working: []string{fmt.Sprintf("%s round / %s = %s, to take out again", in.tape.Room(around), in.text(apart), some(n, "pair"))},
	}}
}
