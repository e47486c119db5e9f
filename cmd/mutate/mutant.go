package main

import (
	"bytes"
	"cmp"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"slices"
	"strings"
)

// A Mutant is one change to one file.
type Mutant struct {
	Package  string // import path
	File     string // as go list names it, absolute
	Line     int
	From, To int    // bytes of the file that are replaced
	New      string // by this
	Was, Is  string // the line it begins in, before and after, without indent
}

// Mutants returns all changes of a file, in the order of the source. Files that
// say that they are generated have none.
func Mutants(pkg, name string, source []byte) ([]Mutant, error) {
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, name, source, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	if ast.IsGenerated(file) {
		return nil, nil
	}
	c := changes{fset: fset, source: source}
	ast.Inspect(file, c.visit)
	for i := range c.found {
		m := &c.found[i]
		m.Package, m.File = pkg, name
		m.Was, m.Is = line(source, m.From), line(m.Apply(source), m.From)
	}
	slices.SortStableFunc(c.found, func(a, b Mutant) int { return cmp.Or(a.From-b.From, a.To-b.To) })
	return c.found, nil
}

// Apply returns the source with the change.
func (m Mutant) Apply(source []byte) []byte {
	return slices.Concat(source[:m.From], []byte(m.New), source[m.To:])
}

// Draw returns n of the mutants by chance, in the order of the source; all for n 0.
func Draw(all []Mutant, n int, seed uint64) []Mutant {
	if n <= 0 || n >= len(all) {
		return all
	}
	chosen := rand.New(rand.NewPCG(seed, 0)).Perm(len(all))[:n]
	slices.Sort(chosen)
	var out []Mutant
	for _, i := range chosen {
		out = append(out, all[i])
	}
	return out
}

type changes struct {
	fset   *token.FileSet
	source []byte
	found  []Mutant
}

// other is what an operator is taken for.
var other = map[token.Token]token.Token{
	token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR,
	token.EQL: token.NEQ, token.NEQ: token.EQL, token.LAND: token.LOR, token.LOR: token.LAND,
}

// visit finds what can be changed at a node; what it is false for is left whole.
func (c *changes) visit(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.ImportSpec, *ast.ArrayType:
		return false
	case *ast.BinaryExpr:
		if to, ok := other[n.Op]; ok {
			c.replace(n.OpPos, n.OpPos+token.Pos(len(n.Op.String())), to.String())
		}
	case *ast.IfStmt:
		c.replace(n.Cond.Pos(), n.Cond.End(), "!("+c.text(n.Cond)+")")
	case *ast.BasicLit:
		c.shift(n)
	case *ast.IncDecStmt:
		c.replace(n.Pos(), n.End(), "_ = "+c.text(n.X))
	case *ast.ExprStmt:
		if panics(n.X) {
			return false // only a broken invariant gets there
		}
		c.replace(n.Pos(), n.End(), "{}")
	case *ast.AssignStmt:
		c.drop(n)
	}
	return true
}

func panics(x ast.Expr) bool {
	call, ok := x.(*ast.CallExpr)
	if !ok {
		return false
	}
	f, ok := call.Fun.(*ast.Ident)
	return ok && f.Name == "panic"
}

// shift makes a whole number one more, and another one a quarter more.
func (c *changes) shift(n *ast.BasicLit) {
	switch {
	case n.Kind == token.INT:
		c.replace(n.Pos(), n.End(), "("+n.Value+" + 1)")
	case n.Kind == token.FLOAT && strings.Trim(n.Value, "0.") != "": // 0 stays 0
		c.replace(n.Pos(), n.End(), "("+n.Value+" * 1.25)")
	}
}

// drop leaves an assignment out; what it assigns is still reckoned, so that no
// name is without use.
func (c *changes) drop(n *ast.AssignStmt) {
	if n.Tok == token.DEFINE {
		return
	}
	var values []string
	for _, x := range n.Rhs {
		values = append(values, c.text(x))
	}
	blanks := strings.Repeat("_, ", len(n.Lhs)-1) + "_"
	if text := blanks + " = " + strings.Join(values, ", "); text != c.text(n) {
		c.replace(n.Pos(), n.End(), text)
	}
}

func (c *changes) text(n ast.Node) string {
	return string(c.source[c.fset.Position(n.Pos()).Offset:c.fset.Position(n.End()).Offset])
}

func (c *changes) replace(from, to token.Pos, by string) {
	at := c.fset.Position(from)
	c.found = append(c.found, Mutant{Line: at.Line, From: at.Offset, To: c.fset.Position(to).Offset, New: by})
}

// line is the line of a text that a byte is in, without indent.
func line(text []byte, at int) string {
	from := bytes.LastIndexByte(text[:at], '\n') + 1
	to := bytes.IndexByte(text[at:], '\n')
	if to < 0 {
		to = len(text) - at
	}
	return strings.TrimSpace(string(text[from : at+to]))
}

func (m Mutant) String() string {
	return fmt.Sprintf("%s:%d: %s => %s", m.File, m.Line, m.Was, m.Is)
}
