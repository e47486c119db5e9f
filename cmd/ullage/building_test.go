package main

import (
	"bytes"
	"testing"
	"time"

	"ullage/cmd/ullage/page"
)

// Each stage is announced once, with what is usual, and ended with the time that
// it took; how far it has come goes to terminals and to the waiting page.
func TestBuildingSays(t *testing.T) {
	var out bytes.Buffer
	var heard []string
	b := newBuilding(&out)
	b.hear = func(now, usual string) { heard = append(heard, now) }
	b.step(page.Step{Stage: page.Looking})
	b.step(page.Step{Stage: page.Compiling})
	b.step(page.Step{Stage: page.Compiling, Count: 57})
	b.since = b.since.Add(-41 * time.Second)
	b.step(page.Step{Stage: page.Linking})
	b.end()
	want := "Compiling the page: about a minute the first time, seconds later on\nCompiled in 41 s\nLinking the page: about ten seconds\n"
	if out.String() != want {
		t.Errorf("said %q, want %q", out.String(), want)
	}
	if len(heard) != 4 || heard[2] != "Compiling the page (57 packages so far)" {
		t.Errorf("the waiting page heard %q", heard)
	}
}
