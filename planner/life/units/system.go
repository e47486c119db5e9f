package units

// A System is which unit each quantity is shown in. A quantity that it does
// not name is shown as it is stored.
type System map[Quantity]string

// Metric, British and American are the usual choices; a person may mix.
func Metric() System { return System{} }

// British: miles and imperial miles per gallon, but litres, °C and kg.
func British() System {
	return System{Distance: "mi", Speed: "mph", Consumption: "mpg-imp", Length: "m"}
}

// American: miles, US gallons, °F, pounds, feet.
func American() System {
	return System{Distance: "mi", Speed: "mph", Volume: "gal-us", Consumption: "mpg-us", Temperature: "F", Mass: "lb", Length: "ft"}
}

// Unit is what a quantity is shown in; an unknown choice counts as none.
func (s System) Unit(q Quantity) Unit {
	if u, ok := Of(s[q]); ok && u.Quantity == q {
		return u
	}
	for _, u := range all {
		if u.Quantity == q {
			return u
		}
	}
	return Unit{Quantity: q, per: 1}
}
