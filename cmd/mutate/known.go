package main

import (
	"fmt"
	"strings"
)

// Known are survivors that may stay, with the reason.
type Known map[string]string

// key names a mutant without its line number, which moves. file is relative to
// the module.
func key(file, was, is string) string { return file + ": " + was + " => " + is }

// ReadKnown reads a list: a line `FILE: BEFORE => AFTER`, and below it,
// indented, why that may stay. # begins a comment; a survivor without a reason
// is an error.
func ReadKnown(name, text string) (Known, error) {
	known := Known{}
	last, at := "", 0
	end := func() error {
		if last != "" && known[last] == "" {
			return fmt.Errorf("%s:%d: %q has no reason: write it below, indented", name, at, last)
		}
		return nil
	}
	for i, line := range strings.Split(text, "\n") {
		words := strings.TrimSpace(line)
		switch {
		case words == "" || strings.HasPrefix(line, "#"):
		case line != strings.TrimLeft(line, " \t"):
			if last == "" {
				return nil, fmt.Errorf("%s:%d: a reason for nothing: write FILE: BEFORE => AFTER above it", name, i+1)
			}
			known[last] = strings.TrimSpace(known[last] + " " + words)
		default:
			if err := end(); err != nil {
				return nil, err
			}
			last, at = words, i+1
			known[last] = ""
		}
	}
	return known, end()
}
