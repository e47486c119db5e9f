//go:build !js

package e2e_test

import (
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// tooTall lists the buttons whose words take two lines, wide is how far something
// sticks out of the page, clipped how much of the status cannot be seen.
const (
	tooTall = `[...document.querySelectorAll(".actions .button, .actions button")]
	.filter(b => b.getClientRects().length && b.getBoundingClientRect().height > 50).map(b => b.textContent)`
	wide    = `document.documentElement.scrollWidth - innerWidth`
	clipped = `(s => Math.max(s.scrollWidth - s.clientWidth, s.parentElement.scrollHeight - s.parentElement.clientHeight))(document.querySelector("#status"))`
)

// TestWidths: on a phone and on a small laptop nothing sticks out of the page, and
// each button is one line, as it is and with the form and the road open.
func TestWidths(t *testing.T) {
	p := home(t, 1024, 768)
	look := func(name string) {
		t.Helper()
		for _, s := range []struct {
			name          string
			width, height int64
			scheme        string
		}{{"360", 360, 740, "light"}, {"390", 390, 844, "dark"}, {"1024", 1024, 768, "light"}} {
			p.do(chromedp.EmulateViewport(s.width, s.height))
			call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: s.scheme}}})
			p.shot("widths-" + name + "-" + s.name)
			if tall := eval[[]string](p, tooTall); len(tall) > 0 {
				t.Errorf("%s, %s: two lines of words on %q", name, s.name, tall)
			}
			if by := eval[int](p, wide); by > 0 {
				t.Errorf("%s, %s: something sticks out by %d px", name, s.name, by)
			}
			if by := eval[int](p, clipped); by > 1 {
				t.Errorf("%s, %s: %d px of the status are hidden", name, s.name, by)
			}
		}
	}
	look("plan")
	eval[bool](p, `(document.querySelectorAll(".call details").forEach(d => d.open = true), document.querySelector(".call").scrollIntoView(), true)`)
	look("stop")
	eval[bool](p, `(document.querySelector("#change").click(), true)`)
	p.until("the form", `document.querySelector("#f-inside")`)
	eval[bool](p, `(document.querySelector("#f-inside").scrollIntoView({block: "center"}), true)`)
	look("form")
}
