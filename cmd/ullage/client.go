package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
)

// buildClient compiles the program of the page and returns its bytes. It
// needs the go tool and the folder of this module; go keeps what it built, so
// that a second call takes a second.
func buildClient() ([]byte, error) {
	root, err := moduleDir()
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "ullage-client-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	modfile, err := pageModules(root)
	if err != nil {
		return nil, err
	}
	out := filepath.Join(dir, "app.wasm")
	cmd := exec.Command("go", "build", "-modfile="+modfile, "-trimpath", "-ldflags=-s -w", "-o", out, "./cmd/client")
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	if strings.HasPrefix(runtime.Version(), "go1.26") { // its new collector is for many cores: 11 kB, and slower on one
		cmd.Env = append(cmd.Env, "GOEXPERIMENT=nogreenteagc")
	}
	if text, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("build the page: %w\n%s", err, bytes.TrimSpace(text))
	}
	return os.ReadFile(out)
}

// moduleDir finds the folder of this module from the working directory.
func moduleDir() (string, error) {
	const help = "the page is built from its source: run this inside the folder of the module ullage (go run ./cmd/ullage serve)"
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Path}}\n{{.Dir}}").Output()
	if errors.Is(err, exec.ErrNotFound) {
		return "", errors.New("the go tool is not on the PATH; " + help)
	}
	path, dir, _ := strings.Cut(strings.TrimSpace(string(out)), "\n")
	if err != nil || path != "ullage" {
		return "", errors.New(help)
	}
	return dir, nil
}
