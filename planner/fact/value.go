package fact

// A Value is one number, name or list of a fact. Use the functions below to
// make one; the zero value is an empty text. They are not put into their
// callers: a page has hundreds, and each would hold the whole of a value once more.
type Value struct {
	Is     Is      `json:"is,omitempty"`
	N      float64 `json:"n,omitempty"`
	Digits int     `json:"digits,omitempty"` // after the point, in the unit that it is stored in
	Unit   string  `json:"unit,omitempty"`   // of a quantity; the currency of money; what a rate is for
	S      string  `json:"s,omitempty"`
	Per    string  `json:"per,omitempty"` // of a rate: its currency
	List   []Value `json:"list,omitempty"`
	Fact   *Fact   `json:"fact,omitempty"`
}

// Is says what a value is.
type Is string

const (
	IsText     Is = ""         // S as the data or a person gave it, never translated
	IsTerm     Is = "term"     // S names an entry of the catalogue
	IsTank     Is = "tank"     // S is its name, Unit its id
	IsCount    Is = "count"    // N things
	IsQuantity Is = "quantity" // N of Unit
	IsMark     Is = "mark"     // N km along the route
	IsMoney    Is = "money"    // N of Unit
	IsRate     Is = "rate"     // N of Per for one Unit
	IsClock    Is = "clock"    // N minutes since 00:00 of any day
	IsSpan     Is = "span"     // N minutes
	IsDate     Is = "date"     // S as 2026-06-12
	IsShare    Is = "share"    // N of 1
	IsList     Is = "list"     // of values, joined as the language joins
	IsFact     Is = "fact"     // a clause
)

// Text is a name or a tag as the data or a person gave it.
//
//go:noinline
func Text(s string) Value { return Value{S: s} }

// Term is a word of the catalogue: Term("place.fuel").
//
//go:noinline
func Term(key string) Value { return Value{Is: IsTerm, S: key} }

// Tank is a tank by its id, and the name that the vehicle gives it.
//
//go:noinline
func Tank(id, name string) Value { return Value{Is: IsTank, Unit: id, S: name} }

// Count is a number of things; it chooses plural forms.
//
//go:noinline
func Count(n int) Value { return Value{Is: IsCount, N: float64(n)} }

// Quantity is a measured number in the unit that it is stored in: km, km/h, m, L,
// L/100 km, °C, kg, kWh, Ah, W, A, V, or another symbol, which is shown as it is.
//
//go:noinline
func Quantity(n float64, unit string, digits int) Value {
	return Value{Is: IsQuantity, N: n, Unit: unit, Digits: digits}
}

// Km is a distance.
//
//go:noinline
func Km(n float64, digits int) Value { return Quantity(n, "km", digits) }

// Metres is a height, a width, a short distance.
//
//go:noinline
func Metres(n float64, digits int) Value { return Quantity(n, "m", digits) }

// Kg is a mass.
//
//go:noinline
func Kg(n float64) Value { return Quantity(n, "kg", 0) }

// Celsius is a temperature.
//
//go:noinline
func Celsius(n float64) Value { return Quantity(n, "°C", 0) }

// Mark is a position along the route, in km.
//
//go:noinline
func Mark(km float64, digits int) Value { return Value{Is: IsMark, N: km, Digits: digits} }

// Money is a sum in a currency (ISO 4217).
//
//go:noinline
func Money(n float64, currency string) Value { return Value{Is: IsMoney, N: n, Unit: currency} }

// Rate is a price for one unit.
//
//go:noinline
func Rate(n float64, currency, unit string) Value {
	return Value{Is: IsRate, N: n, Per: currency, Unit: unit}
}

// Clock is a time of day: minutes since 00:00 of any day.
//
//go:noinline
func Clock(min float64) Value { return Value{Is: IsClock, N: min} }

// Span is a length of time in minutes.
//
//go:noinline
func Span(min float64) Value { return Value{Is: IsSpan, N: min} }

// Date is a local date, 2026-06-12.
//
//go:noinline
func Date(iso string) Value { return Value{Is: IsDate, S: iso} }

// Share is a part of one: 0.9 is nine of ten.
//
//go:noinline
func Share(n float64, digits int) Value { return Value{Is: IsShare, N: n, Digits: digits} }

// List is several values, joined as the language joins them.
func List(vs ...Value) Value { return Value{Is: IsList, List: vs} }

// Texts is a list of names or tags.
func Texts(names []string) Value { return Each(names, Text) }

// Each is a list of what of makes of each element.
func Each[T any](of []T, value func(T) Value) Value {
	v := Value{Is: IsList}
	for _, x := range of {
		v.List = append(v.List, value(x))
	}
	return v
}

// Clause is a fact within another.
//
//go:noinline
func Clause(f Fact) Value { return Value{Is: IsFact, Fact: &f} }
