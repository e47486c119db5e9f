package ullage_test

import (
	"go/build"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// This file holds the lines between the parts: what a folder may import. The
// way of the data is bytes → data → places and route → geo → planner/trip →
// planner → planner/trip → app or cmd, and there is no way back.

const goApp = "github.com/maxence-charriere/go-app/v10"

// allowed lists, by package, what its own code may import besides the standard library;
// a path allows what is below it too, one that ends in "$" does not. Tests may
// import what they compare with.
var allowed = map[string][]string{
	"geo":                    {"github.com/paulmach/orb", "github.com/tidwall/"},
	"geo/road":               {"github.com/paulmach/orb", "ullage/geo"},
	"geo/road/net":           {"github.com/paulmach/orb", "ullage/geo"},
	"geo/road/order":         {},
	"planner":                {},
	"planner/fact":           {},
	"planner/trip":           {"github.com/paulmach/orb", "ullage/planner$", "ullage/planner/life"},
	"planner/life":           {"ullage/planner/fact"},
	"planner/life/advice":    {"ullage/planner/fact", "ullage/planner/life$"},
	"planner/life/units":     {},
	"planner/byroad":         {"github.com/paulmach/orb", "ullage/geo", "ullage/planner"},
	"data":                   {"github.com/paulmach/orb", "ullage/geo", "ullage/planner", "ullage/data"},
	"data/foreign":           {"ullage/planner/fact"},
	"data/wrong":             {"ullage/planner/fact", "ullage/data/foreign", "ullage/data/strict", "ullage/data/osm/file"},
	"data/meant":             {},
	"data/plain":             {},
	"data/strict":            {"ullage/data/meant"},
	"data/problemfile":       {"ullage/data/strict", "ullage/data/wrong", "ullage/planner"},
	"data/osm/file":          {"github.com/paulmach/orb", "google.golang.org/protobuf/encoding/protowire"},
	"data/osm/file/filetest": {"ullage/data/osm/file"},
	"data/osm/tag":           {"ullage/geo/road/net", "ullage/planner/trip", "ullage/data/osm/file"},
	"data/osm/roads":         {"github.com/paulmach/orb", "ullage/geo", "ullage/geo/road/net", "ullage/data/hours", "ullage/data/osm/file", "ullage/data/osm/tag", "ullage/data/plain", "ullage/data/wrong"},
	"data/osm":               {"github.com/paulmach/orb", "ullage/geo/road/net", "ullage/planner/fact", "ullage/planner/trip", "ullage/data/osm/file", "ullage/data/osm/tag", "ullage/data/strict", "ullage/data/plain", "ullage/data/wrong", "ullage/data$"},
	"data/osm/osmtest":       {"github.com/paulmach/orb", "ullage/geo", "ullage/data"},
	"data/hours":             {"github.com/paulmach/orb"},
	"data/tripfile":          {"github.com/paulmach/orb", "ullage/geo", "ullage/planner", "ullage/data"},
	"data/demo":              {"github.com/paulmach/", "ullage/geo", "ullage/planner", "ullage/data"},
	"web":                    {},
	"app":                    {goApp, "github.com/paulmach/orb", "ullage/geo", "ullage/planner", "ullage/data", "ullage/app"},
	"app/say":                {"ullage/data/plain", "ullage/planner/fact", "ullage/planner/life/units"},
	"app/draw":               {"github.com/paulmach/orb", "ullage/geo", "ullage/planner"},
	"app/field":              {"ullage/app/say", "ullage/data/plain", "ullage/planner"},
	"app/model":              {"github.com/paulmach/orb", "ullage/geo", "ullage/planner", "ullage/app/draw", "ullage/app/field", "ullage/app/say"},
	"app/model/sample":       {"github.com/paulmach/orb", "ullage/planner"},
	"app/show":               {goApp, "ullage/planner", "ullage/app/draw", "ullage/app/model", "ullage/app/say"},
	"app/form":               {goApp, "ullage/planner", "ullage/app/field", "ullage/app/model", "ullage/app/say", "ullage/app/show"},
	"app/itinerary":          {goApp, "github.com/paulmach/orb", "ullage/planner", "ullage/app/browser", "ullage/app/draw", "ullage/app/model", "ullage/app/say", "ullage/app/show"},
	"app/strip":              {goApp, "ullage/planner", "ullage/app/browser", "ullage/app/draw", "ullage/app/model", "ullage/app/say", "ullage/app/show"},
	"app/mapview":            {goApp, "github.com/paulmach/orb", "ullage/planner", "ullage/app/browser", "ullage/app/draw", "ullage/app/model", "ullage/app/say", "ullage/app/show"},
	"app/job":                {"github.com/paulmach/orb", "ullage/geo", "ullage/planner", "ullage/data"},
	"app/browser":            {goApp, "ullage/app/keep"},
	"app/keep":               {},
	"cmd/client":             {goApp, "ullage/app"},
	"cmd/mutate":             {},
	"cmd/ullage/sheet":       {"ullage/app/say", "ullage/planner"},
	"cmd/ullage/page":        {goApp, "github.com/andybalholm/brotli", "ullage/app", "ullage/data", "ullage/web", "ullage/cmd/ullage/whole"},
	"cmd/ullage/whole":       {"golang.org/x/sys/unix"},
	"cmd/ullage/progress":    {"golang.org/x/term"},
	"cmd/ullage":             {"github.com/andybalholm/brotli", "github.com/paulmach/orb", "ullage/"},

	// The planner's rooms. The auditor is by itself: no mistake of the others can be its own.
	"planner/audit":                    {"ullage/planner$"},
	"planner/replay":                   {"ullage/planner$"},
	"planner/solve":                    {"ullage/planner$", "ullage/planner/audit", "ullage/planner/replay", "ullage/planner/internal"},
	"planner/reason":                   {"ullage/planner$", "ullage/planner/solve"},
	"planner/habit":                    {"ullage/planner$", "ullage/planner/audit", "ullage/planner/replay", "ullage/planner/solve"},
	"planner/backup":                   {"ullage/planner$", "ullage/planner/audit", "ullage/planner/replay", "ullage/planner/solve"},
	"planner/internal/model":           {"ullage/planner$"},
	"planner/internal/bound":           {"ullage/planner/internal/model"},
	"planner/internal/plantest":        {"ullage/planner$"},
	"planner/internal/plantest/solved": {"ullage/planner$", "ullage/planner/audit", "ullage/planner/solve"},

	// The rooms of a trip: words, build, read, answer, onward.
	"planner/trip/build":          {"github.com/paulmach/orb", "ullage/geo", "ullage/planner$", "ullage/planner/life", "ullage/planner/trip$"},
	"planner/trip/read":           {"ullage/geo", "ullage/planner$", "ullage/planner/backup", "ullage/planner/life", "ullage/planner/trip$", "ullage/planner/trip/build"},
	"planner/trip/audit":          {"ullage/planner$", "ullage/planner/life$", "ullage/planner/trip$"},
	"planner/trip/answer":         {"ullage/planner", "ullage/planner/trip"},
	"planner/trip/onward":         {"github.com/paulmach/orb", "ullage/geo", "ullage/planner$", "ullage/planner/life", "ullage/planner/trip$"},
	"planner/trip/triptest":       {"github.com/paulmach/orb", "pgregory.net/rapid", "ullage/planner$", "ullage/planner/trip$"},
	"planner/trip/triptest/built": {"ullage/planner$", "ullage/planner/replay", "ullage/planner/trip"},
}

// forbidden is never imported, not even from the standard library.
var forbidden = map[string][]string{
	"":        {"syscall/js", "unsafe", "github.com/paulmach/orb/geojson"},
	"geo":     {"os", "time", "log", "net", "math/rand", "sync", "io/fs"},
	"planner": {"os", "log", "net", "math/rand", "sync", "io/fs"},
	// What the page contains: a server in it would double it.
	"app":        {"net/http", "os/exec"},
	"cmd/client": {"net/http", "os/exec"},
}

// TestImports reads the imports of every file.
func TestImports(t *testing.T) {
	files := 0
	err := filepath.WalkDir(".", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && p != "." && (strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata") {
			return fs.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(p, ".go") {
			return nil
		}
		files++
		folder := filepath.ToSlash(filepath.Dir(p))
		f, err := parser.ParseFile(token.NewFileSet(), p, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range f.Imports {
			path, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			if complaint := check(folder, path, strings.HasSuffix(p, "_test.go")); complaint != "" {
				t.Errorf("%s imports %s: %s", p, path, complaint)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files < 50 {
		t.Errorf("only %d files were read", files)
	}
}

// check says what is wrong with an import; "" if nothing.
func check(folder, path string, test bool) string {
	if path == "syscall/js" {
		return "JavaScript is reached through go-app's values, in app/browser only"
	}
	if strings.HasPrefix(path, goApp) && folder != "app" && !strings.HasPrefix(folder, "app/") && !strings.HasPrefix(folder, "cmd/") {
		return "go-app belongs to app and cmd"
	}
	if test {
		return ""
	}
	if strings.HasPrefix(path, "ullage/") && helper(path) && !helper(folder) {
		return "it is there for tests"
	}
	for part, list := range forbidden {
		if helper(folder) && part != "" { // makes what tests compare
			continue
		}
		if part == "" || folder == part || strings.HasPrefix(folder, part+"/") {
			for _, bad := range list {
				if path == bad || strings.HasPrefix(path, bad+"/") {
					return "not in " + folder
				}
			}
		}
	}
	if standard(path) || strings.HasPrefix(folder, "planner") && folder != "planner/audit" && path == "ullage/planner/fact" {
		return ""
	}
	list, known := allowed[folder]
	if !known {
		return "the folder " + folder + " has no line in imports_test.go"
	}
	for _, good := range list {
		if only, alone := strings.CutSuffix(good, "$"); alone {
			if path == only {
				return ""
			}
			continue
		}
		if path == good || strings.HasPrefix(path, strings.TrimSuffix(good, "/")+"/") {
			return ""
		}
	}
	return "the layers do not allow it"
}

// helper is true for a folder whose code only tests use, and for what is in it.
func helper(folder string) bool { return strings.Contains(folder+"/", "test/") }

func standard(path string) bool {
	first, _, _ := strings.Cut(path, "/")
	return !strings.Contains(first, ".") && first != "ullage"
}

// TestCheck: the rule above finds what it is there for.
func TestCheck(t *testing.T) {
	for _, tc := range []struct {
		folder, path string
		wrong        bool
	}{
		{"planner", "ullage/planner/trip", true},
		{"planner", "ullage/geo", true},
		{"planner", "os", true},
		{"planner", "math/rand/v2", true},
		{"planner", "slices", false},
		{"planner/audit", "ullage/planner", false},
		{"planner/audit", "ullage/planner/replay", true},
		{"planner/audit", "ullage/planner/internal/model", true},
		{"planner/trip/answer", "ullage/planner/solve", false},
		{"planner/solve", "ullage/planner/internal/plantest", true},
		{"planner/reason", "ullage/planner/internal/plantest/solved", true},
		{"planner/internal/plantest", "math/rand/v2", false},
		{"geo", "ullage/planner", true},
		{"data/osm", "ullage/app", true},
		{"data/problemfile", "ullage/planner", false},
		{"data/osm", "ullage/data/osm/roads", true},
		{"data/osm/roads", "ullage/data/osm", true},
		{"app/draw", goApp + "/pkg/app", true},
		{"app/model", goApp + "/pkg/app", true},
		{"app/model", "ullage/app/browser", true},
		{"app/say", goApp + "/pkg/app", true},
		{"app/job", "net/http", true},
		{"cmd/client", "net/http", true},
		{"cmd/ullage", "net/http", false},
		{"app/browser", "syscall/js", true},
		{"app/browser", goApp + "/pkg/app", false},
		{"unheard/of", "github.com/paulmach/orb", true},
	} {
		if got := check(tc.folder, tc.path, false); (got != "") != tc.wrong {
			t.Errorf("check(%q, %q) = %q, want wrong to be %v", tc.folder, tc.path, got, tc.wrong)
		}
	}
}

// TestClientHasNoServer looks at what the page's own program is made of, through all packages.
func TestClientHasNoServer(t *testing.T) {
	ctx := build.Default
	ctx.GOOS, ctx.GOARCH, ctx.CgoEnabled = "js", "wasm", false
	seen := map[string]bool{}
	var walk func(string)
	walk = func(path string) {
		if seen[path] || !strings.HasPrefix(path, "ullage/") {
			seen[path] = true
			return
		}
		seen[path] = true
		p, err := ctx.ImportDir(filepath.FromSlash(strings.TrimPrefix(path, "ullage/")), 0)
		if err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		for _, i := range p.Imports {
			walk(i)
		}
	}
	walk("ullage/cmd/client")
	for _, bad := range []string{"net/http", "net", "os/exec", "ullage/web", "ullage/data/demo",
		"github.com/paulmach/osm", "github.com/paulmach/orb/geojson", "google.golang.org/protobuf/proto"} {
		if seen[bad] {
			t.Errorf("the page contains %s", bad)
		}
	}
}
