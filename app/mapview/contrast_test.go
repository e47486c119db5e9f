package mapview

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Contrast ratio after WCAG 2.1, definitions of relative luminance and
// contrast ratio (https://www.w3.org/TR/WCAG21/#dfn-contrast-ratio).
func contrast(a, b string) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

func luminance(hex string) float64 {
	hex = strings.TrimPrefix(hex, "#")
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		v, _ := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		c := float64(v) / 255
		if c <= 0.03928 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}

func TestContrastOfKnownPairs(t *testing.T) {
	// Black on white is 21 by definition; #767676 on white is the well known
	// lightest grey that passes 4.5 (WebAIM, "Contrast and Color Accessibility": 4.54).
	if got := contrast("#000000", "#ffffff"); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white is %v, want 21", got)
	}
	if got := contrast("#767676", "#ffffff"); math.Abs(got-4.54) > 0.005 {
		t.Errorf("#767676 on white is %v, want 4.54", got)
	}
}

// Text needs 4.5:1 (success criterion 1.4.3), what carries meaning without
// being text 3:1 (1.4.11), in both schemes.
func TestContrastOfTheStyleSheet(t *testing.T) {
	css, err := os.ReadFile("../../web/ullage.css")
	if err != nil {
		t.Fatal(err)
	}
	roots := regexp.MustCompile(`(?s):root \{(.*?)\}`).FindAllStringSubmatch(string(css), -1)
	if len(roots) < 2 {
		t.Fatal("the style sheet has no two schemes")
	}
	for i, name := range []string{"light", "dark"} {
		colour := map[string]string{}
		for _, m := range regexp.MustCompile(`--([a-z-]+): (#[0-9a-f]{6});`).FindAllStringSubmatch(roots[i][1], -1) {
			colour[m[1]] = m[2]
		}
		for _, pair := range []struct {
			over, under string
			least       float64
		}{
			{"ink", "paper", 7}, {"ink", "sheet", 7}, {"ink", "accent-area", 7}, {"ink", "warn-area", 7}, {"ink", "land", 4.5}, {"ink", "supply-area", 4.5}, {"ink", "waste-area", 4.5},
			{"soft", "paper", 4.5}, {"soft", "sheet", 4.5}, {"soft", "accent-area", 4.5}, {"soft", "land", 4.5},
			{"supply", "sheet", 4.5}, {"waste", "sheet", 4.5}, {"warn", "paper", 4.5}, {"warn", "accent-area", 4.5}, {"accent", "paper", 4.5}, {"accent", "accent-area", 4.5}, {"on-accent", "accent", 4.5},
			{"edge", "sheet", 3}, {"edge", "paper", 3}, {"supply", "supply-area", 3}, {"waste", "waste-area", 3}, {"warn", "supply-area", 3}, {"warn", "waste-area", 3},
			{"accent", "land", 3}, {"accent", "sea", 3}, {"accent", "supply-area", 3}, {"accent", "waste-area", 3},
		} {
			a, b := colour[pair.over], colour[pair.under]
			if a == "" || b == "" {
				t.Fatalf("%s: no colour %s or %s", name, pair.over, pair.under)
			}
			if got := contrast(a, b); got < pair.least {
				t.Errorf("%s: %s on %s is %.2f, want %v", name, pair.over, pair.under, got, pair.least)
			}
		}
	}
}

// The map takes its colours from Go, the page from the style sheet: they are
// the same.
func TestTheMapHasTheColoursOfThePage(t *testing.T) {
	css, err := os.ReadFile("../../web/ullage.css")
	if err != nil {
		t.Fatal(err)
	}
	roots := regexp.MustCompile(`(?s):root \{(.*?)\}`).FindAllStringSubmatch(string(css), -1)
	for i, p := range []palette{light, dark} {
		for name, want := range map[string]string{"land": p.land, "sea": p.sea, "edge": p.edge, "ink": p.ink, "soft": p.soft, "sheet": p.sheet, "accent": p.accent} {
			if !strings.Contains(roots[i][1], "--"+name+": "+want+";") {
				t.Errorf("scheme %d: the map's %s is %s, the style sheet's is not", i, name, want)
			}
		}
	}
}
