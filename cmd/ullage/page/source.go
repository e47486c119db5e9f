package page

import (
	"context"
	"crypto/sha256"
	"fmt"
	"hash"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// sources are what the program of the page is made of: more than it needs, so
// that nothing is forgotten.
var sources = []string{"app", "cmd/client", "data", "geo", "planner", "go.mod", "go.sum"}

// buildFlags make the program small: without names and paths for a debugger, and
// without functions written out where they are called, in what draws the page,
// says sentences and reads texts and tags. What plans, measures and takes map data
// apart is left as fast as it is.
var buildFlags = append([]string{"-trimpath", "-ldflags=-s -w"}, notInlined("ullage/app/...", "ullage/planner/fact", "ullage/planner/life/advice",
	"ullage/planner/trip/read", "ullage/planner/trip/answer", "ullage/planner/trip/onward", "github.com/maxence-charriere/...",
	"ullage/planner/trip", "ullage/data", "ullage/data/strict", "ullage/data/tripfile", "ullage/data/meant",
	"ullage/data/osm", "ullage/data/osm/tag", "ullage/data/hours", "ullage/planner/life", "ullage/planner/byroad", "ullage/planner/reason", "ullage/planner/backup",
	"ullage/planner/audit", "ullage/planner/replay", "ullage/data/foreign", "ullage/data/wrong", "ullage/data/plain", "ullage/planner/life/units", "ullage/planner/trip/build", "ullage/data/osm/roads",
	"encoding/json", "encoding/xml", "regexp/...", "net/...", "text/...", "html/...", "path/...", "fmt", "time", "reflect", "os", "io/...", "errors", "context",
	"sort", "strconv", "strings", "bytes", "bufio", "unicode/...", "syscall/...", "internal/poll", "internal/godebug", "internal/reflectlite", "internal/syscall/...", "encoding/...", "log/...", "flag", "container/...", "iter", "internal/fmtsort", "internal/bisect", "github.com/google/...")...)

// notInlined are flags that have packages compiled without inlining.
func notInlined(packages ...string) []string {
	var out []string
	for _, p := range packages {
		out = append(out, "-gcflags="+p+"=-l")
	}
	return out
}

// contentOf is a name for the program that the sources below root give: another
// content or another version of Go, another name.
func contentOf(ctx context.Context, root string) (string, error) {
	version, err := goTool(ctx, "", "env", "GOVERSION")
	if err != nil {
		return "", err
	}
	sum := sha256.New()
	fmt.Fprintf(sum, "%s%q\n", version, append([]string{resourceStart, keptOfResource, noCipher, randomIDs}, buildFlags...))
	for _, name := range sources {
		if err := addFiles(sum, root, name); err != nil {
			return "", err
		}
	}
	return fmt.Sprintf("%x", sum.Sum(nil)), nil
}

// addFiles adds a file, or all below a folder but tests and their data.
func addFiles(sum hash.Hash, root, name string) error {
	return filepath.WalkDir(filepath.Join(root, name), func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && d.Name() == "testdata":
			return fs.SkipDir
		case d.IsDir() || strings.HasSuffix(p, "_test.go"):
			return nil
		}
		b, err := os.ReadFile(p)
		if err != nil {
			return err
		}
		at, err := filepath.Rel(root, p)
		fmt.Fprintf(sum, "%s %d\n", filepath.ToSlash(at), len(b))
		sum.Write(b)
		return err
	})
}
