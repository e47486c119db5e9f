package problemfile

import (
	"encoding/json"
	"strings"
	"testing"
)

// minimal is a problem with a mark at every field that the tests change.
const minimal = `{
 "format": "ullage-problem-1",
 "length_km": 10,
 "time_cost_per_h": 0,
 "drive": {"max_km_per_day": 100, "max_min_per_day": 100, "depart_min": 0, "pace": [{"to_km": 10, "min_per_km": 1}]},
 "tanks": [{"id": "fuel", "kind": "supply", "capacity": 9, "reserve": 1, "start": 9, "per_km": 0.1, "end": {"at_least": 1}},
  {"id": "grey", "kind": "waste", "capacity": 9, "reserve": 1, "start": 0, "per_km": 0}],
 "stops": [
  {"id": "a", "km": 1, "detour_km": 0, "detour_min": 0, "stop_min": 0, "fee": 0, "open": [[0, 5], [6, 7]],
   "serves": [{"tank": "fuel", "price": 1, "min": 0}, {"tank": "grey", "price": 0, "min": 0}]},
  {"id": "b", "km": 2, "detour_km": 0, "detour_min": 0, "stop_min": 0, "fee": 0, "serves": [], "night": {"fee": 0, "nights": 1, "use": {"grey": 1}}}
 ]
}`

func TestDecodeErrors(t *testing.T) {
	if _, err := Decode("p.json", []byte(minimal)); err != nil {
		t.Fatal(err)
	}
	for _, tc := range []struct{ name, from, to, want string }{
		{"empty", minimal, ``, "p.json: line 1, column 1: the file ends in the middle"},
		{"cut off", minimal[300:], ``, "the file ends in the middle"},
		{"no JSON", `{`, `(`, "line 1, column 1: not JSON: invalid character '('"},
		{"a list", minimal, `[]`, "found a list, want an object"},
		{"null", `"km": 1`, `"km": null`, "stops[0].km: found null, want a number"},
		{"null for all", minimal, `null`, "found null, want an object"},
		{"text for a number", `"km": 1`, `"km": "1"`, `line 9, column 21: stops[0].km: found text "1", want a number`},
		{"number for text", `"id": "fuel"`, `"id": 3`, "tanks[0].id: found 3, want text"},
		{"unknown field", `"fee": 0, "open"`, `"toll": 0, "open"`, `stops[0]: unknown field "toll", want one of id, km`},
		{"field in capitals", `"length_km"`, `"Length_km"`, `unknown field "Length_km"`},
		{"field twice", `"km": 2`, `"km": 2, "km": 2`, `stops[1]: field "km" is given twice`},
		{"too large", `"km": 2`, `"km": 1e999`, "stops[1].km: number 1e999 is out of range"},
		{"half a night", `"nights": 1`, `"nights": 1.5`, "stops[1].night.nights: number 1.5 is not a whole number"},
		{"half a window", `[0, 5]`, `[0]`, "stops[0].open[0]: has 1 values, want 2"},
		{"more after it", minimal, minimal + " {}", "more after the end"},
		{"format", `problem-1`, `problem-3`, `format is "ullage-problem-3"`},
		{"length", `"length_km": 10`, `"length_km": 0`, "length_km is 0, want more than 0"},
		{"pace ends early", `"to_km": 10`, `"to_km": 9`, "pace ends at km 9"},
		{"depart", `"depart_min": 0`, `"depart_min": 1440`, "depart_min is 1440"},
		{"kind", `"waste"`, `"weight"`, `tanks[1] "grey": kind is "weight"`},
		{"tank twice", `"id": "grey"`, `"id": "fuel"`, "has the id of an earlier tank"},
		{"start", `"start": 9`, `"start": 10`, "start is 10, want 0 to 9"},
		{"reserve", `"reserve": 1, "start": 0`, `"reserve": -1, "start": 0`, "reserve is -1"},
		{"end of the wrong kind", `"at_least"`, `"at_most"`, "at_most is for waste tanks"},
		{"refill of nothing", `{"at_least": 1}`, `{"refill_price": 1}`, "refill_price needs at_least"},
		{"stop twice", `"id": "b"`, `"id": "a"`, "has the id of an earlier stop"},
		{"order", `"km": 2`, `"km": 0.5`, "sort stops by km"},
		{"beyond the end", `"km": 2`, `"km": 11`, "beyond the route's end"},
		{"negative fee", `"fee": 0, "nights"`, `"fee": -1, "nights"`, "fee is -1"},
		{"no such tank", `"tank": "fuel"`, `"tank": "gas"`, `serves a tank that the problem does not have`},
		{"served twice", `"tank": "grey"`, `"tank": "fuel"`, "serves a tank twice"},
		{"priced waste", `"price": 0`, `"price": 1`, "emptying has only a fee"},
		{"no nights", `"nights": 1`, `"nights": 0`, "nights is 0"},
		{"use of no tank", `{"grey": 1}`, `{"gas": 1}`, `uses tank "gas"`},
		{"windows overlap", `[6, 7]`, `[4, 7]`, "sort and merge windows"},
		{"window backwards", `[6, 7]`, `[6, 5]`, "end is 5, want 6 or more"},
		{"guests where no night is", `"price": 1, "min": 0`, `"price": 1, "min": 0, "guests_only": true`, "guests_only where no night is offered"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			text := strings.Replace(minimal, tc.from, tc.to, 1)
			if text == minimal {
				t.Fatal("nothing changed")
			}
			_, err := Decode("p.json", []byte(text))
			if err == nil || !strings.Contains(err.Error(), tc.want) || !strings.HasPrefix(err.Error(), "read p.json: ") {
				t.Errorf("error %q, want %q in it", err, tc.want)
			}
		})
	}
}

// FuzzDecode: whatever comes in, the answer is a valid problem or an error
// that begins with the file's name.
func FuzzDecode(f *testing.F) {
	f.Add([]byte(minimal))
	f.Add([]byte(`{"format":"ullage-problem-1","stops":[{"open":[[1,2]]}]}`))
	f.Add([]byte(`[[[[[[`))
	f.Fuzz(func(t *testing.T, b []byte) {
		p, err := Decode("f", b)
		if err != nil {
			if !strings.HasPrefix(err.Error(), "read f: ") {
				t.Errorf("error %q does not name the file", err)
			}
			return
		}
		if err := p.Validate(); err != nil {
			t.Error(err)
		}
		again, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		if q, err := Decode("f", again); err != nil {
			t.Errorf("%v in what was written", err)
		} else if twice, _ := json.Marshal(q); string(twice) != string(again) {
			t.Errorf("%s comes back as %s", again, twice)
		}
	})
}
