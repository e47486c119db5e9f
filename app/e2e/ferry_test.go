//go:build !js

package e2e_test

import (
	"strings"
	"testing"
)

// TestFerryField: what is wrong is said beside the field, a ferry that is right
// stands among the stops of its day, and can be taken away again.
func TestFerryField(t *testing.T) {
	p := home(t, 1400, 900)
	eval[bool](p, `(document.querySelector("#change").click(), true)`)
	p.until("the form", `document.querySelector("#ferry-add")`)
	p.put("f-ferry-from", "30")
	p.put("f-ferry-to", "20")
	p.put("f-ferry-min", "45")
	eval[bool](p, `(document.querySelector("#ferry-add").click(), true)`)
	p.until("what is wrong", `document.querySelector("#f-ferry-to-wrong")?.textContent.includes("ends after it begins")`)
	p.put("f-ferry-to", "55")
	eval[bool](p, `(document.querySelector("#ferry-add").click(), true)`)
	p.replanned()
	p.until("the ferry", `document.querySelector(".crossing")`)
	if ferry := eval[string](p, `document.querySelector(".crossing")?.textContent ?? ""`); !strings.Contains(ferry, "km\u202f55, 45\u202fmin") || !strings.Contains(ferry, "the gas off") {
		t.Errorf("the day has the ferry %q", ferry)
	}
	p.shot("ferry")
	eval[bool](p, `(document.querySelector("#ferries .quiet").click(), true)`)
	p.replanned()
	p.until("a day without the ferry", `!document.querySelector(".crossing")`)
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}
