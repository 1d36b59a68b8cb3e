// Package likely guesses what a message is about from the words and turns of words in it, by weights learnt from
// messages of known kind. It is what a reader falls back on where no rule has the words, and what makes it doubt a rule.
//
// The model is a multinomial logistic regression over features that are there or not. It is pure: the same examples give
// the same weights, and the same weights the same guess.
package likely

import "math"

// Guess is a label and the probability the model gives it, from 0 to 1.
type Guess struct {
	Label string
	P     float64
}

// weight is what one feature adds to one label's score.
type weight struct {
	label int32
	w     float32
}

// Model holds the weights of every feature.
type Model struct {
	labels  []string
	index   map[string]int // of the labels
	weights map[string][]weight
}

// of makes a model of labels, without weights.
func of(labels []string) *Model {
	m := &Model{labels: labels, index: map[string]int{}, weights: map[string][]weight{}}
	for i, l := range labels {
		m.index[l] = i
	}
	return m
}

// Best gives the likeliest label and the next; zero guesses where the model has no labels.
func (m *Model) Best(features []string) (best, next Guess) {
	for i, p := range m.probabilities(features) {
		switch g := (Guess{m.labels[i], p}); {
		case p > best.P:
			best, next = g, best
		case p > next.P:
			next = g
		}
	}
	return best, next
}

// Chances are the probabilities of every label of a model.
type Chances struct {
	model *Model
	p     []float64
}

// All gives the probability of every label.
func (m *Model) All(features []string) Chances { return Chances{m, m.probabilities(features)} }

// Of gives the probability of one label; 0 where the model has no such label.
func (c Chances) Of(label string) float64 {
	if i, ok := c.model.index[label]; ok {
		return c.p[i]
	}
	return 0
}

func (m *Model) probabilities(features []string) []float64 {
	z := make([]float64, len(m.labels))
	scale := strength(len(features))
	for _, f := range features {
		for _, w := range m.weights[f] {
			z[w.label] += float64(w.w) * scale
		}
	}
	return softmax(z)
}

// strength is the value of each feature of a message with n of them: long messages speak no louder than short ones.
func strength(n int) float64 { return 3 / math.Sqrt(float64(max(n, 1))) }

// softmax turns scores into probabilities, in place.
func softmax(z []float64) []float64 {
	top := math.Inf(-1)
	for _, v := range z {
		top = max(top, v)
	}
	sum := 0.0
	for i := range z {
		z[i] = math.Exp(z[i] - top)
		sum += z[i]
	}
	for i := range z {
		z[i] /= sum
	}
	return z
}
