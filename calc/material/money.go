package material

import (
	"fmt"

	"lastrow/calc/term"
)

// Item is a line of a shopping list: so many of a thing, and what they cost where a price is known.
type Item struct {
	What string
	N    int64
	Of   string // "box", "roll", "stick", "tube"
	Each *term.Money
}

// Cost is the price of all of an item, or nothing where none is known.
func (i Item) Cost() term.Money {
	if i.Each == nil {
		return term.Money{}
	}
	return Times(*i.Each, i.N)
}

// Times is the price of n. The caller bounds both: a price under 10 000 000 and a count under 1 000 000 never overflow.
func Times(price term.Money, n int64) term.Money {
	return term.Money{Minor: price.Minor * n, Currency: price.Currency}
}

// Total adds up what has a price, and counts the lines that have none. The error is two currencies in one list.
func Total(items []Item) (sum term.Money, unpriced int, err error) {
	for _, i := range items {
		if i.Each == nil {
			unpriced++
			continue
		}
		if sum.Currency == "" {
			sum.Currency = i.Each.Currency
		} else if i.Each.Currency != "" && i.Each.Currency != sum.Currency {
			return sum, unpriced, fmt.Errorf("prices in %s and in %s don't add up", sum.Currency, i.Each.Currency)
		}
		sum.Minor += i.Cost().Minor
	}
	return sum, unpriced, nil
}

// Line is the item as a line of the list: "11 boxes of planks at 31.90 = 350.90".
func (i Item) Line() string {
	line := fmt.Sprintf("%d %s of %s", i.N, plural(i.Of, i.N), i.What)
	if i.What == "" {
		line = fmt.Sprintf("%d %s", i.N, plural(i.Of, i.N))
	}
	if i.Each == nil {
		return line
	}
	return fmt.Sprintf("%s at %s = %s", line, MoneyText(*i.Each), MoneyText(i.Cost()))
}

func plural(of string, n int64) string {
	switch {
	case n == 1:
		return of
	case of == "box":
		return "boxes"
	}
	return of + "s"
}

// MoneyText shows an amount with its currency where that is known: "31.90 USD".
func MoneyText(m term.Money) string {
	sign, minor := "", m.Minor
	if minor < 0 {
		sign, minor = "-", -minor
	}
	text := fmt.Sprintf("%s%d.%02d", sign, minor/100, minor%100)
	if m.Currency == "" {
		return text
	}
	return text + " " + m.Currency
}
