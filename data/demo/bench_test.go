package demo

import "testing"

func BenchmarkIsland(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		newIsland()
	}
}

func BenchmarkEncode(b *testing.B) {
	s := newIsland()
	b.ReportAllocs()
	for b.Loop() {
		encode(&s.world, replication)
	}
}
