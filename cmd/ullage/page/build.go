package page

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
)

// A Stage is what is being done while the page is built.
type Stage string

const (
	Looking   Stage = "look"    // whether this program was built before
	Fetching  Stage = "fetch"   // modules that are not on this machine yet
	Compiling Stage = "compile" // packages that changed since the last time
	Linking   Stage = "link"
	Packing   Stage = "pack" // for a site: files with brotli
)

// A Step tells how far a build has come.
type Step struct {
	Stage Stage
	Count int // modules fetched, packages compiled
}

const program = "ullage/cmd/client"

// Build returns the program of the page. It needs the go tool and the folder of
// this module. What was built is kept by the content of its sources, so that it
// is built once for all commands and tests. tell hears of each step, from the
// goroutine that called.
func Build(ctx context.Context, tell func(Step)) ([]byte, error) {
	tell(Step{Stage: Looking})
	root, err := moduleDir(ctx)
	if err != nil {
		return nil, err
	}
	name, err := contentOf(ctx, root)
	if err != nil {
		return nil, err
	}
	return kept(name+".wasm", func() ([]byte, error) { return compile(ctx, root, tell) })
}

// compile runs go build and follows what it says.
func compile(ctx context.Context, root string, tell func(Step)) ([]byte, error) {
	tell(Step{Stage: Fetching})
	modfile, err := pageModules(ctx, root)
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "ullage-client-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "app.wasm")
	args := append([]string{"build", "-v", "-modfile=" + modfile, "-o", out}, buildFlags...)
	cmd := exec.CommandContext(ctx, "go", append(args, "./cmd/client")...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	if strings.HasPrefix(runtime.Version(), "go1.26") { // its new collector is for many cores: 11 kB, and slower on one
		cmd.Env = append(cmd.Env, "GOEXPERIMENT=nogreenteagc")
	}
	said, err := cmd.StderrPipe()
	if err != nil {
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	tell(Step{Stage: Compiling})
	complaints := follow(said, tell)
	if err := cmd.Wait(); err != nil {
		return nil, fmt.Errorf("build the page: %w\n%s", err, strings.Join(complaints, "\n"))
	}
	return os.ReadFile(out)
}

// follow reads what go build -v says: modules that it fetches, packages that it
// compiles. It returns the rest, which are complaints.
func follow(said io.Reader, tell func(Step)) (complaints []string) {
	fetched, compiled := 0, 0
	lines := bufio.NewScanner(said)
	for lines.Scan() {
		line := lines.Text()
		switch {
		case strings.HasPrefix(line, "go: downloading "):
			fetched++
			tell(Step{Fetching, fetched})
		case line == program:
			tell(Step{Stage: Linking})
		case line != "" && !strings.ContainsAny(line, " :#"):
			compiled++
			tell(Step{Compiling, compiled})
		default:
			complaints = append(complaints, line)
		}
	}
	return complaints
}
