package sheet

import "image/color"

// Tone is the colour of an area.
type Tone uint8

// The tones. Whole, Cut and Spare differ in lightness by steps that survive a grey picture, and by texture besides.
const (
	Paper Tone = iota
	Wall
	Gap
	Whole
	Cut
	Spare
	Waste
	Beyond
	Thing
	Layer
	Layer2
	Black
)

// Texture is a pattern of thin lines over a tone.
type Texture uint8

// The textures: none, lines rising to the right, lines falling to the right, both, dots.
const (
	Plain Texture = iota
	Rising
	Falling
	Crossed
	Dotted
)

var textureNames = [...]string{"plain", "rising", "falling", "crossed", "dotted"}

var tones = [16]struct {
	name    string
	r, g, b uint8
}{
	Paper:  {"paper", 255, 255, 255},
	Wall:   {"wall", 90, 90, 94},
	Gap:    {"gap", 255, 255, 255},
	Whole:  {"whole", 250, 243, 226},
	Cut:    {"cut", 226, 199, 150},
	Spare:  {"spare", 158, 196, 220},
	Waste:  {"waste", 216, 216, 216},
	Beyond: {"beyond", 232, 232, 236},
	Thing:  {"thing", 190, 190, 196},
	Layer:  {"layer", 226, 240, 226},
	Layer2: {"layer2", 200, 222, 204},
	Black:  {"black", 0, 0, 0},
}

// inks is the number of steps from an area's own tone to black.
const inks = 16

// palette has, for each tone, its steps to black: index tone*inks + ink.
var palette = makePalette()

func makePalette() color.Palette {
	p := make(color.Palette, 0, len(tones)*inks)
	for _, t := range tones {
		for ink := range inks {
			p = append(p, color.RGBA{darker(t.r, ink), darker(t.g, ink), darker(t.b, ink), 255})
		}
	}
	return p
}

func darker(v uint8, ink int) uint8 { return uint8(int(v) * (inks - 1 - ink) / (inks - 1)) }
