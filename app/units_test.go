package page

import (
	"strings"
	"testing"

	"ullage/app/field"
	"ullage/app/model"
)

// The units are the machine's: they plan nothing anew, and what is typed is
// kept in metric.
func TestUnitsOfTheForm(t *testing.T) {
	m := planned()
	was := m.Wanted
	m = then(then(m, model.FormToggled{}), model.Edited{Field: field.Units, Text: "american"})
	if m.Wanted != was {
		t.Errorf("other units want plan %d after %d", m.Wanted, was)
	}
	html := drawn(t, m)
	for _, want := range []string{"mile" + thin + "93", thin + "gal", "155.34", "68", "°F"} {
		if !strings.Contains(html, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if strings.Contains(html, ">km"+thin) {
		t.Error("the page still has kilometres")
	}
	m = then(m, model.Edited{Field: "max_km", Text: "100"})
	if !near(m.Trip.Day.MaxKm, 160.9344) || m.Wanted != was+1 {
		t.Errorf("100 miles are kept as %v km", m.Trip.Day.MaxKm)
	}
	m = then(m, model.Edited{Field: "price:diesel", Text: "6.43"})
	if !near(m.Trip.Prices["diesel"], 6.43/3.785411784) || !strings.Contains(drawn(t, m), "EUR/gal") {
		t.Errorf("6.43 a gallon are kept as %v a litre", m.Trip.Prices["diesel"])
	}
	if other := then(m, model.Edited{Field: "currency", Text: "nok"}); other.Trip.Currency != "NOK" || other.Trip.Prices != nil || m.Trip.Prices == nil {
		t.Errorf("in %s the prices in EUR stay: %v", other.Trip.Currency, other.Trip.Prices)
	}
	m = then(m, model.Edited{Field: "inside", Text: "64.4"})
	if !near(m.Trip.Comfort.InsideC, 18) {
		t.Errorf("64.4 °F are kept as %v °C", m.Trip.Comfort.InsideC)
	}
	if m = then(m, model.Edited{Field: "inside", Text: "20"}); !strings.Contains(m.Say.Fact(m.Wrong["inside"]), "41 to 86") {
		t.Errorf("20 °F inside: %v", m.Wrong["inside"])
	}
}
