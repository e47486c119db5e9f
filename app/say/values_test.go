package say

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// TestValues looks through the program: where a key is said with values written
// beside it, they are all those that its sentence cannot do without. A value that
// is missing would be shown as ‹name›.
func TestValues(t *testing.T) {
	files := parsed(t, "../..")
	kinds := kindsOf(files)
	checked := 0
	for _, f := range files {
		ast.Inspect(f.file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok || len(call.Args) != 2 || len(keyed(n)) == 0 {
				return true
			}
			given, ok := written(call.Args[1])
			key := kinds[constant(call.Args[0])]
			if lit, literal := call.Args[0].(*ast.BasicLit); literal {
				key, _ = strconv.Unquote(lit.Value)
			}
			m, known := languages["en"].catalog()[key]
			if !ok || !known {
				return true
			}
			checked++
			for _, name := range m.needs() {
				if !slices.Contains(given, name) {
					t.Errorf("%s: %s is said without {%s}", f.at(call), key, name)
				}
			}
			return true
		})
	}
	if checked < 100 {
		t.Errorf("only %d sentences were looked at", checked)
	}
}

// needs are the values that a message cannot do without: all but those that it
// asks for only where they are there.
func (m message) needs() []string {
	out := map[string]bool{}
	var walk func(message, map[string]bool)
	walk = func(m message, there map[string]bool) {
		for _, p := range m {
			if p.name != "" && p.cases == nil && !there[p.name] {
				out[p.name] = true
			}
			none := slices.ContainsFunc(p.cases, func(c choice) bool { return c.when == "none" })
			if p.cases != nil && !none && !there[p.name] {
				out[p.name] = true
			}
			for _, c := range p.cases {
				known := maps.Clone(there)
				if known == nil {
					known = map[string]bool{}
				}
				known[p.name] = true
				if p.how == "select" && c.when != "none" && none {
					// A branch for what is there may ask for what comes with it.
					for _, name := range c.says.names() {
						known[name] = true
					}
				}
				walk(c.says, known)
			}
		}
	}
	walk(m, nil)
	return slices.Sorted(maps.Keys(out))
}

// A source is one file of the program.
type source struct {
	file *ast.File
	set  *token.FileSet
}

func (s source) at(n ast.Node) string { return s.set.Position(n.Pos()).String() }

// parsed are all files of the program below a folder, without tests.
func parsed(t *testing.T, root string) []source {
	var out []source
	err := filepath.WalkDir(root, func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == "testdata" || len(d.Name()) > 2 && d.Name()[0] == '.'):
			return fs.SkipDir
		case !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go"):
			return nil
		}
		set := token.NewFileSet()
		f, err := parser.ParseFile(set, p, nil, 0)
		out = append(out, source{f, set})
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// kindsOf are the constants of type fact.Kind by their name; one that two
// packages give different keys is left out.
func kindsOf(files []source) map[string]string {
	out := map[string]string{}
	for _, f := range files {
		ast.Inspect(f.file, func(n ast.Node) bool {
			spec, ok := n.(*ast.ValueSpec)
			if !ok || len(keyed(n)) != len(spec.Names) {
				return true
			}
			for i, value := range spec.Values {
				lit, ok := value.(*ast.BasicLit)
				if !ok {
					continue
				}
				key, _ := strconv.Unquote(lit.Value)
				if other, twice := out[spec.Names[i].Name]; twice && other != key {
					key = ""
				}
				out[spec.Names[i].Name] = key
			}
			return true
		})
	}
	return out
}

// constant is the name of a constant, its own package's or another's.
func constant(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}

// written are the names of the values of a literal fact.V; ok is false for
// anything else. nil has none.
func written(e ast.Expr) (names []string, ok bool) {
	if id, is := e.(*ast.Ident); is && id.Name == "nil" {
		return nil, true
	}
	lit, is := e.(*ast.CompositeLit)
	if !is {
		return nil, false
	}
	if s, is := lit.Type.(*ast.SelectorExpr); !is || !named(s, "fact", "V") {
		return nil, false
	}
	for _, e := range lit.Elts {
		name, is := e.(*ast.KeyValueExpr).Key.(*ast.BasicLit)
		if !is {
			return nil, false
		}
		s, _ := strconv.Unquote(name.Value)
		names = append(names, s)
	}
	return names, true
}
