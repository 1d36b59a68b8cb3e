package likely

import (
	"math"
	"slices"
)

// Example is a message's features and its label.
type Example struct {
	Features []string
	Label    string
}

const (
	rounds = 12    // passes over the examples
	rate   = 0.3   // of learning
	pull   = 0.004 // of every weight towards nothing, which keeps the model small
	least  = 1e-4  // an error in a label's probability that is not worth a step
)

// trainer is a model being learnt by AdaGrad: a step for each example, shorter where a weight has moved much (J. Duchi,
// E. Hazan and Y. Singer, Adaptive Subgradient Methods, JMLR 12, 2011, with their shrinking of weights for an L1 penalty).
type trainer struct {
	labels []string
	index  map[string]int
	rows   map[string]*row
}

type row struct{ w, moved []float64 }

// Train learns a model. The examples are taken in a fixed shuffled order, so the same examples give the same model.
func Train(examples []Example) *Model {
	t := &trainer{index: map[string]int{}, rows: map[string]*row{}}
	for _, e := range examples {
		t.name(e.Label)
	}
	examples = repeated(examples)
	for _, e := range examples {
		for _, f := range e.Features {
			if t.rows[f] == nil {
				t.rows[f] = &row{make([]float64, len(t.labels)), make([]float64, len(t.labels))}
			}
		}
	}
	apart := stride(len(examples))
	for range rounds {
		for i := range examples {
			t.step(&examples[i*apart%len(examples)])
		}
	}
	return t.model()
}

// repeated leaves out the features that one example alone has: nothing can be learnt of them that holds for another.
func repeated(examples []Example) []Example {
	seen := map[string]int{}
	for _, e := range examples {
		for _, f := range e.Features {
			seen[f]++
		}
	}
	out := make([]Example, len(examples))
	for i, e := range examples {
		out[i] = Example{slices.DeleteFunc(slices.Clone(e.Features), func(f string) bool { return seen[f] < 2 }), e.Label}
	}
	return out
}

func (t *trainer) name(label string) {
	if _, ok := t.index[label]; !ok {
		t.index[label] = len(t.labels)
		t.labels = append(t.labels, label)
	}
}

// stride is a step that visits every one of n examples once, far from the one before.
func stride(n int) int {
	s := n*5/8 | 1
	for gcd(s, n) != 1 {
		s += 2
	}
	return s
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func (t *trainer) step(e *Example) {
	z := make([]float64, len(t.labels))
	scale := strength(len(e.Features))
	for _, f := range e.Features {
		for k, w := range t.rows[f].w {
			z[k] += w * scale
		}
	}
	softmax(z)
	z[t.index[e.Label]]--
	for _, f := range e.Features {
		t.rows[f].learn(z, scale)
	}
}

// learn moves a feature's weights against the error in each label.
func (r *row) learn(err []float64, scale float64) {
	for k, e := range err {
		if math.Abs(e) < least {
			continue
		}
		d := e * scale
		r.moved[k] += d * d
		speed := rate / math.Sqrt(1e-8+r.moved[k])
		r.w[k] = shrunk(r.w[k]-speed*d, speed*pull)
	}
}

func shrunk(w, by float64) float64 { return math.Copysign(max(math.Abs(w)-by, 0), w) }

func (t *trainer) model() *Model {
	m := of(slices.Clone(t.labels))
	for f, r := range t.rows {
		for k, w := range r.w {
			if rounded := math.Round(w * steps); rounded != 0 {
				m.weights[f] = append(m.weights[f], weight{int32(k), float32(rounded / steps)})
			}
		}
	}
	return m
}
