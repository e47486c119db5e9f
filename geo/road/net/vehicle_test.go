package net

import (
	"math"
	"testing"
)

func TestCloses(t *testing.T) {
	van := Vehicle{HeightM: 2.65, WidthM: 2.05, LengthM: 6, MassT: 3.5, AxleT: 2.1, MarginM: 0.1}
	heavy := Vehicle{HeightM: 3.4, WidthM: 2.35, LengthM: 8.8, MassT: 7.5, AxleT: 4.8, MarginM: 0.1}
	for _, tc := range []struct {
		name string
		v    Vehicle
		r    Road
		want Bar
	}{
		{"nothing stated", heavy, Road{}, Bar{}},
		{"too low", heavy, Road{Limits: Limits{HeightCm: 270}}, Bar{TooHigh, 2.7, 3.4, 0}},
		{"just high enough with the margin", van, Road{Limits: Limits{HeightCm: 275}}, Bar{}},
		{"within the margin", van, Road{Limits: Limits{HeightCm: 270}}, Bar{TooHigh, 2.7, 2.65, 0.1}},
		{"high enough", van, Road{Limits: Limits{HeightCm: 300}}, Bar{}},
		{"none stated to be needed", heavy, Road{Limits: Limits{HeightCm: 65535}}, Bar{}},
		{"too narrow", van, Road{Limits: Limits{WidthCm: 210}}, Bar{TooWide, 2.1, 2.05, 0.1}},
		{"length equal to the limit", van, Road{Limits: Limits{LengthCm: 600}}, Bar{}},
		{"mass equal to the limit", van, Road{Limits: Limits{Mass10Kg: 350}}, Bar{}},
		{"too heavy", heavy, Road{Limits: Limits{Mass10Kg: 350}}, Bar{TooHeavy, 3.5, 7.5, 0}},
		{"axle too heavy", heavy, Road{Limits: Limits{Axle10Kg: 400}}, Bar{AxleTooHeavy, 4, 4.8, 0}},
		{"a size that is not stated fits", Vehicle{}, Road{Limits: Limits{HeightCm: 200, WidthCm: 150, LengthCm: 300, Mass10Kg: 100, Axle10Kg: 50}}, Bar{}},
		{"closed to goods vehicles, light", van, Road{Heavy: Closed}, Bar{}},
		{"closed to goods vehicles, heavy", heavy, Road{Heavy: Closed}, Bar{Why: NoHeavy}},
		{"one-way", van, Road{Access: [2]Access{Closed, Open}}, Bar{Why: NoEntry}},
		{"guests may", van, Road{Access: [2]Access{Guests, Guests}}, Bar{}},
		{"ferry not wanted", Vehicle{NoFerry: true}, Road{Class: Ferry}, Bar{Why: FerryUnwanted}},
		{"toll not wanted", Vehicle{NoToll: true}, Road{Flags: Toll}, Bar{Why: TollUnwanted}},
		{"unpaved not wanted", Vehicle{NoUnpaved: true}, Road{Flags: Unpaved}, Bar{Why: UnpavedUnwanted}},
		{"track not wanted", Vehicle{NoTrack: true}, Road{Class: Track}, Bar{Why: TrackUnwanted}},
		{"motorway not wanted", Vehicle{NoHighways: true}, Road{Class: Trunk}, Bar{Why: HighwayUnwanted}},
		{"too long", van, Road{Limits: Limits{LengthCm: 599}}, Bar{TooLong, 5.99, 6, 0}},
		{"no limit is taken for unknown", van, Road{Flags: Tunnel | Caution, Unclear: "maxheight=below_default"}, Bar{}},
	} {
		if got := tc.v.Closes(&tc.r, 0); got != tc.want {
			t.Errorf("%s: %+v, want %+v", tc.name, got, tc.want)
		}
	}
}

func TestKmh(t *testing.T) {
	camper := Vehicle{TopKmh: MotorhomeTopKmh, Factor: MotorhomeFactor}
	for _, tc := range []struct {
		name string
		v    Vehicle
		r    Road
		want float64
	}{
		{"class", Vehicle{}, Road{Class: Primary}, 65},
		{"limit below the class", Vehicle{}, Road{Class: Primary, Kmh: [2]float32{50, 50}}, 50},
		{"with the factor", camper, Road{Class: Primary, Kmh: [2]float32{50, 50}}, 45},
		{"limit far above the class", camper, Road{Class: Tertiary, Kmh: [2]float32{90, 90}}, 54},
		{"limit little above the class", camper, Road{Class: Residential, Kmh: [2]float32{30, 30}}, 25},
		{"motorway without limit", camper, Road{Class: Motorway}, 90},
		{"top", Vehicle{TopKmh: 80}, Road{Class: Motorway}, 80},
		{"unpaved", camper, Road{Class: Tertiary, Flags: Unpaved}, 30},
		{"bad", camper, Road{Class: Tertiary, Flags: SlowWay}, 15},
		{"ferry by its time table", camper, Road{Class: Ferry, Kmh: [2]float32{15.6, 15.6}}, 15.6},
		{"ferry", camper, Road{Class: Ferry}, 20},
	} {
		if got := tc.v.Kmh(&tc.r, 0); math.Abs(got-tc.want) > 1e-5 {
			t.Errorf("%s: %v, want %v", tc.name, got, tc.want)
		}
	}
}
