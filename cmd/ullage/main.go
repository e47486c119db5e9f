package main

import (
	"context"
	"errors"
	"flag"
	"os"
	"os/signal"
	"slices"
	"syscall"

	"ullage/data/meant"
)

// commands are all there are, in the order of the help.
var commands = []command{
	{"plan", setUpPlan},
	{"serve", setUpServe},
	{"site", setUpSite},
	{"places", setUpPlaces},
	{"solve", setUpSolve},
	{"audit", setUpAudit},
}

func main() {
	ctx, end := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, end) // the first Ctrl-C ends in order, the second at once
	os.Exit(run(ctx, os.Args[1:], streams{os.Stdout, os.Stderr}))
}

// run calls the command that the first argument names.
func run(ctx context.Context, args []string, to streams) int {
	if len(args) == 0 {
		usage(to.err, commands)
		return exitUsage
	}
	name, args := args[0], args[1:]
	if slices.Contains([]string{"help", "-h", "-help", "--help"}, name) {
		if len(args) == 0 {
			usage(to.out, commands)
			return exitOK
		}
		name, args = args[0], []string{"-h"}
	}
	at := slices.IndexFunc(commands, func(c command) bool { return c.name == name })
	if at < 0 {
		return noCommand(name, to)
	}
	c := commands[at]
	set := flag.NewFlagSet(c.name, flag.ContinueOnError)
	do := c.setUp(set)
	rest, err := readFlags(c.name, set, args)
	if errors.Is(err, errHelp) {
		help(to.out, c)
		return exitOK
	}
	if err != nil {
		return to.wrong("%s: %v", c.name, err)
	}
	return do(ctx, rest, to)
}

func noCommand(name string, to streams) int {
	var names []string
	for _, c := range commands {
		names = append(names, c.name)
	}
	if most := meant.Which(name, names); most != "" {
		return to.wrong("there is no command %q; did you mean: ullage %s", name, most)
	}
	return to.wrong("there is no command %q; see: ullage help", name)
}
