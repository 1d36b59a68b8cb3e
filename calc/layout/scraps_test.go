package layout

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

// Whatever is at hand: the rows laid are whole from wall to wall, no scrap gives more than it has, nor a lock that it has
// not, joints and ends keep the rules, and rows that one piece spans are no fewer than the scraps have room for.
func TestScrapsGiveWhatTheyHave(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewSource(51))
	all, laid := 0, 0
	for range 400 {
		r, have := scrapsAtHand(t, rnd)
		l, rows, err := LayScraps(r, have)
		require.NoError(t, err)
		require.LessOrEqual(t, len(l.Rows), rows)
		all, laid = all+rows, laid+len(l.Rows)
		checkScraps(t, l, have)
		again, _, err := LayScraps(r, have)
		require.NoError(t, err)
		require.Equal(t, l, again)
		run := r.Floor.Laying
		b := boxOf(run)
		if l.Along == NorthSouth {
			b.right, b.left = b.far, b.near
		}
		one := length.Length(0)
		for _, h := range have {
			one += (h.Len + r.Rules.Kerf) / (b.right - b.left + r.Rules.Kerf)
		}
		require.GreaterOrEqual(t, len(l.Rows), min(rows, int(one)))
	}
	t.Logf("%d of %d rows laid", laid, all)
	require.Greater(t, laid, all/4)
}

func scrapsAtHand(t *testing.T, rnd *rand.Rand) (Request, []Scrap) {
	size := func(least, most int) length.Length { return length.Length(8*least+rnd.Intn(8*(most-least))) * in / 8 }
	f, broken := room.Build(room.Plan{Rect: &room.Rect{EastWest: size(20, 90), NorthSouth: size(20, 60)}})
	require.Empty(t, broken)
	var have []Scrap
	for range rnd.Intn(14) {
		locks := rnd.Intn(4)
		have = append(have, Scrap{Len: size(9, 46), Left: locks&1 > 0, Right: locks&2 > 0})
	}
	for range rnd.Intn(6) {
		have = append(have, Scrap{95 * in / 2, true, true})
	}
	return Request{
		Floor: f, Plank: plank.Plank{Width: 61 * in / 8, Length: 95 * in / 2}, Mark: in / 16, Rules: usual,
		Along: []Direction{EastWest, NorthSouth}[rnd.Intn(2)],
	}, have
}

func checkScraps(t *testing.T, l *Layout, have []Scrap) {
	left := map[length.Length]int{}
	for _, h := range have {
		left[h.Len]++
	}
	pieces := map[Ref]Piece{}
	locks := map[Ref]lock{}
	for n, row := range l.Rows {
		run := row.Runs[0]
		at := run.Left
		for i, p := range run.Pieces {
			require.Equal(t, at, p.Left)
			at = p.Right
			pieces[Ref{p.Row, p.N}] = p
			if i > 0 {
				locks[Ref{p.Row, p.N}] |= leftEnd
			}
			if i < len(run.Pieces)-1 {
				locks[Ref{p.Row, p.N}] |= rightEnd
				require.GreaterOrEqual(t, p.Right-p.Left, l.Request.Rules.LeastEnd)
			}
		}
		require.Equal(t, run.Right, at)
		if n > 0 {
			require.False(t, law{t, l, ""}.close(run, l.Rows[n-1]), "row %d", n+1)
		}
	}
	for _, s := range l.Stock {
		long := s.Scrap
		if long == 0 {
			long = l.Request.Plank.Length
		}
		left[long]--
		require.GreaterOrEqual(t, left[long], 0)
		sum, taken := -l.Request.Rules.Kerf, lock(0)
		for _, ref := range s.Pieces {
			sum += pieces[ref].Right - pieces[ref].Left + l.Request.Rules.Kerf
			require.Zero(t, taken&locks[ref])
			taken |= locks[ref]
		}
		require.LessOrEqual(t, sum, long)
		require.True(t, hasLocks(have, long, taken))
	}
}

// hasLocks says whether a scrap of that length has those locks.
func hasLocks(have []Scrap, long length.Length, locks lock) bool {
	for _, h := range have {
		if h.Len == long && (h.Left || locks&leftEnd == 0) && (h.Right || locks&rightEnd == 0) {
			return true
		}
	}
	return false
}

func BenchmarkScraps(b *testing.B) {
	f, broken := room.Build(room.Plan{Rect: &room.Rect{EastWest: 96 * in, NorthSouth: 60 * in}})
	require.Empty(b, broken)
	for _, c := range []struct {
		name string
		n    int
	}{{"scraps=10", 10}, {"scraps=40", 40}} {
		var have []Scrap
		for i := range c.n {
			have = append(have, Scrap{Len: length.Length(10+i*37%36) * in, Left: i%3 == 0, Right: i%3 != 0})
		}
		r := Request{Floor: f, Plank: plank.Plank{Width: 61 * in / 8, Length: 95 * in / 2}, Along: EastWest, Mark: in / 16, Rules: usual}
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, _, err := LayScraps(r, have); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
