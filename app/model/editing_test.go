package model

import (
	"strings"
	"testing"

	"ullage/app/field"

	"pgregory.net/rapid"
)

// What a model points to is never changed by a later message.
func TestUpdateKeepsOldModels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := planned()
		var keys []string
		for _, f := range field.Of(m.Trip, m.Fleet, m.Say) {
			keys = append(keys, f.Key)
		}
		for range 8 {
			texts := shown(m)
			key := rapid.SampledFrom(keys).Draw(t, "field")
			next := then(m, Edited{key, rapid.SampledFrom([]string{"", "1", "2", "12.5", "true", "sites", "2026-07-01", "10:30", "ulmar", "x"}).Draw(t, "text")})
			if got := shown(m); got != texts {
				t.Fatalf("%s changed the model before:\n%s\n%s", key, texts, got)
			}
			if next.Trip.Vehicle.ID == m.Trip.Vehicle.ID {
				m = next
			}
		}
	})
}

func shown(m Model) string {
	var b strings.Builder
	for _, f := range field.Of(m.Trip, m.Fleet, m.Say) {
		b.WriteString(f.Key + "=" + f.Get(m.Trip) + " ")
	}
	return b.String()
}
