package say

import (
	"strings"
	"testing"

	"ullage/planner/life/advice"
)

// What has to be said, and that each how-to ends with who decides.
func TestAdviceSaysWhatKeepsSafe(t *testing.T) {
	for key, words := range map[string][]string{
		"howto.diesel.care":                  {"gas off at the cylinder", "fridge on 12 V", "heater off", "no flames"},
		"howto.diesel.caution.gas_off":       {"gas off at the cylinder", "fridge on 12 V", "heater off"},
		"howto.diesel.caution.wrong":         {"Do not switch on the ignition", "call the hire desk"},
		"howto.def.care":                     {"Never", "exhaust fluid", "diesel"},
		"howto.def.caution.never_mix":        {"never", "do not start the engine"},
		"howto.lpg.care":                     {"off", "no flames", "no smoking", "80 %", "smell gas", "everyone out", "call for help"},
		"howto.lpg.caution.smell":            {"valves", "everyone out", "no switch", "light nothing", "call for help"},
		"howto.lpg.defer":                    {"licensed fitter"},
		"howto.fresh.care":                   {"marked for drinking water", "boil"},
		"howto.grey.care":                    {"never", "road gully", "toilet"},
		"howto.cassette.care":                {"Close the slide first", "gloves", "only at a disposal point", "septic-safe"},
		"howto.cassette.step.vent":           {"vent button while you pour"},
		"howto.battery.care":                 {"into the vehicle first, then into the pillar", "Unwind all"},
		"howto.battery.caution.tripped":      {"Do not open the pillar"},
		"howto.battery.caution.lithium_cold": {"Never", "0 °C"},
		"howto.battery.defer":                {"licensed electrician"},
		"howto.night.care":                   {"Carbon monoxide", "test the alarm", "never heat with the cooker"},
		"howto.night.caution.co":             {"Carbon monoxide", "test the alarm", "vents", "never heat with", "awning"},
		"howto.night.caution.co_signs":       {"headache", "everyone out", "call for help"},
		"howto.heating.care":                 {"flue", "never", "open flame"},
		"howto.heating.caution.driving":      {"gas off while driving", "approved"},
		"howto.hot_water.care":               {"legionella", "60 °C", "scalds"},
		"howto.hot_water.caution.scald":      {"child", "60 °C", "mix"},
		"howto.frost.caution.valve":          {"3 °C"},
		"howto.ferry.care":                   {"Gas off at the cylinder", "Nobody stays"},
		"howto.awning.caution.grill":         {"No grill, cooker or heater"},
		"howto.driving.care":                 {"height", "sign on the bridge decides", "15 min"},
		"howto.driving.caution.low":          {"sign", "decides, not the map", "stop"},
		"howto.driving.caution.heavy":        {"3500 kg", "FR 80 km/h (motorway 110 km/h)"},
		"check.set_off.gas":                  {"Gas off at the cylinder"},
		"check.arrival.alarm":                {"Carbon monoxide alarm tested"},
	} {
		text := Voice{}.Text(key, own()[key])
		for _, w := range words {
			if !strings.Contains(text, w) {
				t.Errorf("%s says %q, not %q", key, text, w)
			}
		}
	}
	for _, h := range advice.HowTos(nil) {
		if d := strings.ToLower(Voice{}.Fact(h.Defer)); !strings.Contains(d, "decide") || !(strings.Contains(d, "handbook") || strings.Contains(d, "rules") || strings.Contains(d, "law")) {
			t.Errorf("%s defers to nobody: %q", h.ID, d)
		}
		// One line at the stop: two or three short sentences, not the paragraph.
		if care := (Voice{}).Fact(h.Care); len(care) > 210 {
			t.Errorf("the care of %s is no line any more: %d bytes", h.ID, len(care))
		}
	}
}
