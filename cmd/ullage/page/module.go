package page

import (
	"context"
	"errors"
	"os/exec"
	"strings"
)

// ErrNoSource says that the page cannot be built here.
var ErrNoSource = errors.New("the page is built from its source: run this inside the folder of the module ullage (go run ./cmd/ullage serve)")

// goTool runs go in a folder and returns what it prints, and its complaints if it fails.
func goTool(ctx context.Context, dir string, args ...string) ([]byte, error) {
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Dir = dir
	out, err := cmd.Output()
	var failed *exec.ExitError
	if errors.As(err, &failed) {
		out = failed.Stderr
	}
	return out, err
}

// moduleDir finds the folder of this module from the working directory.
func moduleDir(ctx context.Context) (string, error) {
	out, err := goTool(ctx, "", "list", "-m", "-f", "{{.Path}}\n{{.Dir}}")
	if errors.Is(err, exec.ErrNotFound) {
		return "", errors.Join(errors.New("the go tool is not on the PATH"), ErrNoSource)
	}
	path, dir, _ := strings.Cut(strings.TrimSpace(string(out)), "\n")
	if err != nil || path != "ullage" {
		return "", ErrNoSource
	}
	return dir, nil
}
