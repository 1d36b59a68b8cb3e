package subfloor

import (
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// Ground is what a subfloor is made of, as far as vapor goes.
type Ground int

// The grounds.
const (
	Unknown Ground = iota
	Mineral        // concrete, screed, stone: vapor rises, a film is needed
	Timber         // boards and panels: a film would trap moisture in them
	Covered        // an old tight covering, which may be left: what lies under it decides
)

var grounds = []struct {
	word string
	is   Ground
}{
	{"concrete", Mineral}, {"slab", Mineral}, {"screed", Mineral}, {"cement", Mineral}, {"anhydrite", Mineral},
	{"gypsum", Mineral}, {"sulfate", Mineral}, {"sulphate", Mineral}, {"masonry", Mineral}, {"stone", Mineral},
	{"terrazzo", Mineral}, {"basement", Mineral}, {"crawl", Timber},
	{"wood", Timber}, {"plywood", Timber}, {"ply", Timber}, {"osb", Timber}, {"chipboard", Timber},
	{"particle", Timber}, {"joist", Timber}, {"timber", Timber}, {"plank", Timber}, {"board", Timber},
	{"tile", Covered}, {"vinyl", Covered}, {"lino", Covered}, {"resilient", Covered},
}

// GroundOf reads a subfloor's name: the first of the words above that stands anywhere in it. The mineral ones
// come first, for "tile over slab" and "plywood on concrete" still have the slab's vapor under them.
func GroundOf(name string) Ground {
	name = strings.ToLower(name)
	for _, g := range grounds {
		if strings.Contains(name, g.word) {
			return g.is
		}
	}
	return Unknown
}

// FilmNeeded says whether a vapor film goes under a floating floor on a ground. ok is false where the ground does
// not decide it.
func FilmNeeded(g Ground) (needed, ok bool) {
	return g == Mineral, g == Mineral || g == Timber
}

// ScreedOf reads from a subfloor's name what a carbide test needs to know.
func ScreedOf(name string) Screed {
	name = strings.ToLower(name)
	has := func(words ...string) bool {
		for _, w := range words {
			if strings.Contains(name, w) {
				return true
			}
		}
		return false
	}
	return Screed{
		Sulfate: has("sulfate", "sulphate", "anhydrite", "gypsum"),
		Heated:  has("heated", "radiant", "heating", "warm"),
	}
}

// Lap is how far the strips of a film overlap.
func Lap(s length.System) length.Length { return limit.FilmLap.In(s) }
