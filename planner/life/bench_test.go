package life

import "testing"

// One night's model is asked for each place of a trip: 600 candidates in 20 ms
// leave 33 µs for each.
func BenchmarkStay(b *testing.B) {
	m, s := couple(), Stay{At: bavaria, YearDay: 20, HookUp: true, Amps: 10}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Stay(s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkOutside(b *testing.B) {
	for b.Loop() {
		Outside(bavaria, 20)
	}
}

func BenchmarkDrive(b *testing.B) {
	m := couple()
	profile := ReferenceProfile()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Drive(profile); err != nil {
			b.Fatal(err)
		}
	}
}
