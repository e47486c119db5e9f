package ullage_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// This file holds the shape of functions: short and plain enough to be read at
// once, and called by words that tell what they ask for.

const (
	mostLines   = 60 // from func to its closing brace
	mostPaths   = 15 // cyclomatic complexity, closures included
	tooLong     = "lines"
	tooManifold = "paths"
	asksBool    = "bool"
)

// A misshape is one way in which one function breaks its shape.
type misshape struct {
	function string // folder/file.go Function or Type.Method
	kind     string // tooLong, tooManifold or asksBool
}

// misshapen functions that stay, each with its reason. One that no longer applies fails.
var misshapen = map[misshape]string{
	{"planner/solve/pass.go sweep.visit", tooManifold}:          "the step of every label at every stop: the same",
	{"planner/internal/bound/pieces.go lower", tooManifold}:     "a merge of two lines in one pass, run for every stop and class",
	{"planner/internal/model/visit.go Model.Stay", tooManifold}: "what a night does to all tanks, run for every label",
}

// TestShape: a function of the house is short, has few paths and no bool parameter,
// for a call that says true does not say what.
func TestShape(t *testing.T) {
	found := map[misshape]string{}
	for _, folder := range rooms(t) {
		entries, err := os.ReadDir(folder)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if name := e.Name(); strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") {
				file := filepath.ToSlash(filepath.Join(folder, name))
				source, err := os.ReadFile(file)
				if err != nil {
					t.Fatal(err)
				}
				maps.Copy(found, misshapes(t, file, source))
			}
		}
	}
	for _, m := range sortedShapes(found) {
		if misshapen[m] == "" {
			t.Errorf("%s: %s", m.function, found[m])
		}
	}
	for _, m := range sortedShapes(misshapen) {
		if found[m] == "" {
			t.Errorf("%s: the exception for %s no longer applies", m.function, m.kind)
		}
	}
}

// misshapes are those of one file, each with what is wrong in words.
func misshapes(t *testing.T, file string, source []byte) map[misshape]string {
	t.Helper()
	fset := token.NewFileSet()
	parsed, err := parser.ParseFile(fset, file, source, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	out := map[misshape]string{}
	for _, d := range parsed.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok {
			continue
		}
		name := file + " " + functionName(f)
		if n := fset.Position(f.End()).Line - fset.Position(f.Pos()).Line + 1; n > mostLines {
			out[misshape{name, tooLong}] = fmt.Sprintf("%d lines, more than %d", n, mostLines)
		}
		if n := paths(f); n > mostPaths {
			out[misshape{name, tooManifold}] = fmt.Sprintf("cyclomatic complexity %d, more than %d", n, mostPaths)
		}
		if bools := boolParameters(f); len(bools) > 0 {
			out[misshape{name, asksBool}] = "bool parameter " + strings.Join(bools, ", ")
		}
	}
	return out
}

// functionName is Function or Type.Method.
func functionName(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return f.Name.Name
	}
	on := f.Recv.List[0].Type
	for {
		switch e := on.(type) {
		case *ast.StarExpr:
			on = e.X
		case *ast.IndexExpr:
			on = e.X
		case *ast.IndexListExpr:
			on = e.X
		case *ast.Ident:
			return e.Name + "." + f.Name.Name
		default:
			return f.Name.Name
		}
	}
}

// paths is the cyclomatic complexity of a function with its closures.
func paths(f *ast.FuncDecl) int {
	n := 1
	ast.Inspect(f, func(node ast.Node) bool {
		switch node := node.(type) {
		case *ast.IfStmt, *ast.ForStmt, *ast.RangeStmt:
			n++
		case *ast.CaseClause:
			if node.List != nil {
				n++
			}
		case *ast.CommClause:
			if node.Comm != nil {
				n++
			}
		case *ast.BinaryExpr:
			if node.Op == token.LAND || node.Op == token.LOR {
				n++
			}
		}
		return true
	})
	return n
}

// boolParameters are the names of a function's parameters of type bool.
func boolParameters(f *ast.FuncDecl) []string {
	var out []string
	for _, p := range f.Type.Params.List {
		if id, ok := p.Type.(*ast.Ident); ok && id.Name == "bool" {
			for _, n := range p.Names {
				out = append(out, n.Name)
			}
		}
	}
	return out
}

func sortedShapes(m map[misshape]string) []misshape {
	return slices.SortedFunc(maps.Keys(m), func(a, b misshape) int {
		return strings.Compare(a.function+a.kind, b.function+b.kind)
	})
}
