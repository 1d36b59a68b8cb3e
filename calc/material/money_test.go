package material

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lastrow/calc/term"
)

func usd(minor int64) *term.Money { return &term.Money{Minor: minor, Currency: "USD"} }

func TestItems(t *testing.T) {
	list := []Item{{"planks", 11, "box", usd(3190)}, {"trim", 8, "stick", usd(1249)}, {"underlay", 1, "roll", nil}, {"", 2, "tube", usd(5)}}
	require.Equal(t, "11 boxes of planks at 31.90 USD = 350.90 USD", list[0].Line())
	require.Equal(t, "8 sticks of trim at 12.49 USD = 99.92 USD", list[1].Line())
	require.Equal(t, "1 roll of underlay", list[2].Line())
	require.Equal(t, "2 tubes at 0.05 USD = 0.10 USD", list[3].Line())
	sum, unpriced, err := Total(list)
	require.NoError(t, err)
	require.Equal(t, term.Money{Minor: 35090 + 9992 + 10, Currency: "USD"}, sum)
	require.Equal(t, 1, unpriced)
	_, _, err = Total(append(list, Item{"shims", 1, "pack", &term.Money{Minor: 5, Currency: "EUR"}}))
	require.ErrorContains(t, err, "USD and in EUR")
	require.Equal(t, "-0.05", MoneyText(term.Money{Minor: -5}))
	require.Zero(t, list[2].Cost())
}

// Hundredths are whole numbers: a total is the sum of its lines to the cent, whatever their order.
func TestTotalIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var list []Item
		var cents int64
		for range rapid.IntRange(1, 20).Draw(t, "lines") {
			n, each := rapid.Int64Range(0, 999_999).Draw(t, "n"), rapid.Int64Range(0, 999_999_999).Draw(t, "each")
			list = append(list, Item{"", n, "box", usd(each)})
			cents += n * each
		}
		sum, _, err := Total(list)
		require.NoError(t, err)
		require.Equal(t, cents, sum.Minor)
	})
}

// Trade texts give an installer 20 to 62.5 sq ft an hour: 12 x 12 ft in 19 rows of four pieces has to fall between.
func TestUsualPace(t *testing.T) {
	w := Work{Rows: 19, Pieces: 76, Crosscuts: 38, Rips: 8, Notches: 2, Doorways: 1}
	hours := float64(w.Minutes(UsualPace)) / 60
	require.InDelta(t, 41, 144/hours, 21.5)
	require.Equal(t, int64(7), Work{1, 1, 1, 1, 1, 1, 1}.Minutes(Work{1, 1, 1, 1, 1, 1, 1}))
}

func BenchmarkTotal(b *testing.B) {
	for _, size := range []struct {
		name  string
		lines int
	}{{"lines=10", 10}, {"lines=1000", 1000}} {
		b.Run(size.name, func(b *testing.B) {
			b.ReportAllocs()
			list := make([]Item, size.lines)
			for i := range list {
				list[i] = Item{"trim", int64(i), "stick", usd(1249)}
			}
			for b.Loop() {
				if _, _, err := Total(list); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
