package calc

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

func pounds(minor int64) term.Money { return term.Money{Minor: minor, Currency: "GBP"} }

// bedroom is a job with planks, underlay and a door.
func bedroom() *Job {
	return &Job{
		Plank:    plank.Plank{Width: in(7.625), Length: in(47.5), Thickness: mm(12), PerBox: 8},
		Underlay: plank.Roll{Thickness: mm(2), Width: in(48), Length: in(300)},
		Plan: room.Plan{Rect: &room.Rect{EastWest: in(180), NorthSouth: in(144)},
			Doorways: []room.Doorway{{Wall: room.South, Wide: in(36)}}},
		Facts: map[term.Name]term.Value{},
	}
}

func TestCostOfBoxes(t *testing.T) {
	r := ask(t, term.AskCost, term.Boxes, term.Count(11), term.Price, pounds(3190))
	require.Equal(t, pounds(35090), value(r, term.Amount))
	require.Equal(t, "11 boxes of planks at 31.90 GBP = 350.90 GBP", r.Working[0])
	_, err := Answer(&Job{}, Question{term.AskCost, given(term.Boxes, term.Count(11))})
	require.ErrorContains(t, err, "needs price")
	refused(t, "out of bounds", term.AskCost, term.Boxes, term.Count(11), term.Price, pounds(1_000_000_000))
	ask(t, term.AskCost, term.Boxes, term.Count(11), term.Price, pounds(999_999_999))
}

// The cost of the planks alone rests on nothing said of trim or underlay; with a roll's price it does.
func TestCostRestsOnWhatHasAPrice(t *testing.T) {
	job := bedroom()
	job.Facts[term.Price] = pounds(3190)
	names := func() map[term.Name]bool {
		r, err := Answer(job, Question{Kind: term.AskCost})
		require.NoError(t, err)
		used := map[term.Name]bool{}
		for _, g := range r.Given {
			used[g.Name] = true
		}
		return used
	}
	require.NotContains(t, names(), term.RollWidth)
	require.NotContains(t, names(), term.StickLength)
	job.Facts[term.RollPrice], job.Facts[term.StickPrice] = pounds(2500), pounds(900)
	require.Contains(t, names(), term.RollWidth)
	require.Contains(t, names(), term.StickLength)
}

func TestShopping(t *testing.T) {
	job := bedroom()
	job.Facts[term.Price], job.Facts[term.RollPrice] = pounds(3190), pounds(2500)
	r, err := Answer(job, Question{term.AskShopping, given(term.StickLength, term.Len(in(192)))})
	require.NoError(t, err)
	boxes := int64(value(r, term.Boxes).(term.Count))
	require.Positive(t, boxes)
	require.Equal(t, term.Count(3), value(r, term.Rolls))
	require.Equal(t, term.Count(4), value(r, term.Sticks)) // 15, 12, 15 ft and what stands at the door, from sticks of 16 ft
	require.Equal(t, term.Count(1), value(r, term.Profiles))
	require.Equal(t, term.Count(26), value(r, term.Spacers)) // 51 ft of wall, a pair every 2 ft
	require.Equal(t, pounds(boxes*3190+3*2500), value(r, term.Amount))
	_, err = Answer(&Job{}, Question{Kind: term.AskShopping})
	var missing *Missing
	require.ErrorAs(t, err, &missing)
}

func TestShoppingRefusesTwoCurrencies(t *testing.T) {
	job := bedroom()
	job.Facts[term.Price], job.Facts[term.RollPrice] = pounds(3190), term.Money{Minor: 5, Currency: "EUR"}
	_, err := Answer(job, Question{Kind: term.AskShopping})
	require.ErrorContains(t, err, "don't add up")
}

// 1000 sq ft at 62.5 sq ft a person-hour is two people's day of 8 hours (trade text: installer and helper).
func TestHours(t *testing.T) {
	rate := term.Area{Area: length.Number{Num: 125, Den: 2}.OfArea(length.SquareFoot)}
	r := ask(t, term.AskHours, term.FloorArea, sqft(1000), term.Rate, rate, term.Crew, term.Count(2))
	require.InDelta(t, 8, float64(value(r, term.HoursTaken).(term.Hours)), 1e-9)
	r = ask(t, term.AskHours, term.FloorArea, sqft(400))
	require.InDelta(t, 10, float64(value(r, term.HoursTaken).(term.Hours)), 1e-9)
	refused(t, "no pace", term.AskHours, term.FloorArea, sqft(400), term.Rate, term.Area{Area: length.SquareInch})
	refused(t, "crew", term.AskHours, term.FloorArea, sqft(400), term.Crew, term.Count(0))
	refused(t, "needs area or room or job", term.AskHours)
	r, err := Answer(bedroom(), Question{Kind: term.AskHours})
	require.NoError(t, err)
	require.InDelta(t, 6, float64(value(r, term.HoursTaken).(term.Hours)), 3) // 180 sq ft at 20 to 60 an hour
	require.Contains(t, r.Working, "4 x 5 corner minutes = 20")
	require.Contains(t, r.Working, "1 x 20 doorway minutes = 20")
	job := bedroom()
	job.Facts["doorway-minutes"] = term.Count(60)
	slow, err := Answer(job, Question{term.AskHours, given(term.Crew, term.Count(2))})
	require.NoError(t, err)
	require.InDelta(t, float64(value(r, term.HoursTaken).(term.Hours))/2+1.0/3, float64(value(slow, term.HoursTaken).(term.Hours)), 1e-9)
}

func BenchmarkShopping(b *testing.B) {
	for _, size := range []int64{10, 30, 100} {
		b.Run(fmt.Sprintf("metres=%d", size), func(b *testing.B) {
			b.ReportAllocs()
			job := bedroom()
			job.Plan.Rect.EastWest = mm(1000 * size)
			for b.Loop() {
				if _, err := Answer(job, Question{Kind: term.AskShopping}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
