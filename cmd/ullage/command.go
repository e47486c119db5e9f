package main

import (
	"context"
	"flag"
	"fmt"
	"io"

	"ullage/app/say"
	"ullage/data/plain"
	"ullage/planner/fact"
)

// What a command returns to the shell.
const (
	exitOK         = 0
	exitBroken     = 1 // the audited plan breaks a rule
	exitUsage      = 2 // a flag or a file is wrong
	exitInfeasible = 3 // no plan exists, or none was found
)

// A command is one word after `ullage`. The catalogue has a line about it
// (command.NAME), how it is written (usage.NAME), and each flag with an example
// (flag.NAME-FLAG, example.NAME-FLAG).
type command struct {
	name  string
	setUp func(*flag.FlagSet) action // declares the flags
}

// An action runs a command whose flags were read; args are the other arguments.
type action func(ctx context.Context, args []string, to streams) int

// streams are where a command writes to.
type streams struct{ out, err io.Writer }

// voice is how the command line speaks, unless a flag says otherwise.
var voice = say.Voice{}

// wrong prints one line and returns the exit code for wrong input.
func (to streams) wrong(format string, args ...any) int {
	fmt.Fprintf(to.err, "ullage: %s\n", plain.Line(fmt.Sprintf(format, args...)))
	return exitUsage
}

// failed says an error to people.
func (to streams) failed(command string, err error) int {
	return to.wrong("%s: %s", command, voice.Value(fact.Why(err)))
}

// printed returns the exit code of a command whose last step was to print.
func (to streams) printed(err error) int {
	if err != nil {
		return to.wrong("print: %v", err)
	}
	return exitOK
}
