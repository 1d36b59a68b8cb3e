package grammar

// tellers are words that begin a sentence which tells, with a size or a count after them.
var tellers = map[string]bool{
	"room": true, "plank": true, "planks": true, "boards": true, "underlay": true, "gap": true, "walls": true, "closet": true, "job": true, "laid": true, "opened": true, "price": true,
	"spare": true, "kerf": true, "start": true, "subfloor": true, "door": true, "post": true, "trim": true,
}

// mixed reads sentences that tell, then one that asks: "room 12 x 10. plank 7 5/8 x 48. how many boxes". The first are
// recorded; all of it is understood, or nothing.
func (r *reader) mixed() (Reading, bool) {
	if r.sents == 0 || r.ctx.Group {
		return Reading{}, false
	}
	at := 0
	for k, f := range r.firsts {
		if f >= len(r.items) || !r.tells(f) {
			break
		}
		if k+1 < len(r.firsts) {
			at = r.firsts[k+1]
		}
	}
	if at == 0 || at >= len(r.items) {
		return Reading{}, false
	}
	ctx := r.ctx
	ctx.Pending, ctx.Last, ctx.Setting = nil, nil, ""
	cut := r.items[at].at
	told := Read(r.src[:cut], ctx)
	if told.Problem != nil {
		return told, true
	}
	if len(told.Statements) == 0 || told.Question != nil {
		return Reading{}, false
	}
	if told.Measured && !ctx.Known {
		ctx.System, ctx.Known = told.System, true
	}
	rest := Read(r.src[cut:], ctx)
	if rest.Problem == nil {
		rest.Statements = append(told.Statements, rest.Statements...)
		if w := contradiction(rest.Statements); w != "" {
			return r.refused(rest.Statements[0].Kind(), w), true
		}
	}
	return rest, true
}

// tells says whether the sentence that begins at item f is one that tells.
func (r *reader) tells(f int) bool {
	if !tellers[r.items[f].word] || f+1 >= len(r.items) || !r.items[f+1].quantity() && r.items[f].word != "start" && r.items[f].word != "walls" && r.items[f].word != "subfloor" {
		return false
	}
	for i := f; i < len(r.items) && r.items[i].sentence == r.items[f].sentence; i++ {
		if r.items[i].mark == "?" {
			return false
		}
	}
	return true
}
