package say

import (
	"testing"

	"ullage/planner/fact"
)

// Members keep their order and numbers their digits; what only looks like a fact is
// left alone.
func TestJSON(t *testing.T) {
	type item struct {
		ID   string    `json:"id"`
		Says fact.Fact `json:"says,omitzero"`
	}
	got, err := Voice{Units: "american"}.JSON(struct {
		Z     []item  `json:"z"`
		Kind  string  `json:"kind"`
		Level float64 `json:"level"`
		None  any     `json:"none"`
		Lone  any     `json:"lone"`
	}{[]item{{"a", fact.Of("howto.battery.caution.lithium_cold", fact.V{"freezing": fact.Celsius(0)})}, {ID: "b"}}, "howto.fresh.title", 0.1, nil, map[string]string{"kind": "supply"}})
	want := `{"z":[{"id":"a","says":{"kind":"howto.battery.caution.lithium_cold","values":{"freezing":{"is":"quantity","unit":"°C"}},` +
		`"text":"Never charge a lithium battery below 32 °F."}},{"id":"b"}],"kind":"howto.fresh.title","level":0.1,"none":null,"lone":{"kind":"supply"}}`
	if err != nil || string(got) != want {
		t.Errorf("got  %s (%v)\nwant %s", got, err, want)
	}
	if _, err := (Voice{}).JSON(func() {}); err == nil {
		t.Error("a function is JSON")
	}
}
