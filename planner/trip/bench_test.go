package trip

import (
	"fmt"
	"testing"
	"time"
)

// BenchmarkBuild builds the problem of a long trip with 600 candidates, 200 of
// them for the night: with uses that tanks state, and with a vehicle that lives.
// At most 20 ms are wanted.
func BenchmarkBuild(b *testing.B) {
	for name, v := range map[string]Vehicle{"plain": plain(), "lives": Fleet()[0]} {
		b.Run(name, func(b *testing.B) {
			tr := eastwards(1200)
			tr.Vehicle = v
			benchmarkBuild(b, tr)
		})
	}
}

func benchmarkBuild(b *testing.B, tr Trip) {
	var places []Place
	for i := range 600 {
		p := at(fmt.Sprintf("n%d", i), "fuel", float64(2*i), float64(i%5), yes("diesel"), likely("def"))
		if i%3 == 0 {
			p = at(fmt.Sprintf("n%d", i), "campsite", float64(2*i), float64(i%4), yes("fresh"), yes("grey"), yes("cassette"))
			p.Stay = &Stay{HookUp: Yes}
		}
		p.Hours = "Mo-Sa 07:00-20:00"
		places = append(places, p)
	}
	opt := Options{Hours: func(p Place, from time.Time, days int) ([][2]float64, bool) {
		w := make([][2]float64, days)
		for d := range w {
			w[d] = [2]float64{float64(d)*1440 + 420, float64(d)*1440 + 1200}
		}
		return w, true
	}}
	b.ReportAllocs()
	for b.Loop() {
		built, err := Build(tr, places, opt)
		if err != nil {
			b.Fatal(err)
		}
		if len(built.Candidates) != 600 {
			b.Fatalf("%d candidates", len(built.Candidates))
		}
	}
}

// BenchmarkOnward reads seven gauges on the way and makes the rest of the trip.
func BenchmarkOnward(b *testing.B) {
	tr := eastwards(300)
	tr.Vehicle, tr.Party.Showers = Fleet()[0], "sites"
	site := at("n2", "campsite", 150, 0, yes("fresh"), yes("grey"), yes("cassette"))
	site.Stay = &Stay{HookUp: Yes}
	it, err := Plan(b.Context(), tr, []Place{site, at("n3", "fuel", 200, 0, yes("diesel")), at("n4", "dump", 290, 0, yes("grey"), yes("cassette"))}, Options{})
	if err != nil || len(it.Days) == 0 {
		b.Fatal(it.Why, err)
	}
	now := Now{Km: new(220.0), Time: "2026-06-13T11:00", Gauges: map[string]Shown{}}
	for _, k := range tr.Vehicle.Tanks {
		now.Gauges[k.ID] = Shown{Kind: "percent", Value: 50}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tr.Onward(it, now); err != nil {
			b.Fatal(err)
		}
	}
}
