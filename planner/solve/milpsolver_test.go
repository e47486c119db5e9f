package solve_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ullage/planner"
)

// This file runs a general-purpose MILP solver on programs in LP format:
// HiGHS (npm package highs, under node) if ULLAGE_HIGHS or -highs names the
// folder that holds it (a folder with node_modules, or node_modules itself),
// else glpsol or cbc if installed. Without any, tests that need one skip and
// say so; with ULLAGE_REQUIRE_MILP=1 they fail.

var highsDir = flag.String("highs", os.Getenv("ULLAGE_HIGHS"), "folder of node_modules with the package highs")

// A milpSolver solves LP files and gives a result for each.
type milpSolver struct {
	name  string // with version
	solve func(t testing.TB, seconds float64, files []string) []milpResult
}

type milpResult struct {
	Status    string             // "optimal", "infeasible", or as the solver puts it
	Objective float64            // valid if optimal
	Seconds   float64            // wall time of the solving alone, 0 if not told
	Values    map[string]float64 // columns that are not 0, nil if not told
}

// findMILP gives the solver, or skips (or fails) the test.
func findMILP(t testing.TB) milpSolver {
	if s, ok := findHiGHS(t); ok {
		return s
	}
	if path, err := exec.LookPath("glpsol"); err == nil {
		out, _ := exec.Command(path, "--version").Output()
		return milpSolver{name: "glpsol " + firstMatch(`GLPSOL.*?([0-9]+\.[0-9]+)`, string(out), ""), solve: oneByOne(runGLPK(path))}
	}
	if path, err := exec.LookPath("cbc"); err == nil {
		return milpSolver{name: "cbc", solve: oneByOne(runCBC(path))}
	}
	noMILP(t, "no MILP solver: set ULLAGE_HIGHS to the folder of the npm package highs, or install glpsol or cbc")
	panic("unreachable")
}

func noMILP(t testing.TB, why string) {
	t.Helper()
	if os.Getenv("ULLAGE_REQUIRE_MILP") == "1" {
		t.Fatal(why)
	}
	t.Skip(why)
}

func findHiGHS(t testing.TB) (milpSolver, bool) {
	if *highsDir == "" {
		return milpSolver{}, false
	}
	dir, err := filepath.Abs(*highsDir)
	if err != nil {
		t.Fatal(err)
	}
	if filepath.Base(dir) != "node_modules" {
		dir = filepath.Join(dir, "node_modules")
	}
	manifest, err := os.ReadFile(filepath.Join(dir, "highs", "package.json"))
	if err != nil {
		t.Fatalf("-highs: %v", err)
	}
	var about struct{ Version string }
	if err := json.Unmarshal(manifest, &about); err != nil {
		t.Fatal(err)
	}
	return milpSolver{name: "HiGHS, npm highs " + about.Version, solve: runHiGHS(filepath.Join(dir, "highs"))}, true
}

// highsScript solves all files in one process: package folder, seconds, files.
const highsScript = `
const fs = require('fs'), [pkg, seconds, ...files] = process.argv.slice(2);
require(pkg)().then(solver => { for (const file of files) {
  const from = performance.now();
  const r = solver.solve(fs.readFileSync(file, 'utf8'), {time_limit: Number(seconds), mip_rel_gap: 1e-9, mip_abs_gap: 1e-7,
    mip_feasibility_tolerance: 1e-9, primal_feasibility_tolerance: 1e-9});
  const values = Object.fromEntries(Object.values(r.Columns ?? {}).filter(c => c.Primal).map(c => [c.Name, c.Primal]));
  console.log(JSON.stringify({status: r.Status.toLowerCase(), objective: r.ObjectiveValue, seconds: (performance.now() - from) / 1000, values}));
}});`

func runHiGHS(pkg string) func(testing.TB, float64, []string) []milpResult {
	return func(t testing.TB, seconds float64, files []string) []milpResult {
		t.Helper()
		script := filepath.Join(t.TempDir(), "solve.cjs")
		if err := os.WriteFile(script, []byte(highsScript), 0o600); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command("node", append([]string{script, pkg, fmt.Sprint(seconds)}, files...)...)
		var complaints bytes.Buffer
		cmd.Stderr = &complaints
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("HiGHS: %v: %s", err, complaints.String())
		}
		var results []milpResult
		for line := range strings.Lines(string(out)) {
			var r milpResult
			if err := json.Unmarshal([]byte(line), &r); err != nil {
				t.Fatalf("HiGHS printed %q: %v", line, err)
			}
			results = append(results, r)
		}
		if len(results) != len(files) {
			t.Fatalf("HiGHS gave %d results for %d programs: %s", len(results), len(files), complaints.String())
		}
		return results
	}
}

func oneByOne(solve func(t testing.TB, seconds float64, file string) milpResult) func(testing.TB, float64, []string) []milpResult {
	return func(t testing.TB, seconds float64, files []string) []milpResult {
		var out []milpResult
		for _, f := range files {
			out = append(out, solve(t, seconds, f))
		}
		return out
	}
}

func runGLPK(path string) func(testing.TB, float64, string) milpResult {
	return func(t testing.TB, seconds float64, file string) milpResult {
		t.Helper()
		told := file + ".glpk"
		if out, err := exec.Command(path, "--lp", file, "--tmlim", strconv.Itoa(int(seconds)), "--cuts", "-o", told).CombinedOutput(); err != nil {
			t.Fatalf("glpsol: %v: %s", err, out)
		}
		text, err := os.ReadFile(told)
		if err != nil {
			t.Fatal(err)
		}
		r := milpResult{Status: firstMatch(`Status: +(.*)`, string(text), "unknown")}
		switch r.Status {
		case "INTEGER OPTIMAL":
			r.Status = "optimal"
			r.Objective, _ = strconv.ParseFloat(firstMatch(`Objective: +cost = (\S+)`, string(text), "NaN"), 64)
		case "INTEGER EMPTY", "INTEGER UNDEFINED":
			r.Status = "infeasible"
		}
		return r
	}
}

func runCBC(path string) func(testing.TB, float64, string) milpResult {
	return func(t testing.TB, seconds float64, file string) milpResult {
		t.Helper()
		told := file + ".cbc"
		if out, err := exec.Command(path, file, "sec", fmt.Sprint(seconds), "ratio", "0", "allow", "1e-9", "solve", "solu", told).CombinedOutput(); err != nil {
			t.Fatalf("cbc: %v: %s", err, out)
		}
		text, err := os.ReadFile(told)
		if err != nil {
			t.Fatal(err)
		}
		first, _, _ := strings.Cut(string(text), "\n")
		switch {
		case strings.HasPrefix(first, "Optimal"):
			objective, _ := strconv.ParseFloat(firstMatch(`objective value +(\S+)`, first, "NaN"), 64)
			return milpResult{Status: "optimal", Objective: objective}
		case strings.Contains(strings.ToLower(first), "infeasible"):
			return milpResult{Status: "infeasible"}
		}
		return milpResult{Status: first}
	}
}

// firstMatch is the first group of the expression that matched, or other.
func firstMatch(expression, text, other string) string {
	for _, m := range regexp.MustCompile(expression).FindStringSubmatch(text)[min(1, len(regexp.MustCompile(expression).FindStringSubmatch(text))):] {
		if m != "" {
			return m
		}
	}
	return other
}

// writeLPs writes each problem into the test's own folder.
func writeLPs(t testing.TB, problems []*planner.Problem) []string {
	t.Helper()
	dir := t.TempDir()
	var files []string
	for i, p := range problems {
		var b bytes.Buffer
		if err := writeMILP(&b, p); err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(dir, fmt.Sprintf("%d.lp", i))
		if err := os.WriteFile(file, b.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	return files
}
