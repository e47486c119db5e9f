package trip

import (
	"math"
	"strings"
	"testing"
)

// A price in another currency is not added to the trip's: the typical one
// counts, and facts and cautions say so. In the trip's own currency it counts.
func TestPricesInAnotherCurrency(t *testing.T) {
	tr, places := island()
	tr.Levels = map[string]float64{"diesel": 25} // it must be bought on the way
	for i := range places {
		for j := range places[i].Offers {
			if places[i].Offers[j].Tank == "diesel" {
				places[i].Offers[j].PriceTag = "21.50 NOK/l"
			}
		}
		if s := places[i].Stay; s != nil {
			stay := *s
			stay.Charge = "300 NOK"
			places[i].Stay = &stay
		}
	}
	read := func(currency string) (goods, nights float64, facts, cautions, general string) {
		tr.Currency = currency
		it := mustPlan(t, tr, places)
		for _, d := range it.Days {
			for _, c := range d.Calls {
				for _, x := range c.Tasks {
					if x.Tank == "diesel" {
						goods = x.Cost / x.Amount
					}
				}
				if c.Night {
					nights = c.Cost
				}
				facts += strings.Join(c.Facts, "\n") + "\n"
				cautions += strings.Join(c.Cautions, "\n") + "\n"
			}
		}
		return goods, nights, facts, cautions, strings.Join(it.Cautions, "\n")
	}
	goods, nights, facts, cautions, general := read("EUR")
	if math.Abs(goods-services["diesel"].price) > 1e-9 || nights != plainStay.fee && nights != siteStay.fee {
		t.Errorf("in EUR diesel counts %v, a night %v", goods, nights)
	}
	for _, want := range []string{"Diesel: price=21.50 NOK/l is not in EUR, counted as 1.60 EUR/L", "night: charge=300 NOK is not in EUR, counted as"} {
		if !strings.Contains(facts, want) {
			t.Errorf("facts %q, want %q", facts, want)
		}
	}
	if !strings.Contains(cautions, "Stated in another currency, and not counted: 21.50 NOK/l.") || !strings.Contains(cautions, "not counted: 300 NOK.") || strings.Contains(general, "All sums are in") {
		t.Errorf("cautions %q, %q", cautions, general)
	}
	goods, nights, facts, cautions, general = read("NOK")
	if goods != 21.5 || nights != 300 || strings.Contains(facts, "is not in") || strings.Contains(cautions, "another currency") {
		t.Errorf("in NOK diesel counts %v, a night %v; %q, %q", goods, nights, facts, cautions)
	}
	if !strings.Contains(general, "All sums are in NOK.") || !strings.Contains(general, "Diesel 1.60 NOK/L") {
		t.Errorf("in NOK the typical prices are not warned of: %q", general)
	}
	tr.Prices = map[string]float64{"diesel": 20, "def": 12, "lpg": 11}
	if _, _, _, _, general = read("NOK"); strings.Contains(general, "NOK/L") {
		t.Errorf("with own prices: %q", general)
	}
}
