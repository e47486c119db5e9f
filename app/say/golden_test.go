package say

import (
	"bytes"
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
)

var update = flag.Bool("update", false, "rewrite testdata/*.golden; read it before you commit it")

// sample is one value for each name that a sentence may ask for. A name means
// the same wherever it stands: add one here when a sentence needs a new one.
var sample = map[string]fact.Value{
	"a": fact.Text("a"), "b": fact.Text("b"), "weekday": fact.Term("weekday.5"), "wd": fact.Term("wd.5"), "day": fact.Count(12), "month": fact.Term("month.6"), "year": fact.Text("2026"),
	"address": fact.Text("http://127.0.0.1:8080/"), "all": fact.Quantity(14.2, "MB", 2), "all_packed": fact.Quantity(3.1, "MB", 2), "done": fact.Term("done.compile"),
	"example": fact.Text("-within 2m"), "folder": fact.Text("public"), "now": fact.Text("Compiling the page"), "program": fact.Quantity(11.8, "MB", 2),
	"program_packed": fact.Quantity(2.17, "MB", 2), "seconds": fact.Quantity(41, "s", 0), "stops": fact.Texts([]string{"p1", "p2"}), "usual": fact.Text("about a minute"),
	"value": fact.Text("30s"), "within": fact.Text("30s"),
	"have": fact.Quantity(67, "L", 0), "need": fact.Quantity(60, "L", 0), "by": fact.Quantity(7, "L", 0), "found": fact.Text("xyz"), "field": fact.Text("arrive.levels"),
	"missing": fact.Quantity(2.8, "L", 1), "stop": fact.Text("n20"), "at": fact.Mark(150, 1),
	"do":  fact.Clause(fact.Of("change.use_less", fact.V{"share": fact.Share(0.2, 0), "tank": fact.Tank("fresh", "")})),
	"act": fact.Clause(fact.Of("act.fill", fact.V{"amount": fact.Quantity(65, "L", -1), "tank": fact.Tank("fresh", "")})), "adults": fact.Count(2), "allowed": fact.Kg(3500), "amount": fact.Quantity(65, "L", -1), "point": fact.Text("42.45736, 1.48681"), "clock": fact.Clock(730), "saving": fact.Money(3.2, "EUR"), "trips": fact.Count(90),
	"basis": fact.Text("as the map says"), "capacity": fact.Quantity(100, "L", -1), "children": fact.Count(1), "cost": fact.Money(4.89, "EUR"), "date": fact.Date("2026-06-12"),
	"does": fact.Text("refuel diesel"), "end": fact.Clock(744), "facts": fact.Text("fee=no"), "fallback": fact.Text("Ellern, 36 km on"), "dearer": fact.Money(3.2, "EUR"), "cheaper": fact.Money(3.2, "EUR"), "distance": fact.Text("100 km"),
	"for": fact.Span(15), "from": fact.Mark(31, 1), "height": fact.Metres(2.85, 2), "high": fact.Quantity(40, "L", -1), "hour": fact.Money(15, "EUR"), "id": fact.Text("n20"),
	"kg": fact.Kg(3394), "kind": fact.Term("place.campsite"), "km": fact.Km(17.6, 1), "length": fact.Metres(6.6, 2), "less": fact.Share(0.19, 0), "level": fact.Quantity(70, "L", -1),
	"task":   fact.Text("Empty the toilet cassette (12 L)"),
	"levels": fact.Text("diesel 70/90 L"), "likely": fact.Quantity(36, "L", -1), "low": fact.Quantity(30, "L", -1), "mark": fact.Mark(172, 1), "mass": fact.Kg(3500), "more": fact.Share(0.19, 0),
	"n": fact.Count(2), "name": fact.Text("Ellern"), "nights": fact.Count(2), "numbers": fact.Texts([]string{"1", "2"}), "off": fact.Km(0.8, 1), "pay": fact.Money(36, "EUR"),
	"per": fact.Text("per 100 km"), "planned": fact.Quantity(40, "L", 1), "mpg": fact.Quantity(12, "L/100 km", 1), "road": fact.Text("CG-2"), "share": fact.Share(0.014, 1),
	"source": fact.Text("from memory"), "start": fact.Clock(570), "station": fact.Text("Ellern"), "stay": fact.Quantity(28, "L", -1), "sum": fact.Money(36, "EUR"),
	"sums": fact.Text("36.00 EUR for nights"), "supply": fact.Text("supply"), "tank": fact.Tank("fresh", ""), "time": fact.Span(165), "to": fact.Mark(43, 1), "reached": fact.Term("sheet.to.full"),
	"until": fact.Date("2026-06-14"), "uses": fact.Text("10.3 L per 100 km"), "vehicle": fact.Text("Quorrel 66"), "what": fact.Text("by way of Ellern"), "why": fact.Text("closed"), "width": fact.Metres(2.3, 2),

	// files
	"line": fact.Count(12), "column": fact.Count(4),
	"before": fact.Count(1), "next": fact.Count(2), "points": fact.Count(3), "areas": fact.Count(1),

	// roads
	"limit": fact.Metres(2.7, 2), "has": fact.Metres(3.05, 2), "spare": fact.Metres(0.1, 2), "others": fact.Count(3), "sails": fact.Span(95), "board": fact.Span(30),
	"where":  fact.Clause(fact.Of("road.where", fact.V{"places": fact.Clause(fact.Of("road.at", fact.V{"mark": fact.Mark(3, 1)}))})),
	"places": fact.List(fact.Clause(fact.Of("road.at", fact.V{"mark": fact.Mark(3, 1), "road": fact.Text("CG-2")})), fact.Clause(fact.Of("road.at", fact.V{"mark": fact.Mark(31, 1)}))),

	// trip
	"agreed": fact.Quantity(40, "L", 0), "calls": fact.Texts([]string{"Ellern at km 31", "Morrow at km 60"}), "currency": fact.Text("NOK"), "easy": fact.Km(300, 0), "how": fact.Text("about"),
	"lacking": fact.Km(20, 0), "left": fact.Quantity(30, "L", 0), "names": fact.Texts([]string{"Ellern"}), "needs": fact.Metres(2.85, 2), "open": fact.Clause(fact.Of("open.unknown", nil)),
	"gone": fact.Texts([]string{"Morrow"}), "prices": fact.Text("diesel 1.60 NOK/L"), "rate": fact.Rate(1.6, "EUR", "L"), "tag": fact.Text("opening_hours=Mo-Fr"), "tags": fact.Texts([]string{"30 NOK"}),
	"phone": fact.Text("+376 738 477"), "site": fact.Text("example.org"), "pairs": fact.Count(40),
	"tanks": fact.List(fact.Tank("diesel", "")), "upto": fact.Money(30, "EUR"), "typical": fact.Text("EUR"), "was": fact.Count(3), "who": fact.Term("access.private"),

	// life
	"cold": fact.Celsius(-12), "freezing": fact.Celsius(0), "valve": fact.Celsius(3), "kept": fact.Celsius(40), "boost": fact.Celsius(60), "grade": fact.Count(3),
	"part": fact.Share(0.62, 0), "change": fact.Share(0.19, 0), "use": fact.Text("other"), "bounded": fact.Text("bounded"),
	"gives": fact.Clause(fact.Of("hookup.supply", fact.V{"amps": fact.Quantity(6, "A", 0), "power": fact.Quantity(1.38, "kW", 2)})), "heating": fact.Clause(fact.Of("hookup.no_heat", nil)), "boiling": fact.Clause(fact.Of("hookup.kettle_trips", fact.V{"household": fact.Quantity(2, "kW", 0)})),
	"amps": fact.Quantity(6, "A", 0), "power": fact.Quantity(1.38, "kW", 2), "step": fact.Quantity(1, "kW", 0), "rest": fact.Quantity(0.8, "kW", 1), "kettle": fact.Quantity(1, "kW", 0), "household": fact.Quantity(2, "kW", 0),
	"over": fact.Kg(120), "most": fact.Quantity(60, "L", 0),
	"country": fact.Text("FR"), "rural": fact.Quantity(80, "km/h", 0), "motorway": fact.Quantity(110, "km/h", 0),
	"expected": fact.Quantity(80, "L", 0), "used": fact.Quantity(90, "L", 0), "gas": fact.Text("gas"), "text": fact.Text("the vehicle's papers"),

	// page
	"bytes": fact.Quantity(12.3, "MB", 1), "bytes_free": fact.Quantity(2.1, "GB", 1),
	"of": fact.Count(10), "least": fact.Count(1), "driving": fact.Span(160), "begin": fact.Clock(540), "depart": fact.Clock(540), "after": fact.Text("100"), "unit": fact.Text("km"), "room": fact.Text("22 L left"), "place": fact.Text("Reed Harbour"), "roads": fact.Text("Low Lane: height limit 2.70 m"), "town": fact.Text("Reed"), "town_to": fact.Text("Mill"), "ferry": fact.Text("km 120 to km 171"), "file": fact.Text("walk.gpx"), "list": fact.Text("Before you drive off"), "letter": fact.Text("A"), "more_km": fact.Text("+5 km"), "more_time": fact.Text("+6 min"),
}

// own are the values of sentences that are always said with the same ones.
func own() map[string]fact.V {
	out := map[string]fact.V{}
	for _, f := range advised() {
		out[string(f.Kind)] = f.Values
	}
	for _, tank := range trip.TankIDs() {
		f := life.Source(tank)
		out[string(f.Kind)] = f.Values
	}
	for _, kind := range []string{"road.bar.too_heavy", "road.bar.axle"} {
		out[kind] = fact.V{"limit": fact.Kg(3500), "has": fact.Kg(4250)}
	}
	f := life.Heavier(4250)
	out[string(f.Kind)] = f.Values
	return out
}

// advised is all advice there is.
func advised() []fact.Fact {
	var out []fact.Fact
	add := func(items []advice.Item) {
		for _, i := range items {
			out = append(out, i.Says)
		}
	}
	for _, h := range advice.HowTos(nil) {
		out = append(out, h.Title, h.Care, h.Defer)
		add(h.Steps)
		add(h.Cautions)
	}
	for _, l := range advice.Checklists(nil) {
		out = append(out, l.Title)
		add(l.Items)
	}
	return out
}

// TestSentences shows every sentence in every language and unit system, each
// branch of it once. Read the golden aloud: would you say it so at a hire desk?
func TestSentences(t *testing.T) {
	fixed := own()
	for code, l := range languages {
		var out bytes.Buffer
		for _, key := range slices.Sorted(maps.Keys(l.catalog())) {
			m := l.catalog()[key]
			values := maps.Clone(sample)
			maps.Copy(values, fixed[key])
			for _, name := range m.names() {
				if _, ok := values[name]; !ok {
					t.Fatalf("%s: %s asks for {%s}: give sample in this file a value for it", code, key, name)
				}
			}
			for _, v := range branches(m, values) {
				seen := ""
				for _, system := range []string{"metric", "british", "american"} {
					text := Voice{Language: code, Units: system}.Text(key, v, values)
					if strings.ContainsAny(text, "‹›") {
						t.Errorf("%s: %s says %q", code, key, text)
					}
					if text == seen {
						continue
					}
					if seen == "" {
						fmt.Fprintf(&out, "%s: %s\n", key, text)
					} else {
						fmt.Fprintf(&out, "%s %s: %s\n", strings.Repeat(" ", len(key)-min(len(key), len(system)+1)), system, text)
					}
					seen = text
				}
			}
		}
		file := "testdata/" + code + ".golden"
		if *update {
			if err := os.WriteFile(file, out.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil || !bytes.Equal(want, out.Bytes()) {
			t.Errorf("%s differs (%v); run with -update and read what changed", file, err)
		}
	}
}

// branches are values that lead through each branch of a sentence once; values are usual ones.
func branches(m message, values fact.V) []fact.V {
	out := []fact.V{{}}
	var walk func(message, fact.V)
	walk = func(m message, above fact.V) {
		for _, p := range m {
			for i, c := range p.cases {
				v := maps.Clone(above)
				v[p.name] = leading(p, c.when, values[p.name])
				if i > 0 || len(above) > 0 {
					out = append(out, v)
				} else {
					out[0] = v
				}
				walk(c.says, v)
			}
		}
	}
	walk(m, fact.V{})
	return out
}

// leading is a value like v that leads into the branch when.
func leading(p part, when string, v fact.Value) fact.Value {
	switch {
	case p.how == "plural" && when == "one":
		v.N = 1
	case p.how == "plural" && when == "other":
		v.N = 3
	case p.how == "plural":
		fmt.Sscan(when[1:], &v.N)
	case when == "none":
		v = fact.Value{}
	case when == "other":
	case v.Is == fact.IsTank:
		v.Unit, v.S = when, ""
	default:
		v.S = when
	}
	return v
}
