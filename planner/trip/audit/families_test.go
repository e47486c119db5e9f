package audit_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/triptest"
)

var update = flag.Bool("update", false, "rewrite testdata/families.golden; work it out by hand before you commit it")

// families are three fortnights whose every number is worked out by hand in testdata/families.golden.
// The vehicle states its uses: see [triptest.Plain].
func families() map[string]func(*trip.Trip) {
	return map[string]func(*trip.Trip){
		"a couple in July, showers at the sites": func(tr *trip.Trip) { tr.Party.Showers = "sites" },
		"four in August, showers aboard": func(tr *trip.Trip) {
			tr.Party, tr.Start = trip.Party{Adults: 2, Children: 2, Showers: "aboard", Toilet: "aboard", Cooking: "aboard"}, "2027-08-02"
		},
		"a couple in January, gas by the litre": func(tr *trip.Trip) {
			tr.Party.Showers, tr.Start = "sites", "2027-01-11"
			for i := range tr.Vehicle.Tanks {
				if tr.Vehicle.Tanks[i].ID == "lpg" {
					tr.Vehicle.Tanks[i].Use = trip.Use{PerNight: 2}
				}
			}
		},
	}
}

func TestFamilies(t *testing.T) {
	var b strings.Builder
	for _, name := range []string{"a couple in July, showers at the sites", "four in August, showers aboard", "a couple in January, gas by the litre"} {
		tr := triptest.Eastwards(300)
		tr.Start, tr.Stays.MinNights, tr.Stays.MaxNights, tr.Day.MaxKm = "2027-07-05", 14, 14, 120
		families()[name](&tr)
		var places []trip.Place
		for i, km := range []float64{100, 200} {
			p := triptest.At([]string{"n1", "n2"}[i], "campsite", km, 0, triptest.Yes("fresh"), triptest.Yes("grey"), triptest.Yes("cassette"))
			p.Stay = &trip.Stay{HookUp: trip.Yes, Charge: []string{"20 EUR", "25 EUR"}[i], Showers: trip.Yes, Toilets: trip.Yes}
			places = append(places, p)
		}
		places = append(places, triptest.At("n3", "fuel", 150, 0, triptest.Yes("diesel"), triptest.Yes("def"), triptest.Yes("lpg")))
		it, err := answer.Trip(t.Context(), tr, places, answer.Options{})
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&b, "== %s: %s, %.2f EUR\n", name, it.Status, it.Cost)
		for _, w := range it.Why {
			fmt.Fprintf(&b, "%s\n", triptest.Line(w.Says))
		}
		for _, d := range it.Days {
			for _, x := range d.Due {
				for _, task := range x.Tasks {
					fmt.Fprintf(&b, "day %2d %s: %s %s %.1f, from %.1f to %.1f\n", d.Number, x.Stop, task.Verb, task.Tank, task.Amount, task.Before, task.After)
				}
			}
			for _, c := range d.Calls {
				for _, task := range c.Tasks {
					if task.Night == 0 {
						fmt.Fprintf(&b, "day %2d %s: %s %s %.1f, from %.1f to %.1f\n", d.Number, c.Stop, task.Verb, task.Tank, task.Amount, task.Before, task.After)
					}
				}
				if c.Night {
					fmt.Fprintf(&b, "day %2d %s: %d nights\n", d.Number, c.Stop, c.Nights)
				}
			}
		}
	}
	file := filepath.Join("testdata", "families.golden")
	if *update {
		if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	// What is explained stands after a # in the golden, on lines of its own.
	var lines []string
	for line := range strings.Lines(string(want)) {
		if !strings.HasPrefix(line, "#") {
			lines = append(lines, line)
		}
	}
	if got := b.String(); got != strings.Join(lines, "") {
		t.Errorf("got\n%s\nwant\n%s", got, strings.Join(lines, ""))
	}
}
