package units

// minor are digits after the point where they are not two: ISO 4217, list one; from memory.
var minor = map[string]int{"ISK": 0, "JPY": 0, "KRW": 0, "CLP": 0, "XOF": 0, "VND": 0, "TND": 3, "KWD": 3, "BHD": 3, "JOD": 3}

// MoneyDigits is how many digits after the point an amount of a currency is shown with.
func MoneyDigits(currency string) int {
	if d, ok := minor[currency]; ok {
		return d
	}
	return 2
}

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
