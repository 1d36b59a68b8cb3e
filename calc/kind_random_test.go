package calc

import (
	"math/big"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

var loose = []term.Name{
	term.Run, term.Gap, term.Limit, term.PlankThickness, term.UnderlayThickness, term.FloorHeight, term.OtherHeight, term.OtherFloor,
	term.DoorGap, term.WorkingClearance, term.DoorKind, term.Ceiling, term.Sill, term.Riser, term.Landing, term.Guard, term.Threshold,
	term.Dip, term.Straightedge, term.Heights, term.Spacing, term.Tolerance, term.Allowed, term.FloorArea, term.Room, term.Depth, term.Shape,
	term.BagYield, term.Test, term.Reading, term.PlankMoisture, term.PlankWidth, term.SlabThickness, term.Subfloor, term.HumiditySwing, term.Play,
}

func anyValue(t *rapid.T) term.Value {
	n := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-2, 2_000), rapid.Int64Range(0, 20_000_000_000)).Draw(t, "n")
	words := []term.Word{"", "rh", "wood", "carbide", "calcium-chloride", "plastic-sheet", "concrete", "slope", "upper", "SR2", "row 3", "fire", "damp"}
	switch rapid.IntRange(0, 8).Draw(t, "type") {
	case 0:
		return term.Area{Area: length.Length(n).Times(length.Inch)}
	case 1:
		return term.Count(n)
	case 2:
		return term.Percent(n)
	case 3:
		return term.Number{Rat: big.NewRat(n, 7)}
	case 4:
		return rapid.SampledFrom(words).Draw(t, "word")
	case 5:
		return term.Lens{length.Length(n), mm(3), length.Length(n / 2)}[:rapid.IntRange(0, 3).Draw(t, "lengths")]
	case 6:
		return term.Volume{Volume: length.Length(n).Times(length.Inch).Deep(length.Inch)}
	}
	return term.Len(n)
}

// Whatever is said, an answer has values and working, and anything else has its reason: nothing panics.
func TestAnyInputsOfHeightsAndSubfloors(t *testing.T) {
	var kinds []term.Kind
	for k := range under {
		kinds = append(kinds, k)
	}
	slices.Sort(kinds)
	rapid.Check(t, func(t *rapid.T) {
		q := Question{Kind: rapid.SampledFrom(kinds).Draw(t, "kind")}
		for _, n := range rapid.SliceOfDistinct(rapid.SampledFrom(loose), rapid.ID).Draw(t, "names") {
			q.Given = append(q.Given, term.Given{Name: n, Value: anyValue(t), From: term.Message})
		}
		r, err := Answer(&Job{}, q)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		require.NotEmpty(t, r.Working)
	})
}
