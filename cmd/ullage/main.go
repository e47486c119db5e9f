// Command ullage plans the stops of a motorhome trip: where to refuel, top
// up, fill, drain, empty, charge and spend the nights.
//
//	ullage plan [-trip F] [-route F] [-places F,…] [-json]
//	ullage places FILE…
//	ullage solve [-within TIME] PROBLEM.json
//	ullage audit PROBLEM.json PLAN.json
//	ullage serve [-addr HOST:PORT]
//	ullage site -out DIR
//
// It exits 0 if all went well, 1 if an audited plan is broken, 2 if a flag or
// a file is wrong, 3 if no plan exists.
package main

import (
	"fmt"
	"io"
	"os"
)

// What a command returns to the shell.
const (
	exitOK         = 0
	exitBroken     = 1 // the audited plan breaks a rule
	exitUsage      = 2 // a flag or a file is wrong
	exitInfeasible = 3 // no plan exists, or none was found
)

// A command is one word after `ullage`.
type command struct {
	name  string
	usage string // one line
	run   func(args []string, stdout, stderr io.Writer) int
}

var commands = []command{
	{"plan", "plan [-trip F] [-route F] [-places F,…] [-json]   plan a trip; no flags: the demo trip", plan},
	{"places", "places FILE…                                      places of OSM extracts as GeoJSON", places},
	{"solve", "solve [-within TIME] PROBLEM.json                 the plan of least cost as JSON", solveFile},
	{"audit", "audit PROBLEM.json PLAN.json                      replay a plan; exit 1 names the broken rule", auditFile},
	{"serve", "serve [-addr HOST:PORT]                           the page, on this machine only", serve},
	{"site", "site -out DIR                                     the page as static files for any host", site},
}

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run calls the command that the first argument names.
func run(args []string, stdout, stderr io.Writer) int {
	if len(args) == 0 {
		usage(stderr)
		return exitUsage
	}
	if args[0] == "help" || args[0] == "-h" || args[0] == "-help" || args[0] == "--help" {
		usage(stdout)
		return exitOK
	}
	for _, c := range commands {
		if c.name == args[0] {
			return c.run(args[1:], stdout, stderr)
		}
	}
	fmt.Fprintf(stderr, "ullage: no command %q; try: ullage help\n", args[0])
	return exitUsage
}

func usage(w io.Writer) {
	fmt.Fprintln(w, "usage: ullage COMMAND …")
	for _, c := range commands {
		fmt.Fprintln(w, "  ullage", c.usage)
	}
}
