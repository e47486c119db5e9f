package main

import (
	"errors"
	"flag"
	"fmt"
	"strings"
	"time"

	"ullage/data/meant"
)

// errHelp says that help was asked for.
var errHelp = errors.New("help is wanted")

// readFlags sets the flags that come first among the arguments and returns the
// rest. The error says what is wrong and what to write.
func readFlags(name string, set *flag.FlagSet, args []string) (rest []string, err error) {
	seen := map[string]bool{}
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
		if seen[key] {
			return nil, fmt.Errorf("-%s is given twice: which one counts?", key)
		}
		seen[key] = true
		switch {
		case given:
		case isSwitch(f):
			value = "true"
		case len(args) == 0:
			return nil, fmt.Errorf("-%s needs a value: %s", key, exampleOf(name, key))
		default:
			value, args = args[0], args[1:]
		}
		if err := f.Value.Set(value); err != nil || tooShort(f) {
			return nil, fmt.Errorf("-%s cannot be %q: write it as %s", key, value, exampleOf(name, key))
		}
	}
	return args, nil
}

// tooShort says whether a flag is a time that is over before it begins.
func tooShort(f *flag.Flag) bool {
	g, ok := f.Value.(flag.Getter)
	if !ok {
		return false
	}
	d, is := g.Get().(time.Duration)
	return is && d < 0
}

// isSwitch says whether a flag stands alone, as package flag tells it.
func isSwitch(f *flag.Flag) bool {
	b, ok := f.Value.(interface{ IsBoolFlag() bool })
	return ok && b.IsBoolFlag()
}

func unknownFlag(name string, set *flag.FlagSet, key string) error {
	var all []string
	set.VisitAll(func(f *flag.Flag) { all = append(all, f.Name) })
	if most := meant.Which(key, all); most != "" {
		return fmt.Errorf("there is no flag -%s; did you mean -%s? All of them: ullage help %s", key, most, name)
	}
	return fmt.Errorf("there is no flag -%s; see: ullage help %s", key, name)
}

// exampleOf is a flag as one writes it.
func exampleOf(command, flag string) string { return voice.Text("example." + command + "-" + flag) }

// isFlag is true for a word that no file is meant with.
func isFlag(arg string) bool { return len(arg) > 1 && arg[0] == '-' }
