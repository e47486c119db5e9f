package life

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ullage/planner/fact"
)

// couple is two people in a 6.8 m low-profile that heats with gas.
func couple() Model {
	return Model{
		Vehicle: Vehicle{Body: LowProfile, LoadedKg: 3300, Shell: shell(3), Heater: LPGHeater, ElectricW: 2000, Fridge: Absorption, HasLPG: true,
			Battery: Battery{Chemistry: LeadAcid, PlateAh: 95, DriveA: SplitChargeA, ChargerA: 15}},
		Party: Party{Adults: 2},
	}
}

func mustStay(t interface{ Fatal(...any) }, m Model, s Stay) Night {
	n, err := m.Stay(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

var bavaria = Where{Lat: 47.9, Lon: 11.4, AltM: new(700.0)}

func TestStay(t *testing.T) {
	m := couple()
	winter := Stay{At: bavaria, YearDay: midMonth(1)}
	summer := Stay{At: bavaria, YearDay: midMonth(7)}
	hooked := winter
	hooked.HookUp, hooked.Amps = true, 10
	for _, s := range []Stay{winter, hooked, summer} {
		n := mustStay(t, m, s)
		t.Logf("%.1f °C, %.1f kWh heat, %.1f kWh water", n.Air.MeanC, n.HeatKWh, n.WaterKWh)
		for _, u := range n.Uses {
			if Source(u.Tank).Nothing() {
				t.Errorf("%s has no source", u.Tank)
			}
			if u.Likely != 0 {
				t.Logf("  %-8s %6.2f, planned %6.2f: %v", u.Tank, u.Likely, u.Planned(0.9, 3), u.Parts)
			}
		}
	}
	w, h, s := mustStay(t, m, winter), mustStay(t, m, hooked), mustStay(t, m, summer)
	if !(w.Of("lpg").Likely > 2.5*h.Of("lpg").Likely && h.Of("lpg").Likely > 0) {
		t.Errorf("gas in winter %v L, on hook-up %v L", w.Of("lpg").Likely, h.Of("lpg").Likely)
	}
	if w.Of("lpg").Likely < 4*s.Of("lpg").Likely {
		t.Errorf("gas in winter %v L, in summer %v L", w.Of("lpg").Likely, s.Of("lpg").Likely)
	}
	if h.Of("battery").Likely >= 0 || s.Of("battery").Likely <= 0 {
		t.Error("hook-up does not charge, or life needs no current")
	}
}

// The hours of a day are shared out: what is on the pillar or at sea burns no gas, and
// more people need less heat.
func TestStayHours(t *testing.T) {
	m := couple()
	gas := func(change func(m *Model, s *Stay)) float64 {
		m, s := m, Stay{At: bavaria, YearDay: midMonth(1)}
		change(&m, &s)
		return mustStay(t, m, s).Of("lpg").Likely
	}
	plain := gas(func(*Model, *Stay) {})
	hook := func(hours float64) float64 {
		return gas(func(_ *Model, s *Stay) { s.HookUp, s.Amps, s.HookHours = true, 10, hours })
	}
	ferry := func(hours float64) float64 { return gas(func(_ *Model, s *Stay) { s.FerryHours = hours }) }
	if !(hook(24) < hook(16) && hook(16) < hook(4) && hook(4) < plain) || hook(0) != hook(usualHookHours) || hook(40) != hook(24) {
		t.Errorf("gas on the pillar for 24, 16, 4, 0 and 40 h: %v, %v, %v, %v, %v; without %v", hook(24), hook(16), hook(4), hook(0), hook(40), plain)
	}
	if !(ferry(12) < ferry(6) && ferry(6) < plain) || ferry(-5) != plain || ferry(30) != ferry(24) {
		t.Errorf("gas with 12, 6, −5, 30 and 24 h at sea: %v, %v, %v, %v, %v; without %v", ferry(12), ferry(6), ferry(-5), ferry(30), ferry(24), plain)
	}
	wheel := func(hours float64) float64 { return gas(func(_ *Model, s *Stay) { s.WheelHours = hours }) }
	if !(wheel(6) < wheel(0.5) && wheel(0.5) < plain) || wheel(-5) != plain || wheel(30) != wheel(24) {
		t.Errorf("gas with 6, half an, −5, 30 and 24 h at the wheel: %v, %v, %v, %v, %v; without %v", wheel(6), wheel(0.5), wheel(-5), wheel(30), wheel(24), plain)
	}
	heat := func(children int) float64 {
		m := m
		m.Party.Children = children
		return mustStay(t, m, Stay{At: bavaria, YearDay: midMonth(1)}).HeatKWh
	}
	if !(heat(2) < heat(1) && heat(1) < heat(0)) {
		t.Errorf("heat with 2, 1 and no children: %v, %v, %v", heat(2), heat(1), heat(0))
	}
}

// Each caution comes with what asks for it, and with nothing less.
func TestCautions(t *testing.T) {
	winter, summer := Stay{At: bavaria, YearDay: midMonth(1)}, Stay{At: bavaria, YearDay: midMonth(7)}
	for _, c := range []struct {
		name   string
		change func(m *Model, s *Stay)
		want   []fact.Kind
	}{
		{"propane, grade 3", func(*Model, *Stay) {}, []fact.Kind{Frosty}},
		{"summer", func(_ *Model, s *Stay) { *s = summer }, nil},
		{"no heater", func(m *Model, _ *Stay) { m.Vehicle.Heater = NoHeater; m.Vehicle.Shell.Grade = 1 }, nil},
		{"grade 2", func(m *Model, _ *Stay) { m.Vehicle.Shell.Grade = 2 }, []fact.Kind{Frosty, NotForFrost}},
		{"summer gas", func(m *Model, _ *Stay) { m.Vehicle.Gas.ButaneShare = 0.6 }, []fact.Kind{Frosty, GasScarce}},
		{"butane", func(m *Model, _ *Stay) { m.Vehicle.Gas.ButaneShare = 1 }, []fact.Kind{Frosty, GasStuck}},
		{"lithium", func(m *Model, _ *Stay) { m.Vehicle.Battery.Chemistry = LiFePO4 }, []fact.Kind{Frosty, LithiumCold}},
		{"lithium in summer", func(m *Model, s *Stay) { m.Vehicle.Battery.Chemistry = LiFePO4; *s = summer }, nil},
		{"water of 40 °C", func(m *Model, s *Stay) { m.Comfort.HotC = HotEnough; *s = summer }, []fact.Kind{Legionella}},
		{"water of 55 °C", func(m *Model, s *Stay) { m.Comfort.HotC = 55; *s = summer }, nil},
		{"hook-up", func(m *Model, s *Stay) { s.HookUp, s.Amps = true, 10; s.YearDay = summer.YearDay }, []fact.Kind{HookUpHere}},
	} {
		m, s := couple(), winter
		c.change(&m, &s)
		n := mustStay(t, m, s)
		var got []fact.Kind
		for _, f := range m.Cautions(n) {
			got = append(got, f.Kind)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s, %.1f °C at night: %q, want %q", c.name, n.Air.MinC, got, c.want)
		}
	}
	// By the degree: the valve opens below 3 °C, batteries and pipes freeze below 0 °C.
	m := couple()
	m.Vehicle.Shell.Grade, m.Vehicle.Battery.Chemistry = 2, LiFePO4
	for _, c := range []struct {
		cold float64
		want int
	}{{3, 0}, {2.9, 1}, {0, 1}, {-0.1, 3}} {
		if got := m.Cautions(Night{Air: Air{MinC: c.cold}}); len(got) != c.want {
			t.Errorf("%v °C: %+v, want %d", c.cold, got, c.want)
		}
	}
	n := mustStay(t, couple(), winter)
	if got, want := couple().Cautions(n)[0], fact.Of(Frosty, fact.V{"cold": fact.Celsius(n.Air.MinC), "valve": fact.Celsius(FrostDumpC)}); !got.Equal(want) {
		t.Errorf("frost: %+v, want %+v", got, want)
	}
}

// A band whose likely use is a gain may still be planned as a use.
func TestTurn(t *testing.T) {
	for _, c := range []struct {
		band Band
		want Turn
	}{{Band{1, 2, 3}, Used}, {Band{-3, -2, -1}, Gained}, {Band{-3, -2, 1}, Mixed}, {Band{-3, -2, 0}, Mixed}, {Band{0, 0, 3}, Used}} {
		if got := c.band.Turn(); got != c.want {
			t.Errorf("%+v: %s, want %s", c.band, got, c.want)
		}
	}
	if likely, planned := (Band{-3, -2, 1}).Sizes(); likely != 2 || planned != 1 {
		t.Errorf("sizes %v and %v, want 2 and 1", likely, planned)
	}
}

func TestDrive(t *testing.T) {
	m := couple()
	uses, err := m.Drive(ReferenceProfile())
	if err != nil {
		t.Fatal(err)
	}
	if d := uses.Of("diesel").Likely; math.Abs(d-10.5) > 1e-9 {
		t.Errorf("100 km take %v L, want the usual 10.5", d)
	}
	if d := uses.Of("def").Likely; math.Abs(d-0.42) > 1e-9 {
		t.Errorf("100 km take %v L of exhaust fluid, want 4 %%", d)
	}
	if b := uses.Of("battery").Likely; b >= 0 {
		t.Errorf("driving charges %v Ah", -b)
	}
	ferry, err := m.Drive([]Section{{Km: 200, Ferry: true}})
	if err != nil || ferry.Of("diesel").Likely != 0 || ferry.Of("battery").Likely != 0 {
		t.Errorf("a ferry uses %v, %v", ferry, err)
	}
	if _, err := m.Drive([]Section{{Km: 5}}); err == nil || !strings.Contains(err.Error(), "section 1") {
		t.Errorf("no speed: %v", err)
	}
}

func TestModelRefuses(t *testing.T) {
	for want, spoil := range map[string]func(*Model){
		"heater":    func(m *Model) { m.Vehicle.Heater = "wood" },
		"fridge":    func(m *Model) { m.Vehicle.Fridge = "" },
		"burns gas": func(m *Model) { m.Vehicle.HasLPG = false },
		"grade 4":   func(m *Model) { m.Vehicle.Shell.Grade = 4 },
		"measures":  func(m *Model) { m.Vehicle.Shell.LengthM = math.NaN() },
		"chemistry": func(m *Model) { m.Vehicle.Battery.Chemistry = "salt" },
		"wished":    func(m *Model) { m.Comfort.InsideC = 45 },
		"body":      func(m *Model) { m.Vehicle.Body = "" },
		"showers":   func(m *Model) { m.Party.Showers = "daily" },
		"exhaust":   func(m *Model) { m.Vehicle.DEFShare = 3 },
	} {
		m := couple()
		spoil(&m)
		if _, err := m.Stay(Stay{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", want, err)
		}
	}
}

// More people never use less, colder never needs less gas, hook-up never needs
// more, a site's showers never need more water.
func TestStayProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := couple()
		m.Vehicle.Shell.Grade = rapid.IntRange(0, 3).Draw(t, "grade")
		m.Vehicle.Heater = rapid.SampledFrom([]string{LPGHeater, DieselHeater, NoHeater}).Draw(t, "heater")
		m.Vehicle.Fridge = rapid.SampledFrom([]string{Absorption, Compressor, NoFridge}).Draw(t, "fridge")
		m.Vehicle.Battery.PanelW = rapid.SampledFrom([]float64{0, 100, 300}).Draw(t, "panel")
		m.Party = Party{Adults: rapid.IntRange(1, 4).Draw(t, "adults"), Children: rapid.IntRange(0, 3).Draw(t, "children"),
			Showers: rapid.SampledFrom([]string{"", "sites", "frugal"}).Draw(t, "showers"), Toilet: rapid.SampledFrom([]string{"", "sites"}).Draw(t, "toilet"),
			Cooking: rapid.SampledFrom([]string{"", "little"}).Draw(t, "cooking")}
		s := Stay{At: Where{rapid.Float64Range(35, 70).Draw(t, "lat"), rapid.Float64Range(-10, 30).Draw(t, "lon"), new(rapid.Float64Range(0, 1500).Draw(t, "alt"))},
			YearDay: rapid.IntRange(1, 365).Draw(t, "day"), WheelHours: rapid.Float64Range(0, 8).Draw(t, "wheel"),
			HookUp: rapid.Bool().Draw(t, "hookup"), Amps: rapid.SampledFrom([]float64{0, 6, 10, 16}).Draw(t, "A"), Showers: rapid.Bool().Draw(t, "showers there")}
		n := mustStay(t, m, s)
		never := func(what, tank string, more, less Night) {
			if more.Of(tank).Likely < less.Of(tank).Likely-1e-9 {
				t.Errorf("%s: %s %v instead of %v", what, tank, more.Of(tank).Likely, less.Of(tank).Likely)
			}
		}
		crowd := m
		crowd.Party.Adults++
		for _, tank := range []string{"fresh", "grey", "cassette"} {
			never("one more", tank, mustStay(t, crowd, s), n)
		}
		if !s.HookUp && m.Vehicle.Heater == NoHeater {
			never("one more", "battery", mustStay(t, crowd, s), n)
			never("one more", "lpg", mustStay(t, crowd, s), n)
		}
		higher := s
		higher.At.AltM = new(*s.At.AltM + 300) // 2 °C colder
		if m.Vehicle.Fridge != Absorption {    // whose gas the cold saves
			never("colder", "lpg", mustStay(t, m, higher), n)
		}
		never("colder", "diesel", mustStay(t, m, higher), n)
		if n2 := mustStay(t, m, higher); n2.HeatKWh < n.HeatKWh {
			t.Error("colder needs less heat")
		}
		hooked := s
		hooked.HookUp = true
		for _, tank := range []string{"lpg", "diesel", "battery"} {
			never("without hook-up", tank, n, mustStay(t, m, hooked))
		}
		washed := s
		washed.Showers = true
		never("without the site's showers", "fresh", n, mustStay(t, m, washed))
		for _, u := range n.Uses {
			if u.Tank != "battery" && u.Likely < 0 || math.IsNaN(u.Likely) {
				t.Errorf("%s uses %v", u.Tank, u.Likely)
			}
			if u.Planned(0.9, 3) < u.Likely-1e-9 {
				t.Errorf("%s: planned with less than likely", u.Tank)
			}
		}
		if n.Of("grey").Likely > n.Of("fresh").Likely {
			t.Error("more grey than fresh")
		}
	})
}
