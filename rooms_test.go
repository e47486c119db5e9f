package ullage_test

import (
	"flag"
	"fmt"
	"go/ast"
	"go/build"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// This file holds what the rooms of the house promise: few enough files to look
// over, told as a story in doc.go in which each file uses only those above it.

// A room's story follows this line of its package comment, one "- file.go: …" each.
const storyBegins = "Files, each using only those above it:"

// mostFiles is what one can look over; tests stand beside them.
const mostFiles = 22

var room = flag.String("room", "", "a folder: print an order for its files, and the circles among them")

// TestRooms: every package of three files or more tells its story, and it is true.
func TestRooms(t *testing.T) {
	for _, folder := range rooms(t) {
		r := readRoom(t, folder)
		if len(r.files) < 3 {
			continue
		}
		if len(r.files) > mostFiles {
			t.Errorf("%s has %d files: find the ideas in it, and give each a room", folder, len(r.files))
		}
		story := r.story()
		if len(story) == 0 {
			t.Errorf("%s: doc.go has no story: %q and a line for each file", folder, storyBegins)
			continue
		}
		for _, complaint := range r.check(story) {
			t.Errorf("%s: %s", folder, complaint)
		}
	}
	if *room != "" {
		readRoom(t, *room).suggest(t)
	}
}

// rooms are all folders with Go files.
func rooms(t *testing.T) []string {
	seen := map[string]bool{}
	err := filepath.WalkDir(".", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && p != "." && (strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata") {
			return fs.SkipDir
		}
		if strings.HasSuffix(p, ".go") && !strings.HasSuffix(p, "_test.go") {
			seen[filepath.ToSlash(filepath.Dir(p))] = true
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return slices.Sorted(maps.Keys(seen))
}

// A houseRoom is a package by its files, without tests.
type houseRoom struct {
	files []string                       // doc.go left out
	doc   string                         // the comment of doc.go
	uses  map[string]map[string][]string // from file to file, by which names
}

// readRoom reads and checks the types of one package. What it imports stays
// unknown, which is enough to tell its own names apart.
func readRoom(t *testing.T, folder string) houseRoom {
	t.Helper()
	r := houseRoom{uses: map[string]map[string][]string{}}
	fset := token.NewFileSet()
	var parsed []*ast.File
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		name := e.Name()
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(fset, filepath.Join(folder, name), nil, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		if name == "doc.go" {
			r.doc = f.Doc.Text()
		} else {
			r.files = append(r.files, name)
		}
		if ok, _ := build.Default.MatchFile(folder, name); ok {
			parsed = append(parsed, f)
		}
	}
	info := types.Info{Uses: map[*ast.Ident]types.Object{}}
	conf := types.Config{Importer: blank{}, Error: func(error) {}}
	pkg, _ := conf.Check(folder, fset, parsed, &info)
	for id, obj := range info.Uses {
		if obj.Pkg() != pkg || !obj.Pos().IsValid() {
			continue
		}
		from, to := path.Base(fset.Position(id.Pos()).Filename), path.Base(fset.Position(obj.Pos()).Filename)
		if from == to {
			continue
		}
		if r.uses[from] == nil {
			r.uses[from] = map[string][]string{}
		}
		if names := r.uses[from][to]; !slices.Contains(names, obj.Name()) {
			r.uses[from][to] = append(names, obj.Name())
		}
	}
	return r
}

// blank imports packages of which nothing is known.
type blank struct{}

func (blank) Import(p string) (*types.Package, error) {
	pkg := types.NewPackage(p, path.Base(p))
	pkg.MarkComplete()
	return pkg, nil
}

// story lists the files that doc.go names, in its order.
func (r houseRoom) story() []string {
	var out []string
	_, list, _ := strings.Cut(r.doc, storyBegins)
	for line := range strings.Lines(list) {
		if item, ok := strings.CutPrefix(strings.TrimSpace(line), "- "); ok {
			name, _, _ := strings.Cut(item, ":")
			out = append(out, strings.TrimSpace(name))
		}
	}
	return out
}

// check holds a story against the files and what they use.
func (r houseRoom) check(story []string) []string {
	var out []string
	at := map[string]int{}
	for i, name := range story {
		if !slices.Contains(r.files, name) {
			out = append(out, fmt.Sprintf("doc.go names %s, which is not there", name))
		}
		if _, twice := at[name]; twice {
			out = append(out, fmt.Sprintf("doc.go names %s twice", name))
		}
		at[name] = i
	}
	for _, name := range r.files {
		if _, told := at[name]; !told {
			out = append(out, fmt.Sprintf("doc.go does not name %s", name))
		}
	}
	for _, from := range slices.Sorted(maps.Keys(r.uses)) {
		for _, to := range slices.Sorted(maps.Keys(r.uses[from])) {
			i, a := at[from]
			j, b := at[to]
			if a && b && j > i {
				out = append(out, fmt.Sprintf("%s uses %s of %s, which comes after it", from, some(r.uses[from][to]), to))
			}
		}
	}
	return out
}

// some are a few of many names.
func some(names []string) string {
	names = slices.Sorted(slices.Values(names))
	if n := len(names); n > 6 {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:6], ", "), n-6)
	}
	return strings.Join(names, ", ")
}

// suggest prints an order in which each file uses only those above it, and the
// circles that stand in its way.
func (r houseRoom) suggest(t *testing.T) {
	placed := map[string]bool{}
	left := slices.Clone(r.files)
	for len(left) > 0 {
		ready := slices.IndexFunc(left, func(f string) bool {
			for to := range r.uses[f] {
				if to != "doc.go" && !placed[to] && to != f {
					return false
				}
			}
			return true
		})
		if ready >= 0 {
			t.Logf("//   - %s: ", left[ready])
			placed[left[ready]] = true
			left = slices.Delete(left, ready, ready+1)
			continue
		}
		circle := r.circle(left, placed)
		t.Logf("a circle of %d files:", len(circle))
		for _, from := range circle {
			for _, to := range circle {
				if names := r.uses[from][to]; len(names) > 0 {
					t.Logf("    %s uses %s of %s", from, some(names), to)
				}
			}
		}
		for _, f := range circle {
			placed[f] = true
			t.Logf("//   - %s: (in the circle)", f)
		}
		left = slices.DeleteFunc(left, func(f string) bool { return placed[f] })
	}
}

// circle is a smallest set of files that use each other and, besides, only what is placed.
func (r houseRoom) circle(left []string, placed map[string]bool) []string {
	reach := map[string]map[string]bool{}
	for _, f := range left {
		seen := map[string]bool{}
		var walk func(string)
		walk = func(f string) {
			for to := range r.uses[f] {
				if !placed[to] && !seen[to] && slices.Contains(left, to) {
					seen[to] = true
					walk(to)
				}
			}
		}
		walk(f)
		reach[f] = seen
	}
	var best []string
	for _, f := range left {
		if n := slices.Sorted(maps.Keys(reach[f])); reach[f][f] && (best == nil || len(n) < len(best)) {
			best = n
		}
	}
	return best
}
