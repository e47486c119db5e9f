package trip

import (
	"regexp"
	"strconv"
	"strings"
)

// amountTag reads "12 EUR", "€12.50", "1,459 €/l", "12": a number with an
// optional currency before or after. Anything longer (per person, per day
// ranges) is not guessed at, except a trailing "/something".
var amountTag = regexp.MustCompile(`^(€|£|\$|[A-Z]{3})? ?([0-9]{1,5}(?:[.,][0-9]{1,3})?) ?(€|£|\$|[A-Z]{3})?(?: ?/ ?(\w+))?$`)

var currencySign = map[string]string{"€": "EUR", "£": "GBP", "$": "USD"}

// parseAmount reads a price or charge tag. ok is false unless it is one plain
// amount in the given currency (or names no currency) per one of the given
// units (or names none).
func parseAmount(tag, currency string, units ...string) (amount float64, ok bool) {
	m := amountTag.FindStringSubmatch(strings.TrimSpace(tag))
	if m == nil {
		return 0, false
	}
	for _, cur := range []string{m[1], m[3]} {
		if sign, found := currencySign[cur]; found {
			cur = sign
		}
		if cur != "" && cur != currency {
			return 0, false
		}
	}
	if m[4] != "" && !contains(units, m[4]) {
		return 0, false
	}
	amount, err := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
	return amount, err == nil
}

func contains(words []string, w string) bool {
	for _, s := range words {
		if strings.EqualFold(s, w) {
			return true
		}
	}
	return false
}
