package trip

import (
	"cmp"
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// amountTag reads "12 EUR", "€12.50", "1,459 €/l", "12": a number with an
// optional currency before or after. Anything longer (per person, per day
// ranges) is not guessed at, except a trailing "/something".
var amountTag = regexp.MustCompile(`^(€|£|\$|[A-Z]{3})? ?([0-9]{1,5}(?:[.,][0-9]{1,3})?) ?(€|£|\$|[A-Z]{3})?(?: ?/ ?(\w+))?$`)

// What a price may be per.
var (
	litreUnits = []string{"l", "litre", "liter"}
	nightUnits = []string{"night", "day", "24h", "vehicle"}
)

var currencySign = map[string]string{"€": "EUR", "£": "GBP", "$": "USD"}

// parseAmount reads a price or charge tag. ok is false unless it is one plain
// amount in the given currency (or names no currency) per one of the given
// units (or names none).
func parseAmount(tag, currency string, units ...string) (amount float64, ok bool) {
	m := amountTag.FindStringSubmatch(strings.TrimSpace(tag))
	if m == nil || otherCurrency(m, currency) != "" || m[4] != "" && !contains(units, m[4]) {
		return 0, false
	}
	amount, err := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
	return amount, err == nil
}

// otherCurrency is the code that a match names and that is not the given one; "" if none.
func otherCurrency(m []string, currency string) string {
	for _, code := range []string{m[1], m[3]} {
		if code = cmp.Or(currencySign[code], code); code != "" && code != currency {
			return code
		}
	}
	return ""
}

// foreign tells whether a tag is an amount in another currency: it is never
// added to the trip's amounts.
func foreign(tag, currency string) bool {
	m := amountTag.FindStringSubmatch(strings.TrimSpace(tag))
	return m != nil && otherCurrency(m, currency) != ""
}

// typicalCurrency is what typical prices and fees are in.
const typicalCurrency = "EUR"

// Price is what a unit of a tank counts as where a place states none: the
// trip's own price, or a typical one in euros. ok is false for a tank that is not
// paid by the unit.
func (t Trip) Price(tank string) (price float64, ok bool) {
	if v, own := t.Prices[tank]; own {
		return v, true
	}
	return services[tank].price, services[tank].price > 0
}

// moneyCaution says what typical amounts are worth in another currency; "" in euros.
func (t Trip) moneyCaution() string {
	if t.Currency == typicalCurrency {
		return ""
	}
	var typical []string
	for _, k := range t.Vehicle.Tanks {
		if _, own := t.Prices[k.ID]; own {
			continue
		}
		if v, ok := t.Price(k.ID); ok {
			typical = append(typical, fmt.Sprintf("%s %.2f %s/%s", k.Name, v, t.Currency, k.Unit))
		}
	}
	typical = append(typical, fmt.Sprintf("a night %.0f to %.0f %s", plainStay.fee, siteStay.fee, t.Currency))
	return fmt.Sprintf("All sums are in %[1]s. Where neither the data nor you say a price in %[1]s, a typical one in %[2]s counts with the same number (%[3]s): say your own prices. So do an hour's worth, the most for a night and what the hire agreement charges.",
		t.Currency, typicalCurrency, strings.Join(typical, ", "))
}

func contains(words []string, w string) bool {
	for _, s := range words {
		if strings.EqualFold(s, w) {
			return true
		}
	}
	return false
}
