package life

import (
	"cmp"
	"fmt"
	"math"
	"strings"
)

// This file holds the sentences that package trip still takes as text. It goes as
// soon as trip tells facts: [Model.Cautions], [HookUp.Says], [Lesson.Says], [Heavier],
// [Load.Says], [SourceOf], package advice.

// texts are cautions that belong to the season and the wishes; those of a kind of stop are
// in [HowTos].
func (m Model) texts(n Night) []string {
	var out []string
	v := m.Vehicle
	if n.Air.MinC < FrostDumpC && v.Heater != NoHeater {
		out = append(out, fmt.Sprintf("Nights near %.0f °C: below about 3 °C a valve empties the boiler unless the heater runs, and outdoor taps and drains may be shut off. The handbook says how to keep water from freezing.", n.Air.MinC))
	}
	if v.HasLPG {
		if w := v.Gas.text(math.Floor(n.Air.MinC)); w != "" {
			out = append(out, w)
		}
	}
	if v.Battery.Chemistry == LiFePO4 && n.Air.MinC < 0 {
		out = append(out, "A lithium battery must not be charged below 0 °C: keep its place warm before you drive off or plug in, as the handbook says.")
	}
	if m.Comfort.HotC != 0 && m.Comfort.HotC < 55 {
		out = append(out, "Water kept at 40 °C can grow legionella: heat it to 60 °C before you shower, and mind scalding.")
	}
	if n.Air.MinC < 0 && v.Shell.Grade < 3 && v.Heater != NoHeater {
		out = append(out, "This vehicle is not tested for hard frost (EN 1646-1 grade 3): expect cold corners and frozen waste pipes.")
	}
	if n.HookUp != nil {
		out = append(out, n.HookUp.texts()...)
	}
	return out
}

// text says what the cold does to the gas; "" if nothing.
func (g Gas) text(outsideC float64) string {
	switch share := g.Evaporates(outsideC); {
	case share > 0.97:
		return ""
	case share < 0.05:
		return fmt.Sprintf("At %.0f °C this gas does not evaporate: fill propane or a winter mixture before the cold. A licensed fitter and the handbook decide what may be filled.", outsideC)
	default:
		return fmt.Sprintf("At %.0f °C only about %.0f %% of a filling comes out: butane stays liquid below 0 °C. Fill propane or a winter mixture, and count on less.", outsideC, 100*share)
	}
}

// texts is the sharing in words.
func (h HookUp) texts() []string {
	var out []string
	supply := fmt.Sprintf("The pillar gives %.0f A, %.2f kW.", h.Amps, h.LimitW/1000)
	if h.SupplyIsAGuess {
		supply = fmt.Sprintf("The supply is not known: plan with %.0f A, %.2f kW, and read the pillar.", h.Amps, h.LimitW/1000)
	}
	out = append(out, supply)
	switch {
	case h.HeatNeedW == 0:
	case h.HeaterW == 0:
		out = append(out, "No electric heating on this supply: gas or diesel heats.")
	case h.GasHeatW > 0:
		out = append(out, fmt.Sprintf("Heater on the %.0f kW step; the other %.1f kW come from gas or diesel.", h.HeaterW/1000, h.GasHeatW/1000))
	default:
		out = append(out, fmt.Sprintf("Heater on the %.0f kW step is enough.", h.HeaterW/1000))
	}
	switch {
	case h.KettleBeside:
		out = append(out, "A travel kettle of 1 kW may run beside it; a household's only with the heater off.")
	case h.HeaterW > 0:
		out = append(out, "Switch the heater off while a kettle boils.")
	}
	if !h.KettleAlone {
		out = append(out, "A household kettle of over 2 kW trips this supply: boil on the cooker.")
	}
	return out
}
func (l Lesson) text(o Observation) string {
	if math.IsInf(o.To.SD, 1) {
		if math.Abs(l.After.Factor-l.Before.Factor) < 0.01 {
			return "The lamp says what was expected."
		}
		return fmt.Sprintf("The lamp was not expected: the plan now counts with %.0f %% of the usual.", 100*l.After.Factor)
	}
	text := fmt.Sprintf("Expected to use %.0f %[2]s, the gauge says %.0[3]f %[2]s: %.0[4]f %% of the difference is believed, the plan now counts with %.0[5]f %% of the usual.",
		l.Expected, cmp.Or(o.Unit, "units"), l.Used, 100*l.Weight, 100*l.After.Factor)
	if l.Bounded {
		text += " That is the limit of what is believed: check the gauge, the valves and what was entered."
	}
	return text
}

// MassSays is what is different on the road for a vehicle of an allowed mass; ""
// for a light one, which has the limits of cars.
func MassSays(allowedKg float64) string {
	if !(allowedKg > LightKg) {
		return ""
	}
	var rows []string
	for _, l := range heavy {
		rows = append(rows, fmt.Sprintf("%s %.0f/%.0f", l.country, l.rural, l.motorway))
	}
	return fmt.Sprintf("This vehicle may weigh %.0f kg. Over 3.5 t (here up to 7.5 t) general limits are lower than a car's, outside towns and on motorways in km/h: %s; the plan counts with %.0f km/h at most. "+
		"Another licence, other tolls, and bans for heavy vehicles can apply. Signs, national law and the vehicle's papers decide.", allowedKg, strings.Join(rows, ", "), TopKmh(allowedKg))
}

// Source says in a line where the model's numbers for a tank come from, for
// people; "" for an unknown tank. The constants name their sources one by one.
func Source(tank string) string {
	switch tank {
	case "diesel":
		return "rolling, air, slopes and stops (physics), set to the vehicle's average; without one: van 9 L/100 km, low-profile 10.5 L/100 km, integrated 11 L/100 km, over-cab 12 L/100 km, ±15 %, from memory; owners' logs: van 8–11 L/100 km, coachbuilt at most 10 L/100 km"
	case "def":
		return "4 % of the diesel, from memory; published shares run from 1 to 10 %"
	case "lpg":
		return "heating from the long-term temperature of the place (NCEP-NCAR 1981–2010) and the vehicle's heat loss (EN 1646-1 grade, from memory); fridge 10–25 g/h (a vehicle manual of 2012); cooking 0.1–0.2 kg/day for two, from memory"
	case "fresh", "grey":
		return "drinking 3 L, cooking 2 L, dishes 5 L, washing 9 L, flushing 1 L, shower 15 L a person and day, from memory within published parts; a careful crew's log: 45 L/day"
	case "cassette":
		return "2.5 L a person and day with rinsing, 1.5 L with site toilets; published: 3–5 days a cassette"
	case "battery":
		return "7 Ah/day measured without compressor fridge and devices; the rest calculated or from memory; 15 A split charge, 30 A booster, from memory"
	}
	return ""
}
