package units

import "strings"

// minor are digits after the point where they are not two: ISO 4217, list one; from memory.
var minor = map[string]int{"ISK": 0, "JPY": 0, "KRW": 0, "CLP": 0, "XOF": 0, "VND": 0, "TND": 3, "KWD": 3, "BHD": 3, "JOD": 3}

// MoneyDigits is how many digits after the point an amount of a currency is shown with.
func MoneyDigits(currency string) int {
	if d, ok := minor[currency]; ok {
		return d
	}
	return 2
}

// ValidCurrency says whether a code is one of ISO 4217 that money is paid in.
func ValidCurrency(code string) bool {
	return len(code) == 3 && !strings.Contains(code, " ") && strings.Contains(currencies, code)
}

// currencies are the codes of ISO 4217 in use, apart from each other by a space. Source: Unicode CLDR, as ECMA-402's
// Intl.supportedValuesOf("currency") lists them (ICU 78), without units of account and those long withdrawn.
const currencies = "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF " +
	"CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL " +
	"HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD " +
	"MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG " +
	"QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD " +
	"TWD TZS UAH UGX USD UYU UZS VES VND VUV WST XAF XCD XCG XOF XPF YER ZAR ZMW ZWG"
