package units

import (
	"math"
	"strconv"
)

// digits after the point where they are not two: ISO 4217, list one; from memory.
var digits = map[string]int{"ISK": 0, "JPY": 0, "KRW": 0, "CLP": 0, "XOF": 0, "VND": 0, "TND": 3, "KWD": 3, "BHD": 3, "JOD": 3}

// ValidCurrency says whether a code looks like one of ISO 4217: three capital
// letters. Whether it exists is not checked.
func ValidCurrency(code string) bool {
	if len(code) != 3 {
		return false
	}
	for _, c := range code {
		if c < 'A' || c > 'Z' {
			return false
		}
	}
	return true
}

// Money is an amount with its code: "12.50 EUR". Prices are never turned into
// another currency here: rates change, and the tool is used offline.
func Money(amount float64, code string) string {
	if math.IsNaN(amount) || math.IsInf(amount, 0) {
		return "– " + code
	}
	d, ok := digits[code]
	if !ok {
		d = 2
	}
	text := strconv.FormatFloat(amount, 'f', d, 64)
	if v, _ := strconv.ParseFloat(text, 64); v == 0 {
		text = strconv.FormatFloat(0, 'f', d, 64)
	}
	return text + " " + code
}
