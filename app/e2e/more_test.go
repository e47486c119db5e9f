//go:build !js

package e2e_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// edit types a value into a field of the form, as a person does.
func (p *page) edit(field, value string) {
	p.t.Helper()
	eval[bool](p, `document.querySelector("#f-adults") ? true : (document.querySelector(".change, .trip button").click(), true)`)
	p.until("the form", fmt.Sprintf(`document.getElementById(%q)`, field))
	eval[bool](p, fmt.Sprintf(`(f => { f.value = %q; for (const e of ["input", "change"]) f.dispatchEvent(new Event(e, {bubbles: true})); return true; })(document.getElementById(%q))`, value, field))
}

const stopNames = `[...document.querySelectorAll("#itinerary h4")].map(h => h.textContent).join("; ")`

// TestOtherPlans: once the plan stands, the page says what safety costs and
// shows two other plans; the button of one plans without the place.
func TestOtherPlans(t *testing.T) {
	p := open(t, 1400, 900)
	v := atHome()
	v.brief = false
	p.begin(v)
	p.until("two other plans", `document.querySelectorAll("#others details").length === 2`)
	if text := eval[string](p, `document.querySelector("#others .safety").textContent`); !regexp.MustCompile(`safe if a place is closed would cost (nothing|(about )?[0-9]+\.[0-9]{2}[ \x{202f}]EUR) more`).MatchString(text) {
		t.Errorf("safety %q, want its price", text)
	}
	if text := eval[string](p, `document.querySelector("#others").textContent`); strings.Count(text, "more") < 2 || strings.Count(text, "Day 1:") != 2 {
		t.Errorf("others %q, want what each costs more, and its days", text)
	}
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
	eval[bool](p, `(document.querySelector("#others details").open = true, document.querySelector("#others").scrollIntoView(), true)`)
	p.shot("others")
	place := eval[string](p, `document.querySelector("#others button").textContent.replace("Plan without ", "")`)
	eval[bool](p, `(document.querySelector("#others button").click(), true)`)
	p.until("a plan without it", fmt.Sprintf(`document.querySelector("#status").dataset.state === "planned" && document.querySelector("#itinerary").textContent.includes("Left out: " + %q)`, place))
	if stops := eval[string](p, stopNames); strings.Contains(stops, place) {
		t.Errorf("%s is still among %s", place, stops)
	}
}

// TestSteadyPage: after a small change the plan in use keeps its stops, also
// after a reload.
func TestSteadyPage(t *testing.T) {
	p := home(t, 1400, 900)
	before := eval[string](p, stopNames)
	for _, worth := range []string{"9", "10", "11", "12"} {
		p.edit("f-value_h", worth)
		p.until("a new plan begun", `document.querySelector("#status").dataset.state === "planning"`)
		p.planned()
		if now := eval[string](p, stopNames); now != before {
			t.Errorf("with an hour worth %s: %s\nbefore: %s", worth, now, before)
		}
	}
	p.do(chromedp.Reload())
	p.planned()
	if now := eval[string](p, stopNames); now != before {
		t.Errorf("after a reload: %s\nbefore: %s", now, before)
	}
}

// TestRefusedPage: too little gas is refused at once with the gas named; what
// comes nearest is marked as no plan, and nothing looks like one. The litres are
// those that the command says of the same files.
func TestRefusedPage(t *testing.T) {
	extract := shared(t, "data/osm/andorra-2025-01-19.osm.pbf")
	text, err := os.ReadFile("../../cmd/ullage/testdata/andorra-trip.geojson")
	if err != nil {
		t.Fatal(err)
	}
	little := strings.NewReplacer(`"min_nights": 2`, `"min_nights": 3`, `"max_nights": 2`, `"max_nights": 5`, `"diesel": 18,`, `"diesel": 18, "lpg": 3.2,`).Replace(string(text))
	f := filepath.Join(t.TempDir(), "little.geojson")
	if err := os.WriteFile(f, []byte(little), 0o644); err != nil {
		t.Fatal(err)
	}
	p := home(t, 1400, 900)
	route, err := filepath.Abs("../../cmd/ullage/testdata/andorra-route.geojson")
	if err != nil {
		t.Fatal(err)
	}
	p.do(chromedp.SetUploadFiles("#file", []string{extract, f, route}))
	p.until("the nearest", `document.querySelector("#refusal .nearest")?.textContent.includes("LPG")`)
	if s := p.status(); !strings.HasPrefix(s, "refused") {
		t.Errorf("status %q", s)
	}
	said := eval[string](p, `document.querySelector("#refusal").textContent`)
	for _, want := range []string{"LPG runs out", "Start with 3.1\u202fL more of LPG", "This is not a valid plan. It breaks:"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q, want %q", said, want)
		}
	}
	if eval[bool](p, `Boolean(document.querySelector("#strips, #itinerary h4, .verdict, #others"))`) {
		t.Error("something looks like a plan")
	}
	eval[bool](p, `(document.querySelector(".nearest").open = true, document.querySelector(".nearest").scrollIntoView(), true)`)
	p.shot("refused")
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}
