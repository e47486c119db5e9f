package main

import (
	"errors"
	"flag"
	"fmt"
	"strings"
)

// errHelp says that help was asked for.
var errHelp = errors.New("help is wanted")

// readFlags sets the flags that come first among the arguments and returns the
// rest. The error says what is wrong and what to write.
func readFlags(name string, set *flag.FlagSet, args []string) (rest []string, err error) {
	for len(args) > 0 {
		word := args[0]
		if len(word) < 2 || word[0] != '-' {
			break
		}
		if args = args[1:]; word == "--" {
			break
		}
		key, value, given := strings.Cut(strings.TrimLeft(word, "-"), "=")
		if key == "h" || key == "help" {
			return nil, errHelp
		}
		f := set.Lookup(key)
		if f == nil {
			return nil, unknownFlag(name, set, key)
		}
		switch {
		case given:
		case isSwitch(f):
			value = "true"
		case len(args) == 0:
			return nil, fmt.Errorf("-%s needs a value: %s", key, exampleOf(name, key))
		default:
			value, args = args[0], args[1:]
		}
		if err := f.Value.Set(value); err != nil {
			return nil, fmt.Errorf("-%s cannot be %q: write it as %s", key, value, exampleOf(name, key))
		}
	}
	return args, nil
}

// isSwitch says whether a flag stands alone, as package flag tells it.
func isSwitch(f *flag.Flag) bool {
	b, ok := f.Value.(interface{ IsBoolFlag() bool })
	return ok && b.IsBoolFlag()
}

func unknownFlag(name string, set *flag.FlagSet, key string) error {
	var all []string
	set.VisitAll(func(f *flag.Flag) { all = append(all, f.Name) })
	if meant := nearest(key, all); meant != "" {
		return fmt.Errorf("there is no flag -%s; did you mean -%s? All of them: ullage help %s", key, meant, name)
	}
	return fmt.Errorf("there is no flag -%s; see: ullage help %s", key, name)
}

// exampleOf is a flag as one writes it.
func exampleOf(command, flag string) string { return voice.Text("example." + command + "-" + flag) }

// isFlag is true for a word that no file is meant with.
func isFlag(arg string) bool { return len(arg) > 1 && arg[0] == '-' }
