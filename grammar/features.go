package grammar

import (
	"github.com/alecthomas/participle/v2/lexer"

	"lastrow/grammar/words"
)

// features lists what a guess at a message's kind rests on, each once: the words and meanings in it, each pair of
// neighbours, what it measures, whether it has a question mark.
func (m *message) features() []string {
	f := featureSet{make([]string, 0, 8*len(m.items)), make(map[string]bool, 8*len(m.items))}
	surface, meant, before := "^", "^", "^"
	for i := range m.items {
		it := &m.items[i]
		w := it.shape()
		if w == "" {
			continue
		}
		f.add("w " + w)
		f.add("p " + surface + " " + w)
		f.add("s " + before + " " + w)
		before, surface = surface, w
		if is := it.sense(); is != "" {
			f.add("m " + is)
			f.add("n " + meant + " " + is)
			meant = is
		}
	}
	f.add("p " + surface + " $")
	f.add("n " + meant + " $")
	f.add("all")
	return f.list
}

type featureSet struct {
	list []string
	seen map[string]bool
}

func (f *featureSet) add(s string) {
	if !f.seen[s] {
		f.seen[s] = true
		f.list = append(f.list, s)
	}
}

// shape is an item as it stands in a turn of words: the word, or what kind of quantity or mark it is.
func (it *item) shape() string {
	switch {
	case it.word != "":
		return it.word
	case it.quantity():
		return it.dimension()
	case it.mark == "?":
		return "?"
	}
	return ""
}

// sense is the meaning of an item; that of a word that says nothing here is nothing.
func (it *item) sense() string {
	switch {
	case it.quantity():
		return it.dimension()
	case it.meaning == words.Filler:
		return ""
	}
	return it.meaning
}

func (it *item) dimension() string {
	if len(it.sizes) > 1 {
		return "#pair"
	}
	return "#" + dimensions[it.sizes[0].class]
}

// dimensions names what each class of quantity measures.
var dimensions = map[lexer.TokenType]string{
	tNumber: "number", tLength: "length", tArea: "area", tVolume: "volume", tPercent: "percent", tMoney: "money", tAngle: "angle", tMass: "mass", tClock: "clock", tTime: "time",
}
