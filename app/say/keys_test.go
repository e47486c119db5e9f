package say

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// TestKeys looks through the program: every key that is said has a sentence in
// every language, with the same values; and every sentence is said somewhere.
// How-tos and checklists make their keys of ids: they say exactly those that package
// advice has.
func TestKeys(t *testing.T) {
	said, literals := keysOf(t, "../..")
	for _, f := range advised() {
		said[string(f.Kind)] = "planner/life/advice"
		literals[string(f.Kind)] = true
		for code, l := range languages {
			m, ok := l.catalog()[string(f.Kind)]
			for name := range f.Values {
				if ok && !slices.Contains(m.names(), name) { // one that is not there is told below
					t.Errorf("%s: %s does not say {%s}", code, f.Kind, name)
				}
			}
		}
	}
	for code, l := range languages {
		c := l.catalog()
		for key, where := range said {
			if _, ok := c[key]; !ok {
				t.Errorf("%s: %s.txt has no sentence %q", where, code, key)
			}
		}
		for key, m := range c {
			if !literals[key] && (made(key) || !literals[key[:strings.LastIndex(key, ".")+1]]) {
				t.Errorf("%s: nothing says %q", code, key)
			}
			want := languages["en"].catalog()[key].names()
			for _, name := range m.names() {
				if !slices.Contains(want, name) {
					t.Errorf("%s: %s asks for {%s}, which the English sentence does not have", code, key, name)
				}
			}
		}
	}
}

// made says whether a key is made of ids, so that a literal beginning proves nothing.
func made(key string) bool {
	return strings.HasPrefix(key, "howto.") || strings.HasPrefix(key, "check.")
}

// keysOf finds keys in the source below a folder: what is given to Text, Term,
// Of and the constants of type Kind. A sentence counts as said if its key is a
// literal anywhere, or its beginning up to the last point, as in Term("place." + kind).
func keysOf(t *testing.T, root string) (said map[string]string, literals map[string]bool) {
	said, literals = map[string]string{}, map[string]bool{}
	err := filepath.WalkDir(root, func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == "testdata" || len(d.Name()) > 2 && d.Name()[0] == '.'):
			return fs.SkipDir
		case !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go"):
			return nil
		}
		fset := token.NewFileSet()
		f, err := parser.ParseFile(fset, p, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			for _, e := range keyed(n) {
				if lit, ok := e.(*ast.BasicLit); ok && lit.Kind == token.STRING {
					key, _ := strconv.Unquote(lit.Value)
					said[key] = fset.Position(lit.Pos()).String()
				}
			}
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				s, _ := strconv.Unquote(lit.Value)
				literals[strings.TrimSuffix(strings.TrimSuffix(s, "%d"), "%s")] = true // also of Sprintf("weekday.%d")
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return said, literals
}

// keyed are the expressions of a node that are keys.
func keyed(n ast.Node) []ast.Expr {
	switch n := n.(type) {
	case *ast.CallExpr:
		f, ok := n.Fun.(*ast.SelectorExpr)
		if ok && len(n.Args) > 0 && (named(f, "fact", "Of") || named(f, "fact", "Term") || f.Sel.Name == "Text" && voice(f.X)) {
			return n.Args[:1]
		}
	case *ast.ValueSpec:
		if s, ok := n.Type.(*ast.SelectorExpr); ok && named(s, "fact", "Kind") {
			return n.Values
		}
	}
	return nil
}

func named(s *ast.SelectorExpr, of, name string) bool {
	x, ok := s.X.(*ast.Ident)
	return ok && x.Name == of && s.Sel.Name == name
}

// voice says whether an expression is a voice, by its name: v, voice, or a field Say or say.
func voice(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name == "v" || e.Name == "voice"
	case *ast.SelectorExpr:
		return e.Sel.Name == "Say" || e.Sel.Name == "say"
	}
	return false
}
