package life

import (
	"fmt"
	"math"
	"testing"
)

// A published figure: a range or a value, who published it, and what the model
// says to the same case. Seen: read on the page named; memory: not checked
// again; practice: common practice, no source.
type published struct {
	what, unit string
	low, high  float64
	source     string
	model      func(t *testing.T) float64
}

func stayOf(t *testing.T, change func(*Model, *Stay), read func(Night) float64) float64 {
	m, s := couple(), Stay{At: bavaria, YearDay: midMonth(7)}
	change(&m, &s)
	return read(mustStay(t, m, s))
}

func part(u Use, name string) float64 {
	for _, p := range u.Parts {
		if p.Name == name {
			return p.Amount
		}
	}
	return 0
}

var alpineWinter = Stay{At: Where{Lat: 47.3, Lon: 11.4, AltM: new(1100.0)}, YearDay: midMonth(1)}

// TestPublishedFigures prints one table: what was published, and what the
// model says. The model may be 15 % outside the published range; of a single
// value it may be 15 % off.
func TestPublishedFigures(t *testing.T) {
	const off = 0.15
	for _, p := range []published{
		{"diesel, panel van", "L/100 km", 8, 11, "seen: vanamericana.ch", func(t *testing.T) float64 {
			return mustEngine(t, PanelVan, 3300, 0).per100(3300, ReferenceProfile()...)
		}},
		{"diesel, coachbuilt over a year", "L/100 km", 10, 10, "seen: exsis55.com, two vehicles, at most", func(t *testing.T) float64 {
			return mustEngine(t, LowProfile, 3300, 0).per100(3300, ReferenceProfile()...)
		}},
		{"diesel, over-cab more than low-profile", "L/100 km", 1.5, 2, "seen: Höh, Wohnmobil-Handbuch", func(t *testing.T) float64 {
			e := mustEngine(t, LowProfile, 3300, 0)
			over := e
			over.DragM2 = e.DragM2 * 1.40 / 1.125
			return over.per100(3300, ReferenceProfile()...) - e.per100(3300, ReferenceProfile()...)
		}},
		{"diesel at 100 km/h", "L/100 km", 11.1, 11.1, "calculated elsewhere: speed table, efficiency 0.36", func(*testing.T) float64 {
			return Engine{2.4, 0.36}.per100(3300, Section{Km: 100, SpeedKmh: 100}) - auxiliaryKW*3.6/(0.36*dieselMJ)
		}},
		{"diesel at 80 km/h", "L/100 km", 8.0, 8.0, "calculated elsewhere: speed table", func(*testing.T) float64 {
			return Engine{2.4, 0.36}.per100(3300, Section{Km: 100, SpeedKmh: 80}) - auxiliaryKW*3.6/0.8/(0.36*dieselMJ)
		}},
		{"diesel at 120 km/h", "L/100 km", 14.9, 14.9, "calculated elsewhere: speed table", func(*testing.T) float64 {
			return Engine{2.4, 0.36}.per100(3300, Section{Km: 100, SpeedKmh: 120}) - auxiliaryKW*3.6/1.2/(0.36*dieselMJ)
		}},
		{"exhaust fluid of 18 L lasts", "miles", 1200, 1200, "practice, until the first warning, 2,400 km before the end (totalenergies.cz)", func(t *testing.T) float64 {
			m := couple()
			uses, err := m.Drive(ReferenceProfile())
			if err != nil {
				t.Fatal(err)
			}
			return (18/(uses.Of("def").Likely/100) - 2400) * 0.621371
		}},
		{"exhaust fluid, 1,000 km", "L", 1, 7, "seen: autoseeker 1–2; 2–6 % of the diesel", func(t *testing.T) float64 {
			uses, _ := couple().Drive(ReferenceProfile())
			return 10 * uses.Of("def").Likely
		}},
		{"fridge on gas, summer day", "g/h", 10, 25, "seen: vehicle manual of 2012, p. 81", func(t *testing.T) float64 {
			return stayOf(t, func(*Model, *Stay) {}, func(n Night) float64 { return part(n.Of("lpg"), "fridge") * propaneKgL * 1000 / 24 })
		}},
		{"fridge: 11 kg last", "weeks", 3, 3, "seen: womopedia", func(t *testing.T) float64 {
			return stayOf(t, func(_ *Model, s *Stay) { s.At = Where{Lat: 38, Lon: -3, AltM: new(600.0)} }, func(n Night) float64 { return 11 / (part(n.Of("lpg"), "fridge") * propaneKgL) / 7 })
		}},
		{"heater at work, winter", "g/h", 170, 490, "seen: vehicle manual of 2012, p. 81", func(t *testing.T) float64 {
			n := mustStay(t, couple(), alpineWinter)
			return 1000 * part(n.Of("lpg"), "heating") * propaneKgL / 16 // it runs two thirds of the time
		}},
		{"heater of 1 kW", "g/h", 77.7, 77.7, "calculated: 1 kWh ÷ 12.87 kWh/kg", func(*testing.T) float64 { return 1000 / (Gas{}).KWhPerKg() }},
		{"boiler of 10 L by 45 K", "g", 47, 47, "calculated at 87 %", func(*testing.T) float64 {
			return 10 * waterWhLK * 45 / (Gas{}).KWhPerKg() / heaterShare
		}},
		{"frost: 11 kg last", "days", 2, 4, "practice", func(t *testing.T) float64 {
			return 11 / (mustStay(t, couple(), alpineWinter).Of("lpg").Likely * propaneKgL)
		}},
		{"summer: 11 kg last", "weeks", 2, 3, "practice", func(t *testing.T) float64 {
			return stayOf(t, func(*Model, *Stay) {}, func(n Night) float64 { return 11 / (n.Of("lpg").Likely * propaneKgL) / 7 })
		}},
		{"cooking for two", "kg/day", 0.1, 0.2, "memory", func(t *testing.T) float64 {
			return stayOf(t, func(*Model, *Stay) {}, func(n Night) float64 { return part(n.Of("lpg"), "cooking") * propaneKgL })
		}},
		{"diesel heater at work", "L/h", 0.2, 0.5, "seen: vanamericana.ch", func(t *testing.T) float64 {
			m := couple()
			m.Vehicle.Heater = DieselHeater
			return mustStay(t, m, alpineWinter).Of("diesel").Likely / 16
		}},
		{"careful crew, short showers", "L/day", 45, 45, "seen: fergsonthemove, 180 L last 4 days; counted as two", func(t *testing.T) float64 {
			// Showers at sites where there are none: 20 L each, and a short shower of 4 L.
			return stayOf(t, func(m *Model, _ *Stay) { m.Party.Showers = "sites" }, func(n Night) float64 { return n.Of("fresh").Likely + 2*4 })
		}},
		{"careless crew, four showers", "L in 30 h", 100, 100, "seen: campertraileraustralia, less than 30 h; counted as two", func(t *testing.T) float64 {
			return stayOf(t, func(m *Model, _ *Stay) { m.Party.Showers = "sites" }, func(n Night) float64 { return n.Of("fresh").Likely*30/24 + 4*showerL })
		}},
		{"frugal", "L/day and person", 10, 10, "memory", func(t *testing.T) float64 {
			return stayOf(t, func(m *Model, _ *Stay) { m.Party.Showers = "frugal" }, func(n Night) float64 { return n.Of("fresh").Likely / 2 })
		}},
		{"with the site's showers", "L/day and person", 8, 10, "memory", func(t *testing.T) float64 {
			return stayOf(t, func(m *Model, s *Stay) { m.Party.Showers, s.Showers = "sites", true }, func(n Night) float64 { return n.Of("fresh").Likely / 2 })
		}},
		{"cassette of 17 L, two people", "days", 3, 5, "seen: caravanning101", func(t *testing.T) float64 {
			return stayOf(t, func(*Model, *Stay) {}, func(n Night) float64 { return 17 / n.Of("cassette").Likely })
		}},
		{"cassette of 19 L, family of five", "days", 2, 3, "seen: gorv", func(t *testing.T) float64 {
			return stayOf(t, func(m *Model, _ *Stay) { m.Party = Party{Adults: 2, Children: 3} }, func(n Night) float64 { return 19 / n.Of("cassette").Likely })
		}},
		{"grey of fresh", "share", 0.85, 0.95, "memory", func(t *testing.T) float64 {
			return stayOf(t, func(*Model, *Stay) {}, func(n Night) float64 { return n.Of("grey").Likely / n.Of("fresh").Likely })
		}},
		{"light use without compressor fridge", "Ah/day", 5, 7, "seen: 2045.co.uk, measured", func(*testing.T) float64 { return standbyAh + lightAh }},
		{"absorption fridge, all loads", "Ah/day", 20, 40, "memory", func(t *testing.T) float64 {
			return stayOf(t, func(*Model, *Stay) {}, func(n Night) float64 { return n.Of("battery").Likely })
		}},
		{"compressor fridge, all loads", "Ah/day", 50, 80, "memory", func(t *testing.T) float64 {
			return stayOf(t, func(m *Model, _ *Stay) { m.Vehicle.Fridge = Compressor }, func(n Night) float64 { return n.Of("battery").Likely })
		}},
		{"heater fan, winter", "Ah/day", 10, 20, "memory", func(t *testing.T) float64 {
			return part(mustStay(t, couple(), alpineWinter).Of("battery"), "heater fan")
		}},
		{"hook-up of 6 A", "kW", 1.38, 1.38, "calculated: 230 V × 6 A", func(*testing.T) float64 { return NewHookUp(6, Mains{}, 0).LimitW / 1000 }},
		{"hook-up of 10 A", "kW", 2.30, 2.30, "calculated", func(*testing.T) float64 { return NewHookUp(10, Mains{}, 0).LimitW / 1000 }},
		{"hook-up of 16 A", "kW", 3.5, 3.68, "seen: practicalcaravan 3.5; calculated 3.68", func(*testing.T) float64 { return NewHookUp(16, Mains{}, 0).LimitW / 1000 }},
		{"1 kW takes", "A", 4.3, 4.3, "seen: silverstonecampsites", func(*testing.T) float64 { return 1000 / MainsV }},
		{"grade 3 holds 20 °C at −15 °C with", "kW", 2, 4, "memory: heaters of 4 kW do it", func(*testing.T) float64 { return shell(3).LossWPerK() * 35 / 1000 }},
		{"grade 2, 0 to 20 °C with 4 kW", "h", 0, 2, "seen: EN 1646-1 (campingkaufberatung.de, niese-caravan.de)", func(*testing.T) float64 { return shell(2).HeatUpH(4000, 0, 20) }},
		{"grade 3, −15 to 20 °C with 4 kW", "h", 0, 4, "seen: EN 1646-1 (campingkaufberatung.de, niese-caravan.de)", func(*testing.T) float64 { return shell(3).HeatUpH(4000, -15, 20) }},
		{"panel of 100 W, Munich in June", "Ah/day", 28, 36, "memory: 5.4 kWh/m² × 0.7–0.85", func(*testing.T) float64 { return PanelAh(100, 48.1, 166, 0) }},
	} {
		got := p.model(t)
		verdict := "inside"
		switch {
		case got < p.low:
			verdict = fmt.Sprintf("%+.1f %%", 100*(got/p.low-1))
		case got > p.high:
			verdict = fmt.Sprintf("%+.1f %%", 100*(got/p.high-1))
		}
		t.Logf("%-45s %8.2f %-16s published %8.2f – %-8.2f %-8s %s", p.what, got, p.unit, p.low, p.high, verdict, p.source)
		if math.IsNaN(got) || got < p.low*(1-off) || got > p.high*(1+off) {
			t.Errorf("%s: %.3g %s, published %.3g–%.3g (%s)", p.what, got, p.unit, p.low, p.high, p.source)
		}
	}
}
