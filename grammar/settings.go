package grammar

import (
	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
	"reflect"
	"slices"
)

// settings are the places that the sizes of a statement can go to.
var settings = []slot{
	{name: term.Room, dim: dPair, bare: bareSide, cues: "room hall wet", lo: foot},
	{name: "plank", dim: dPlank, bare: bareFace, cues: "plank box"},
	{name: term.PlankWidth, bare: bareFace, cues: "plank wide", lo: 2 * inch, hi: 18 * inch, must: true},
	{name: term.PlankLength, bare: bareFace, cues: "plank long", lo: 18 * inch, hi: 110 * inch, must: true},
	{name: term.PlankThickness, bare: bareThick, cues: "plank thick", lo: 4 * length.Millimetre, hi: 20 * length.Millimetre, spoken: true},
	sPerBox,
	{name: term.BoxCoverage, dim: dArea, cues: "box per cover each", must: true},
	{name: term.Price, dim: dMoney, cues: "price box per each cost"},
	{name: term.UnderlayThickness, bare: bareThick, cues: "underlay thick", lo: length.Millimetre, hi: 7 * length.Millimetre, must: true},
	{name: "roll", dim: dPair, bare: bareRoll, cues: "roll underlay comes", must: true},
	{name: term.RollWidth, bare: bareRoll, cues: "roll wide", lo: foot, hi: 8 * foot, must: true},
	{name: term.RollLength, bare: bareRoll, cues: "roll long", lo: 5 * foot, hi: 300 * foot},
	sOverlap,
	{name: term.Gap, bare: bareSmall, cues: "gap expansion leave around", hi: 2 * inch, must: true},
	{name: term.FirstRow, bare: bareInch, cues: "firstrow", lo: inch, hi: 18 * inch, must: true},
	{name: term.LeastEnd, bare: bareInch, cues: "endpiece piece row end", lo: 2 * inch, hi: 4 * foot, must: true},
	{name: term.LeastStagger, bare: bareInch, cues: "stagger joint", lo: 2 * inch, hi: 4 * foot, must: true},
	{name: term.LeastRow, bare: bareInch, cues: "row least sliver rip", lo: inch / 2, hi: foot, must: true},
	{name: term.Kerf, bare: bareSmall, cues: "kerf blade", lo: inch / 32, hi: inch / 2, must: true},
	{name: term.Spare, dim: dPercent, cues: "spare", must: true},
	{name: "spare-planks", dim: dCount, cues: "spare", must: true, count: "plank spare"},
	{name: term.Laid, dim: dCount, cues: "laid row did", must: true, count: "row more laid did"},
	{name: term.Opened, dim: dCount, cues: "opened box", must: true, count: "box more opened"},
	{name: term.Damaged, dim: dCount, cues: "damaged", must: true, count: "plank damaged"},
	{name: term.TrimThickness, bare: bareThick, cues: "trim thick", not: "high", lo: 3 * length.Millimetre, hi: 5 * inch / 4, must: true},
	{name: term.StickLength, bare: bareRoom, cues: "stick trim long", lo: 4 * foot, hi: 24 * foot, must: true},
	{name: term.OtherHeight, bare: bareThick, cues: "tile carpet vinyl high", lo: length.Millimetre, hi: 4 * inch, must: true},
	{name: term.Ceiling, bare: bareRoom, cues: "ceiling headroom", lo: 5 * foot, hi: 20 * foot, must: true},
	{name: term.Sill, bare: bareInch, cues: "sill", lo: 4 * inch, hi: 6 * foot, must: true},
	{name: term.Riser, bare: bareInch, cues: "riser", lo: 4 * inch, hi: 12 * inch, must: true},
	{name: term.DoorGap, bare: bareThick, cues: "door under clearance concrete", lo: 2 * length.Millimetre, hi: 3 * inch, must: true},
	{name: term.Dip, bare: bareSmall, cues: "dip", lo: length.Millimetre / 2, hi: 4 * inch, must: true},
	{name: term.Straightedge, bare: bareRoom, cues: "straightedge", lo: 18 * inch, hi: 20 * foot, must: true},
}

// placed is the values of a message's statements by name, and the ones said to be more or less.
type placed struct {
	by    map[term.Name]value
	vague []term.Name
	loose []int // quantities that found no place
}

// statements reads a message that tells. All of it is understood, or nothing.
func (r *reader) statements() (Reading, bool) {
	if r.asks() && (r.whWord() || !r.requests()) {
		return Reading{}, false
	}
	if r.ctx.Last != nil && r.supposes() {
		return Reading{}, false
	}
	qs := r.meant()
	out, p := r.told(&qs)
	if len(p.vague) > 0 {
		kind := kindOf(p.vague[0])
		return Reading{Problem: &Problem{Outcome: "ask-back", Kind: kind, Read: r.gist(), Example: example(kind), Missing: p.vague, Setting: kind}}, true
	}
	if len(out) == 0 {
		return Reading{}, false
	}
	if r.sumMore(&p) {
		out = r.more(p.build(), p)
	}
	kind := out[0].Kind()
	if asked := r.asksOfRoom(out); asked != "" {
		return r.ask(asked), true
	}
	if n := r.twice(p); n != "" {
		return r.refused(kind, "two different things are said of the "+string(n)), true
	}
	if asked, top, _ := r.kind(); len(p.loose) > 0 && top >= 4 && !commands[asked] {
		return r.ask(asked), true
	}
	if len(p.loose) > 0 {
		return problem("unclear", kind, r.gist(), r.src[r.items[p.loose[0]].at:r.items[p.loose[0]].end], example(kind)), true
	}
	if r.intends() && progressed(out) {
		return Reading{}, false
	}
	if out, ok := r.news(out); ok {
		return out, true
	}
	for _, s := range out {
		if w := r.impossible(s.Given()); w != "" {
			return r.refused(s.Kind(), w), true
		}
	}
	if w := contradiction(out); w != "" {
		return r.refused(kind, w), true
	}
	return Reading{Statements: out}, true
}

// asksOfRoom gives the kind of goods that a message which tells of a room and of them asks for: "sticks of quarter round, 11x14 room".
func (r *reader) asksOfRoom(out []Statement) term.Kind {
	kind, top, _ := r.kind()
	if _, isRoom := out[0].(Room); len(out) > 1 && isRoom && top >= 4 && kind == out[1].Kind() && !r.requests() {
		return kind
	}
	return ""
}

// intends says whether the message speaks of what is still to be done, or of what was not: "we should get 6 rows down".
func (r *reader) intends() bool {
	if r.hasWord("should", "gonna", "tomorrow", "tmrw", "later", "hope", "hoping", "hopefully", "might", "plan", "planning", "dont", "havent", "hasnt", "didnt", "wont", "never", "until", "unless", "if", "yet") {
		return true
	}
	for i := 0; i+1 < len(r.items); i++ {
		if r.items[i+1].word == "to" && isOne(r.items[i].word, []string{"going", "want", "need", "have", "about", "aim", "trying", "supposed"}) {
			return true
		}
	}
	return false
}

// progressed says whether statements tell of work done.
func progressed(out []Statement) bool {
	for _, s := range out {
		switch s.(type) {
		case Laid, Opened:
			return true
		}
	}
	return false
}

// contradiction finds two statements of one kind in a message.
func contradiction(out []Statement) string {
	for i, a := range out {
		for _, b := range out[:i] {
			if a.Kind() == b.Kind() && single(a) && single(b) && a.String() != b.String() {
				return "two different things are said of the " + string(a.Kind())
			}
		}
	}
	return ""
}

// single says whether a job holds one such statement at a time.
func single(s Statement) bool {
	switch v := s.(type) {
	case Closet, Opening, Doorway, Fixture, Note, Damaged, Height, Measured, Hidden:
		return false
	case Gap:
		return v.Wall == ""
	}
	return true
}

// told gives the statements that the message makes.
func (r *reader) told(qs *[]int) ([]Statement, placed) {
	var out []Statement
	r.dropOneBox(qs)
	if j := r.switched(); j != "" {
		out = append(out, JobName{j})
	}
	out = append(out, r.geometry(qs)...)
	out = append(out, r.measured(qs)...)
	if _, ok := r.subfloorSaid(); ok {
		*qs = nil // a board's thickness changes nothing here
	}
	p := r.settle(*qs)
	out = append(out, r.atWall(r.more(p.build(), p))...)
	out = append(out, r.plainWords(p)...)
	return out, p
}

// atWall gives a gap the one wall that it is said of: "gap 1/2 at the north wall".
func (r *reader) atWall(out []Statement) []Statement {
	for i, s := range out {
		if g, ok := s.(Gap); ok && g.Wall == "" && !r.has("around", "firstrow") {
			g.Wall = r.wallOfGap()
			out[i] = g
		}
	}
	return out
}

// wallOfGap is the one wall named beside the size of a gap, with no mark between and no other wall in the message.
func (r *reader) wallOfGap() (wall room.Side) {
	for i := range r.items {
		if side := r.sideAt(i); side != "" {
			if wall != "" && side != wall {
				return ""
			}
			wall = side
		}
	}
	for _, q := range r.quantities() {
		if r.nearness(q, "gap expansion leave") > 2.5 && (r.after(q, meaningOf(wall)) || r.before(q, meaningOf(wall))) && !r.has("start") {
			return wall
		}
	}
	return ""
}

// more marks the counts that add to what was said before: "laid 2 more", "another 3 boxes opened".
func (r *reader) more(out []Statement, p placed) []Statement {
	for i, s := range out {
		switch v := s.(type) {
		case Laid:
			v.More = r.nearness(p.by[term.Laid].item, "more another") >= 5
			out[i] = v
		case Opened:
			v.More = r.nearness(p.by[term.Opened].item, "more another") >= 5
			out[i] = v
		}
	}
	return out
}

// dropOneBox takes the 1 out of "one pack is 23.75".
func (r *reader) dropOneBox(qs *[]int) {
	if r.onePriced() {
		*qs = (*qs)[1:]
	}
}

// onePriced reads "one pack is 23.75" as a price.
func (r *reader) onePriced() bool {
	qs := r.quantities()
	if len(qs) != 2 || !onePrice[0].in(r.seq) && !onePrice[1].in(r.seq) {
		return false
	}
	t := r.items[qs[0]].sizes[0]
	return t.class == tNumber && t.num.Num == t.num.Den
}

var onePrice = compile([]cue{{1, "^# box|roll|stick #m"}, {1, "^# box|roll|stick cost #m"}})

func (r *reader) settle(qs []int) placed {
	p := placed{by: map[term.Name]value{}}
	defer func() { r.telling = false }()
	r.telling = true
	r.placedFor(r.toldKind())
	best, _ := r.place(qs, r.gated(), r.lean)
	for i, q := range qs {
		if len(best.slot) == 0 || best.slot[i] < 0 {
			p.loose = append(p.loose, q)
			continue
		}
		name := r.gated()[best.slot[i]].name
		if r.items[q].vague || r.doubtfulGap(name, best.value[i]) {
			p.vague = append(p.vague, name)
		}
		p.by[name] = best.value[i]
	}
	return p
}

// toldKind is the kind that a statement's quantities are placed for; none where a question was answered just before, of
// which they may be more.
func (r *reader) toldKind() term.Kind {
	if r.ctx.Last != nil {
		return none
	}
	return r.guess().kind
}

// gated are the settings that the words of the message allow.
func (r *reader) gated() []slot {
	out := make([]slot, 0, len(settings))
	for _, s := range settings {
		if r.allows(s.name) {
			s.must = s.must && !(s.name == term.Straightedge && r.dipOver())
			out = append(out, s)
		}
	}
	return out
}

func (r *reader) allows(n term.Name) bool {
	switch n {
	case term.Room:
		return r.has("room", "hall", "wet", "floor") || len(r.unknown) <= 1 && !r.has("plank", "roll", "closet")
	case "plank":
		return !r.has("roll") || r.has("plank")
	case term.Laid:
		return r.onRow() || r.has("laid") && (r.has("row") || !r.has("opened") || laidCount.in(r.seq)) || r.has("row") && (r.hasWord("did", "mark", "at", "up", "makes", "far", "already", "now", "in", "got", "through", "thru") || r.has("more") && !r.has("remaining")) || r.hasWord("did") && r.has("more", "another") && !r.has("box", "plank", "roll", "damaged")
	case term.PlanksPerBox:
		return !r.has("damaged") || len(r.quantities()) > 1
	case term.Opened:
		return r.has("opened") || r.has("open") || r.onBox()
	case term.LeastRow:
		return (r.has("least") || r.hasWord("under", "than", "below", "narrower")) && r.has("row", "lastrow", "firstrow", "wall", "rip") && !r.has("joint", "piece", "endpiece") && !r.startsRow() || r.has("sliver")
	case term.PlankWidth, term.PlankLength:
		return (r.has("plank") || r.sizedAsPlank()) && !r.has("damaged", "spare")
	case "roll", term.RollWidth:
		return r.has("roll", "underlay")
	case term.RollLength:
		return r.has("roll")
	case term.PlankThickness:
		return (r.has("plank") || r.has("box") && r.pairs() > 0 || r.sizedAsPlank()) && !r.has("trim", "damaged")
	case term.UnderlayThickness:
		return r.has("underlay")
	case term.TrimThickness, term.StickLength:
		return r.has("trim", "stick")
	case term.Price:
		return !r.has("spare") && (r.has("box") || !r.has("roll", "stick", "underlay", "trim", "bag", "tube", "nail", "screw"))
	case term.OtherHeight:
		return r.has("tile", "carpet", "vinyl")
	case term.DoorGap:
		return r.has("door") && (r.hasWord("under", "gap") || r.has("clearance"))
	case term.Gap:
		return !r.dipOver() && (!r.has("door", "doorway") || !r.hasWord("under") && r.wallSaid() != "") && (!r.ctx.Group || r.has("gap", "expansion", "leave"))
	case term.LeastStagger:
		return r.has("stagger", "joint")
	case term.LeastEnd:
		return r.has("endpiece") || r.has("end") && r.has("least") || r.startsRow() && r.has("least") || r.has("piece") && r.has("least")
	}
	return true
}

// startsRow says whether the message speaks of the piece that starts a row.
func (r *reader) startsRow() bool { return r.has("start") && r.has("row") }

// onBox reads "on box 5".
func (r *reader) onBox() bool {
	for i := 1; i+1 < len(r.items); i++ {
		if r.items[i].meaning == "box" && r.items[i+1].quantity() && (isOne(r.items[i-1].word, onto) || i > 1 && r.items[i-1].word != "" && isOne(r.items[i-2].word, onto)) {
			return true
		}
	}
	return false
}

var laidCount = &compile([]cue{{1, "laid #"}})[0]

var onto = []string{"on", "onto", "into"}

// kindOf is the kind of statement that sets a name.
func kindOf(n term.Name) term.Kind {
	switch n {
	case "plank", term.PlankWidth, term.PlankLength, term.PlankThickness, term.PlanksPerBox, term.BoxCoverage:
		return term.SetPlank
	case "roll", term.UnderlayThickness, term.RollWidth, term.RollLength, term.Overlap:
		return term.SetUnderlay
	case term.TrimThickness, term.StickLength:
		return term.SetTrim
	case term.OtherHeight, term.FloorHeight, term.Ceiling, term.Sill, term.Riser, term.DoorGap:
		return term.SetHeight
	case term.Dip, term.Straightedge:
		return term.SetReading
	}
	return term.Kind(n)
}

// equalValue says whether two values of one place are the same. Areas and lists can't be compared by "==".
func equalValue(a, b term.Value) bool {
	switch v := a.(type) {
	case term.Area:
		w, ok := b.(term.Area)
		return ok && v.Cmp(w.Area) == 0
	case term.Lens:
		w, ok := b.(term.Lens)
		return ok && slices.Equal(v, w)
	case term.Expr, term.Number:
		return reflect.DeepEqual(a, b)
	}
	return a == b
}

// twice gives the setting that a quantity without a place is said of a second time: "8 per box, 10 per box".
func (r *reader) twice(p placed) term.Name {
	for _, q := range p.loose {
		for i := range settings {
			s := &settings[i]
			if _, taken := p.by[s.name]; !taken || s.dim < dArea || r.nearness(q, s.cues) < 4.5 {
				continue
			}
			if v, _, ok := r.valueFor(q, s, r.lean); ok && v.term != nil && !equalValue(v.term, p.by[s.name].term) {
				return s.name
			}
		}
	}
	return ""
}

// sizedAsPlank says whether a width, a length and a thickness or a box are spoken of, and nothing else that has them: the
// thing is a plank, though nobody says so.
func (r *reader) sizedAsPlank() bool {
	return r.has("wide") && r.has("long") && r.has("thick", "box") && !r.has("room", "hall", "closet", "roll", "underlay", "trim", "door", "wet", "wall", "stick")
}

// onRow reads "they're on row 14", where nothing else is said of it.
func (r *reader) onRow() bool {
	if len(r.seq) > 3 || len(r.quantities()) != 1 {
		return false
	}
	for i := 1; i+1 < len(r.items); i++ {
		if r.items[i].meaning == "row" && r.items[i+1].quantity() && isOne(r.items[i-1].word, onto) && r.saysWho(i-1) {
			return true
		}
	}
	return false
}

// saysWho says whether someone is spoken of right before item i.
func (r *reader) saysWho(i int) bool {
	for j := max(0, i-3); j < i; j++ {
		if isOne(r.items[j].word, []string{"theyre", "were", "im", "hes", "shes", "we", "they", "guys", "crew", "lads", "am", "are", "now", "boys"}) {
			return true
		}
	}
	return false
}
