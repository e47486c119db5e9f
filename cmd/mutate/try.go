package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// An Outcome is what became of a mutant.
type Outcome int

// Only Survived is news: no test noticed.
const (
	NotBuilt Outcome = iota
	Killed
	Survived
)

// A Package is what go list says of one.
type Package struct {
	ImportPath, Dir           string
	GoFiles                   []string
	TestGoFiles, XTestGoFiles []string
	TestImports, XTestImports []string
	Module                    struct{ Dir string }
}

// List returns the packages that patterns name, in go's order.
func List(ctx context.Context, patterns []string) ([]Package, error) {
	cmd := exec.CommandContext(ctx, "go", append([]string{"list", "-json=ImportPath,Dir,GoFiles,TestGoFiles,XTestGoFiles,TestImports,XTestImports,Module"}, patterns...)...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var all []Package
	for dec := json.NewDecoder(strings.NewReader(string(out))); dec.More(); {
		var p Package
		if err := dec.Decode(&p); err != nil {
			return nil, fmt.Errorf("go list: %w", err)
		}
		all = append(all, p)
	}
	return all, nil
}

// tested tells whether a package has tests of its own.
func (p Package) tested() bool { return len(p.TestGoFiles)+len(p.XTestGoFiles) > 0 }

// flags are what its tests are run with. What they draw and fail at is not to
// be kept in the tree.
func (p Package) flags() []string {
	if slices.Contains(slices.Concat(p.TestImports, p.XTestImports), "pgregory.net/rapid") {
		return []string{"-test.failfast", "-rapid.nofailfile"}
	}
	return []string{"-test.failfast"}
}

// A Judge runs tests.
type Judge struct {
	Also   []Package // whose tests are asked too, after the mutant's own
	Within time.Duration
}

// Try runs the tests of a package, and then those of the others, with a mutant
// in it; nil runs them on the source as it is.
func (j Judge) Try(ctx context.Context, own Package, m *Mutant) (Outcome, error) {
	dir, err := os.MkdirTemp("", "mutate-")
	if err != nil {
		return NotBuilt, err
	}
	defer os.RemoveAll(dir)
	build := []string{"test", "-c", "-vet=off", "-o", filepath.Join(dir, "tests")}
	if m != nil {
		overlay, err := writeOverlay(dir, *m)
		if err != nil {
			return NotBuilt, err
		}
		build = append(build, "-overlay", overlay)
	}
	for _, p := range append([]Package{own}, j.Also...) {
		if !p.tested() {
			continue
		}
		if passed, err := passes(ctx, p.Dir, "go", append(build, p.ImportPath)...); err != nil || !passed {
			return NotBuilt, err
		}
		within, stop := context.WithTimeout(ctx, j.Within)
		passed, err := passes(within, p.Dir, filepath.Join(dir, "tests"), p.flags()...)
		late := within.Err() != nil && ctx.Err() == nil // it runs for ever
		stop()
		if err != nil && !late {
			return NotBuilt, err
		}
		if late || !passed {
			return Killed, ctx.Err()
		}
	}
	return Survived, nil
}

// writeOverlay writes the mutated file and the overlay that puts it in place.
func writeOverlay(dir string, m Mutant) (string, error) {
	source, err := os.ReadFile(m.File)
	if err != nil {
		return "", err
	}
	changed, overlay := filepath.Join(dir, "changed.go"), filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(changed, m.Apply(source), 0o644); err != nil {
		return "", err
	}
	text, err := json.Marshal(map[string]map[string]string{"Replace": {m.File: changed}})
	if err != nil {
		return "", err
	}
	return overlay, os.WriteFile(overlay, text, 0o644)
}

// passes runs a command in a folder and tells whether it exits with 0.
func passes(ctx context.Context, dir, name string, args ...string) (bool, error) {
	cmd := exec.CommandContext(ctx, name, args...)
	cmd.Dir = dir
	cmd.WaitDelay = 5 * time.Second // tests may leave children behind
	out, err := cmd.CombinedOutput()
	if exit := (*exec.ExitError)(nil); err == nil || errors.As(err, &exit) {
		return err == nil, nil
	}
	return false, fmt.Errorf("%s: %w\n%s", name, err, out)
}
