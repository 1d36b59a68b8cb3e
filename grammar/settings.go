package grammar

import (
	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
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
	qs := r.quantities()
	out, p := r.told(&qs)
	if len(p.vague) > 0 {
		kind := kindOf(p.vague[0])
		return Reading{Problem: &Problem{Outcome: "ask-back", Kind: kind, Read: r.gist(), Example: example(kind), Missing: p.vague, Setting: kind}}, true
	}
	if len(out) == 0 {
		return Reading{}, false
	}
	kind := out[0].Kind()
	if asked, top, _ := r.kind(); len(p.loose) > 0 && top >= 4 && !commands[asked] {
		return r.ask(asked), true
	}
	if len(p.loose) > 0 {
		return problem("unclear", kind, r.gist(), r.src[r.items[p.loose[0]].at:r.items[p.loose[0]].end], example(kind)), true
	}
	if r.intends() && progressed(out) {
		return Reading{}, false
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
	case Closet, Doorway, Fixture, Note, Damaged, Height, Measured, Hidden:
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
		if side := sides[r.items[i].meaning]; side != "" {
			if wall != "" && side != wall {
				return ""
			}
			wall = side
		}
	}
	for _, q := range r.quantities() {
		if r.nearness(q, "gap expansion leave") > 2.5 && (r.after(q, string(wall)) || r.before(q, string(wall))) && !r.has("start") {
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
	if len(qs) != 2 || !onePrice.in(r.seq) {
		return false
	}
	t := r.items[qs[0]].sizes[0]
	return t.class == tNumber && t.num.Num == t.num.Den
}

var onePrice = &compile([]cue{{1, "^# box|roll|stick #m"}})[0]

func (r *reader) settle(qs []int) placed {
	p := placed{by: map[term.Name]value{}}
	defer func() { r.telling = false }()
	r.telling = true
	best, _ := r.place(qs, r.gated(), r.lean)
	for i, q := range qs {
		if len(best.slot) == 0 || best.slot[i] < 0 {
			p.loose = append(p.loose, q)
			continue
		}
		name := r.gated()[best.slot[i]].name
		if r.items[q].vague {
			p.vague = append(p.vague, name)
		}
		p.by[name] = best.value[i]
	}
	return p
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
		return r.has("laid") && (r.has("row") || !r.has("opened") || laidCount.in(r.seq)) || r.has("row") && (r.hasWord("did", "mark", "at", "up", "makes", "far", "already", "now", "in", "got", "through", "thru") || r.has("more") && !r.has("remaining")) || r.hasWord("did") && r.has("more", "another") && !r.has("box", "plank", "roll", "damaged")
	case term.Opened:
		return r.has("opened") || r.has("open") || r.onBox()
	case term.LeastRow:
		return (r.has("least") || r.hasWord("under", "than", "below", "narrower")) && r.has("row", "lastrow", "firstrow", "wall", "rip") && !r.has("joint", "piece", "endpiece") && !r.startsRow() || r.has("sliver")
	case term.PlankWidth, term.PlankLength:
		return r.has("plank") && !r.has("damaged", "spare")
	case "roll", term.RollWidth:
		return r.has("roll", "underlay")
	case term.RollLength:
		return r.has("roll")
	case term.PlankThickness:
		return (r.has("plank") || r.has("box") && r.pairs() > 0) && !r.has("trim", "damaged")
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

// build makes the statements of the values placed.
func (p placed) build() []Statement {
	var out []Statement
	for _, b := range builders {
		if s := b(p); s != nil {
			out = append(out, s)
		}
	}
	return out
}

func (p placed) size(n term.Name) *Size {
	if v, ok := p.by[n]; ok && len(v.sizes) > 0 {
		s := v.sizes[0]
		return &s
	}
	return nil
}

func (p placed) whole(n term.Name) *Whole {
	if v, ok := p.by[n]; ok {
		w := Whole(v.term.(term.Count))
		return &w
	}
	return nil
}

var builders = []func(placed) Statement{
	buildRoom, buildPlank, buildUnderlay, buildGap, buildLimits(term.FirstRow), buildLimits(term.LeastEnd), buildLimits(term.LeastStagger), buildLimits(term.LeastRow), buildLimits(term.Kerf),
	buildTrim, buildHeight(term.OtherHeight), buildHeight(term.Ceiling), buildHeight(term.Sill), buildHeight(term.Riser), buildHeight(term.DoorGap), buildDip, buildPrice, buildSpare, buildOpened, buildLaid, buildDamaged,
}

func buildRoom(p placed) Statement {
	v, ok := p.by[term.Room]
	if !ok {
		return nil
	}
	return Room{EastWest: v.sizes[0], NorthSouth: v.sizes[1]}
}

func buildPlank(p placed) Statement {
	s := Plank{Width: p.size(term.PlankWidth), Length: p.size(term.PlankLength), Thickness: p.size(term.PlankThickness), PerBox: p.whole(term.PlanksPerBox)}
	if v, ok := p.by["plank"]; ok {
		s.Width, s.Length = &v.sizes[0], &v.sizes[1]
		if len(v.sizes) == 3 {
			s.Thickness = &v.sizes[2]
		}
	}
	if v, ok := p.by[term.BoxCoverage]; ok {
		s.BoxArea = &v.flat
	}
	if s == (Plank{}) {
		return nil
	}
	return s
}

func buildUnderlay(p placed) Statement {
	s := Underlay{Thickness: p.size(term.UnderlayThickness), RollWidth: p.size(term.RollWidth), RollLong: p.size(term.RollLength), Overlap: p.size(term.Overlap)}
	if v, ok := p.by["roll"]; ok {
		s.RollWidth, s.RollLong = &v.sizes[0], &v.sizes[1]
		if s.RollWidth.Len > s.RollLong.Len {
			s.RollWidth, s.RollLong = s.RollLong, s.RollWidth
		}
	}
	if s == (Underlay{}) || s.RollWidth == nil && s.RollLong != nil {
		return nil
	}
	return s
}

func buildGap(p placed) Statement {
	if s := p.size(term.Gap); s != nil {
		return Gap{Size: *s}
	}
	return nil
}

func buildLimits(n term.Name) func(placed) Statement {
	return func(p placed) Statement {
		if s := p.size(n); s != nil {
			return Limit{n, *s}
		}
		return nil
	}
}

func buildTrim(p placed) Statement {
	s := Trim{p.size(term.TrimThickness), p.size(term.StickLength)}
	if s == (Trim{}) {
		return nil
	}
	return s
}

func buildHeight(n term.Name) func(placed) Statement {
	return func(p placed) Statement {
		if s := p.size(n); s != nil {
			return Height{n, *s}
		}
		return nil
	}
}

func buildDip(p placed) Statement {
	if s := p.size(term.Dip); s != nil {
		return Measured{Dip: s, Straightedge: p.size(term.Straightedge)}
	}
	return nil
}

func buildPrice(p placed) Statement {
	v, ok := p.by[term.Price]
	if !ok {
		return nil
	}
	m := v.term.(term.Money)
	return Price{Cents(m.Minor), lower(m.Currency)}
}

func buildSpare(p placed) Statement {
	if v, ok := p.by[term.Spare]; ok {
		t := Thousandths(v.term.(term.Percent))
		return Spare{Percent: &t}
	}
	if w := p.whole("spare-planks"); w != nil {
		return Spare{Planks: w}
	}
	return nil
}

func buildLaid(p placed) Statement {
	if w := p.whole(term.Laid); w != nil {
		return Laid{Rows: *w}
	}
	return nil
}

func buildOpened(p placed) Statement {
	if w := p.whole(term.Opened); w != nil {
		return Opened{Boxes: *w}
	}
	return nil
}

func buildDamaged(p placed) Statement {
	if w := p.whole(term.Damaged); w != nil {
		return Damaged{Planks: *w}
	}
	return nil
}

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

// plainWords gives the statements that hold no size: walls, ways and materials; and marks what is "more".
func (r *reader) plainWords(p placed) []Statement {
	var out []Statement
	wall := r.wallSaid()
	switch {
	case r.has("eastwest"):
		out = append(out, Direction{"east-west"})
	case r.has("northsouth"):
		out = append(out, Direction{"north-south"})
	case r.has("otherway"):
		if way := r.turned(); way != "" {
			out = append(out, Direction{way})
		}
	case r.has("longways") && r.longWay() != "" && len(r.quantities()) == 0:
		out = append(out, Direction{r.longWay()})
	case r.has("diagonally") || r.has("diagonal") && r.has("row", "lay", "run", "direction"):
		out = append(out, Direction{"diagonal"})
	}
	for _, w := range r.startWalls() {
		out = append(out, Start{w})
	}
	if r.has("tight") && wall != "" {
		out = append(out, Gap{Size{0, r.lean.system}, wall})
	}
	if r.has("hidden") && wall != "" {
		out = append(out, Hidden{wall})
	}
	if s, ok := r.subfloorSaid(); ok {
		out = append(out, s)
	}
	if r.has("another") && r.has("opened") && p.whole(term.Opened) == nil {
		out = append(out, Opened{1, true})
	}
	if r.has("damaged") && (r.has("another") || r.has("plank") && r.hasWord("a")) && p.whole(term.Damaged) == nil {
		out = append(out, Damaged{Planks: 1})
	}
	if r.has("another") && r.has("row") && r.has("laid") && p.whole(term.Laid) == nil {
		out = append(out, Laid{1, true})
	}
	return out
}

// turned gives the other way than the one the rows of the job run: the one said, or along the longer side of its room.
func (r *reader) turned() string {
	_, last := r.ctx.LastSet.(Direction)
	if !last && !r.has("run", "lay", "row", "plank", "direction", "switch", "make") && !r.hasWord("turn", "go") {
		return ""
	}
	way := r.longWay()
	for _, s := range r.ctx.Statements {
		if d, ok := s.(Direction); ok {
			way = d.Way
		}
	}
	return map[string]string{"east-west": "north-south", "north-south": "east-west"}[way]
}

// longWay is the way of the longer side of the job's room.
func (r *reader) longWay() (way string) {
	for _, s := range r.ctx.Statements {
		if v, ok := s.(Room); ok {
			if way = "north-south"; v.EastWest.Len > v.NorthSouth.Len {
				way = "east-west"
			}
		}
	}
	return way
}

var sides = map[string]room.Side{"north": room.North, "east": room.East, "south": room.South, "west": room.West}

func (r *reader) wallSaid() room.Side {
	for _, s := range r.seq {
		if side, ok := sides[s.is]; ok {
			return side
		}
	}
	return ""
}

// startWalls gives the walls that the message says to start at.
func (r *reader) startWalls() []room.Side {
	var out []room.Side
	for i, s := range r.seq {
		if s.is != "start" && s.is != "firstrow" {
			continue
		}
		for j := i + 1; j < len(r.seq) && j <= i+5; j++ {
			if side, ok := sides[r.seq[j].is]; ok {
				out = append(out, side)
				break
			}
			if r.seq[j].is == "start" || r.seq[j].is[0] == '#' {
				break
			}
		}
	}
	return out
}

func (r *reader) subfloorSaid() (Subfloor, bool) {
	if !r.has("subfloor", "concrete", "heated", "wood") || len(r.quantities()) > r.thickOf("wood") || r.has("tile", "carpet", "door", "drill") {
		return Subfloor{}, false
	}
	if r.has("wood") && r.has("concrete") && len(r.quantities()) > 0 {
		return Subfloor{}, false
	}
	s := Subfloor{What: r.subfloor(), Heated: r.has("heated")}
	return s, s != Subfloor{}
}

// measured reads a moisture reading that is told.
func (r *reader) measured(qs *[]int) []Statement {
	test := r.testSaid()
	if test == "" && r.has("concrete") && r.has("reading", "probe") {
		test = "rh"
	}
	if test == "" && !r.has("moisture") {
		return nil
	}
	for k, i := range *qs {
		t := r.items[i].sizes[0]
		if r.items[i].vague {
			continue
		}
		m := Measured{Test: test}
		switch v := reading(t, test).(type) {
		case term.Percent:
			if test == "rh" && r.testSaid() == "" && v < 30_000 {
				continue // a share of weight, as a carbide test gives, and not an air humidity
			}
			p := Thousandths(v)
			m.Percent = &p
		case term.Number:
			n, err := scale(t.num, 100)
			if err != nil {
				continue
			}
			c := Cents(n)
			m.Pounds, m.Test = &c, "calcium-chloride"
		default:
			continue
		}
		if m.Test == "" {
			continue
		}
		*qs = append((*qs)[:k], (*qs)[k+1:]...)
		return []Statement{m}
	}
	return nil
}
