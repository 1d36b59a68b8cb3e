package calc

import (
	"bufio"
	"encoding/json"
	"math/big"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// phrase is a line of testdata/phrases: what a message says, and what should follow from it.
type phrase struct {
	ID      string
	Kind    term.Kind
	Outcome string
	Setup   []string
	Given   map[term.Name]figures
	Values  map[term.Name]figures
	Missing []term.Name
}

type figures struct {
	MM      json.RawMessage
	M2      *float64
	M3      *float64
	Percent *float64
	Count   *int64
	Word    *term.Word
	Pass    *bool
}

func phrases(t *testing.T) []phrase {
	files, err := filepath.Glob("../testdata/phrases/*.jsonl")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	var all []phrase
	for _, name := range files {
		f, err := os.Open(name)
		require.NoError(t, err)
		defer f.Close()
		lines := bufio.NewScanner(f)
		lines.Buffer(nil, 1<<20)
		for lines.Scan() {
			var p phrase
			require.NoError(t, json.Unmarshal(lines.Bytes(), &p), name)
			all = append(all, p)
		}
		require.NoError(t, lines.Err())
	}
	return all
}

// value is what the figures stand for; nil where it is nothing that a question takes.
func (f figures) value() term.Value {
	var one float64
	var several []float64
	switch {
	case json.Unmarshal(f.MM, &one) == nil:
		return term.Len(one*1e6 + 0.5)
	case json.Unmarshal(f.MM, &several) == nil:
		var ls term.Lens
		for _, l := range several {
			ls = append(ls, length.Length(l*1e6+0.5))
		}
		return ls
	case f.Count != nil:
		return term.Count(*f.Count)
	case f.M2 != nil:
		return term.Area{Area: squareMetres(*f.M2)}
	case f.Percent != nil:
		return term.Percent(*f.Percent*1000 + 0.5)
	case f.Word != nil:
		return *f.Word
	}
	return nil
}

func squareMetres(m2 float64) length.Area {
	um2 := big.NewInt(int64(m2*1e12 + 0.5))
	return length.AreaOf(um2.Mul(um2, big.NewInt(1e6)))
}

var under = map[term.Kind]bool{
	term.AskGap: true, term.AskLongRun: true, term.AskTransition: true, term.AskUndercut: true, term.AskDoor: true, term.AskHeadroom: true,
	term.AskFlatness: true, term.AskLeveler: true, term.AskMoisture: true, term.AskVaporBarrier: true, term.AskAcclimate: true,
}

// Each phrase on heights and subfloors, its inputs as it should be read, gives the values that it should. A length
// given in whole inches makes an inch job.
func TestPhrasesOfHeightsAndSubfloors(t *testing.T) {
	answered := 0
	for _, p := range phrases(t) {
		if !under[p.Kind] || p.Outcome != "answer" && p.Outcome != "ask-back" {
			continue
		}
		given, system := p.inputs()
		r, err := Answer(&Job{Tape: length.Tape{System: system}}, Question{p.Kind, given})
		if p.Outcome == "ask-back" && string(p.Missing[0]) == string(p.Kind) {
			continue // a statement without its figure
		}
		if p.Outcome == "ask-back" {
			p.asksBack(t, err)
			continue
		}
		if len(p.Given) == 0 && err != nil {
			require.IsType(t, &Missing{}, err, p.ID) // its inputs are not listed with it
			continue
		}
		require.NoError(t, err, p.ID)
		p.agrees(t, r)
		answered++
	}
	require.Greater(t, answered, 15)
}

func (p phrase) inputs() ([]term.Given, length.System) {
	var given []term.Given
	system := length.Metric
	for n, f := range p.Given {
		v := f.value()
		if v == nil {
			continue
		}
		given = append(given, term.Given{Name: n, Value: v, From: term.Message})
		if l, ok := v.(term.Len); ok && length.Length(l)%(length.Inch/16) == 0 {
			system = length.Imperial
		}
	}
	return given, system
}

func (p phrase) asksBack(t *testing.T, err error) {
	var missing *Missing
	require.ErrorAs(t, err, &missing, p.ID)
	var names []term.Name
	for _, any := range missing.Needs {
		names = append(names, any...)
	}
	for _, n := range p.Missing {
		require.Contains(t, names, n, p.ID)
	}
}

func (p phrase) agrees(t *testing.T, r Result) {
	for n, want := range p.Values {
		got := value(r, n)
		switch v := got.(type) {
		case term.Len:
			var mm float64
			require.NoError(t, json.Unmarshal(want.MM, &mm), p.ID)
			require.InDelta(t, mm, length.Length(v).MM(), 0.02, "%s %s", p.ID, n)
		case term.Volume:
			require.InDelta(t, *want.M3, v.M3(), 1e-8, p.ID)
		case term.Pass:
			require.Equal(t, *want.Pass, bool(v), p.ID)
		case term.Count:
			require.Equal(t, *want.Count, int64(v), "%s %s", p.ID, n)
		case term.Word:
			require.Equal(t, *want.Word, v, p.ID)
		default:
			t.Fatalf("%s: %s is %v", p.ID, n, got)
		}
	}
	for _, line := range r.Working {
		require.NotContains(t, line, "%!", p.ID)
		require.False(t, strings.HasSuffix(line, "."), p.ID)
	}
}
