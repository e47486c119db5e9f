package tripfile_test

import (
	"os"
	"strings"
	"testing"

	"ullage/data/tripfile"
)

// TestReadmeFleet: the fleet file that the README works through is one, and it
// has the seven tanks that it speaks of.
func TestReadmeFleet(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, found := strings.Cut(string(text), "\n    {\n      \"format\": \"ullage-fleet-1\"")
	if !found {
		t.Fatal("the README has no fleet file")
	}
	body, _, _ := strings.Cut(rest, "\n    }\n")
	vehicles, _, err := tripfile.ReadFleet("README.md", strings.NewReader("{\"format\": \"ullage-fleet-1\""+body+"}"))
	if err != nil {
		t.Fatal(err)
	}
	if len(vehicles) != 1 || len(vehicles[0].Tanks) != 7 {
		t.Errorf("the README's fleet has %d vehicles, %+v", len(vehicles), vehicles)
	}
}
