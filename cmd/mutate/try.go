package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
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
	Module                    struct{ Dir string }
}

// List returns the packages that patterns name, in go's order.
func List(ctx context.Context, patterns []string) ([]Package, error) {
	cmd := exec.CommandContext(ctx, "go", append([]string{"list", "-json=ImportPath,Dir,GoFiles,TestGoFiles,XTestGoFiles,Module"}, patterns...)...)
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
	overlay := ""
	if m != nil {
		if overlay, err = writeOverlay(dir, *m); err != nil {
			return NotBuilt, err
		}
		if out, err := goCommand(ctx, own.Dir, "build", "-overlay", overlay, "-o", os.DevNull, own.ImportPath); err != nil {
			return NotBuilt, exited(err, out)
		}
	}
	for _, p := range append([]Package{own}, j.Also...) {
		if !p.tested() {
			continue
		}
		killed, err := j.notices(ctx, dir, overlay, p)
		if err != nil || killed {
			return Killed, err
		}
	}
	return Survived, nil
}

// notices runs the tests of one package.
func (j Judge) notices(ctx context.Context, dir, overlay string, p Package) (bool, error) {
	within, stop := context.WithTimeout(ctx, j.Within)
	defer stop()
	args := []string{"test", "-vet=off", "-count=1", "-failfast", "-timeout", j.Within.String()}
	if overlay != "" {
		args = append(args, "-overlay", overlay)
	}
	out, err := goCommand(within, p.Dir, append(args, p.ImportPath)...)
	if err == nil {
		return false, nil
	}
	if ctx.Err() != nil {
		return false, ctx.Err()
	}
	if within.Err() != nil {
		return true, nil // it runs for ever
	}
	return true, exited(err, out)
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

func goCommand(ctx context.Context, dir string, args ...string) ([]byte, error) {
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Dir = dir
	cmd.WaitDelay = 5 * time.Second // tests may leave children behind
	return cmd.CombinedOutput()
}

// exited is nil for a command that ran and said no.
func exited(err error, out []byte) error {
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		return nil
	}
	return fmt.Errorf("go: %w\n%s", err, out)
}
