package build

import (
	"fmt"
	"testing"
	"time"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"
)

// BenchmarkBuild builds the problem of a long trip with 600 candidates, 200 of
// them for the night: with uses that tanks state, and with a vehicle that lives.
// At most 20 ms are wanted.
func BenchmarkBuild(b *testing.B) {
	for name, v := range map[string]trip.Vehicle{"plain": triptest.Plain(), "lives": trip.Fleet()[0]} {
		b.Run(name, func(b *testing.B) {
			tr := triptest.Eastwards(1200)
			tr.Vehicle = v
			benchmarkBuild(b, tr)
		})
	}
}

func benchmarkBuild(b *testing.B, tr trip.Trip) {
	var places []trip.Place
	for i := range 600 {
		p := triptest.At(fmt.Sprintf("n%d", i), "fuel", float64(2*i), float64(i%5), triptest.Yes("diesel"), triptest.Likely("def"))
		if i%3 == 0 {
			p = triptest.At(fmt.Sprintf("n%d", i), "campsite", float64(2*i), float64(i%4), triptest.Yes("fresh"), triptest.Yes("grey"), triptest.Yes("cassette"))
			p.Stay = &trip.Stay{HookUp: trip.Yes}
		}
		p.Hours = "Mo-Sa 07:00-20:00"
		places = append(places, p)
	}
	opt := Options{Hours: func(p trip.Place, from time.Time, days int) ([][2]float64, bool) {
		w := make([][2]float64, days)
		for d := range w {
			w[d] = [2]float64{float64(d)*1440 + 420, float64(d)*1440 + 1200}
		}
		return w, true
	}}
	b.ReportAllocs()
	for b.Loop() {
		built, err := Trip(tr, places, opt)
		if err != nil {
			b.Fatal(err)
		}
		if len(built.Candidates) != 600 {
			b.Fatalf("%d candidates", len(built.Candidates))
		}
	}
}
