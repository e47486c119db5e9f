package trip

import (
	"cmp"
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
	LitreUnits = []string{"l", "litre", "liter"}
	NightUnits = []string{"night", "day", "24h", "vehicle"}
)

var currencySign = map[string]string{"€": "EUR", "£": "GBP", "$": "USD"}

// ParseAmount reads a price or charge tag. ok is false unless it is one plain
// amount in the given currency (or names no currency) per one of the given
// units (or names none).
func ParseAmount(tag, currency string, units ...string) (amount float64, ok bool) {
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

// Foreign tells whether a tag is an amount in another currency: it is never
// added to the trip's amounts.
func Foreign(tag, currency string) bool {
	m := amountTag.FindStringSubmatch(strings.TrimSpace(tag))
	return m != nil && otherCurrency(m, currency) != ""
}

// TypicalCurrency is what typical prices and fees are in.
const TypicalCurrency = "EUR"

// Price is what a unit of a tank counts as where a place states none: the
// trip's own price, or a typical one in euros. ok is false for a tank that is not
// paid by the unit.
func (t Trip) Price(tank string) (price float64, ok bool) {
	if v, own := t.Prices[tank]; own {
		return v, true
	}
	price = KindOfTank(tank).Price
	return price, price > 0
}

func contains(words []string, w string) bool {
	for _, s := range words {
		if strings.EqualFold(s, w) {
			return true
		}
	}
	return false
}
