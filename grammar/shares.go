package grammar

import "lastrow/calc/length"

// share gives the part that a percentage by itself is.
func (s *sumReader) share(p *product) (length.Number, bool) {
	if len(p.Rest) > 0 || p.First.Leaf == nil {
		return length.Number{}, false
	}
	t := s.toks[p.First.Leaf.Pos.Line]
	return hundredth(t), t.class == tPercent
}

// hundredth is the number of a token, or the part of a whole that a percentage is.
func hundredth(t token) length.Number {
	if n := t.num; t.class == tPercent && n.Den < 1<<40 {
		return length.Number{Num: n.Num, Den: n.Den * 100}
	}
	return t.num
}

// inOneRow says whether so many things of one length are asked for laid end to end: "6 boards at 1285 mm end to end".
func (r *reader) inOneRow(toks []token) bool {
	return len(toks) == 2 && r.has("endtoend") && r.has("plank", "stick", "trim", "piece") && r.asks() && toks[0].class == tNumber && toks[0].num.Whole() && toks[1].class == tLength
}
