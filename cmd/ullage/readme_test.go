package main

import (
	"os"
	"strings"
	"testing"
)

// TestReadmeSheet: the stop that the README shows is one of the island's sheet as
// it is printed.
func TestReadmeSheet(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := os.ReadFile("testdata/demo.golden")
	if err != nil {
		t.Fatal(err)
	}
	var shown []string
	for line := range strings.Lines(string(readme)) {
		indented, ok := strings.CutPrefix(line, "    ")
		if ok && (len(shown) > 0 || strings.HasPrefix(indented, "  ") && strings.Contains(indented, "  km ")) {
			shown = append(shown, indented)
		} else if len(shown) > 0 {
			break
		}
	}
	if len(shown) < 5 || !strings.Contains(string(sheet), strings.Join(shown, "")) {
		t.Errorf("copy a stop of testdata/demo.golden into the README; it shows:\n%s", strings.Join(shown, ""))
	}
}
