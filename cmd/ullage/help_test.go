package main

import (
	"flag"
	"strings"
	"testing"
)

// Every flag of every command is explained with an example that is right: it
// names the flag, and the flag takes its value.
func TestHelpExplainsEveryFlag(t *testing.T) {
	for _, c := range commands {
		set := flag.NewFlagSet(c.name, flag.ContinueOnError)
		c.setUp(set)
		code, text, errs := ullage("help", c.name)
		if code != exitOK || errs != "" || !strings.Contains(text, "usage: ullage "+c.name) || strings.ContainsAny(text, "‹›") {
			t.Errorf("help %s: exit %d, %s%s", c.name, code, text, errs)
		}
		if _, same, _ := ullage(c.name, "-h"); same != text {
			t.Errorf("%s -h says %s", c.name, same)
		}
		words := strings.Join(strings.Fields(text), " ")
		set.VisitAll(func(f *flag.Flag) {
			if f.Usage != "" {
				t.Errorf("%s -%s is explained in the code: its words belong into the catalogue", c.name, f.Name)
			}
			example := exampleOf(c.name, f.Name)
			if !strings.Contains(words, "-"+f.Name+" ") || !strings.Contains(words, "Example: "+example) {
				t.Errorf("help %s does not explain -%s with %q", c.name, f.Name, example)
			}
			if rest, err := readFlags(c.name, set, strings.Fields(example)); err != nil || len(rest) > 0 {
				t.Errorf("%s: the example %q: %v, left %q", c.name, example, err, rest)
			}
		})
	}
}

func TestHelp(t *testing.T) {
	code, text, _ := ullage("help")
	for _, c := range commands {
		if !strings.Contains(text, "  "+c.name+" ") {
			t.Errorf("help does not list %s", c.name)
		}
	}
	if code != exitOK || strings.ContainsAny(text, "‹›") {
		t.Errorf("help: exit %d, %s", code, text)
	}
	if code, _, errs := ullage(); code != exitUsage || errs != text {
		t.Errorf("no command: exit %d, %s", code, errs)
	}
}

// A slip of the finger is met with the word that was meant.
func TestNearest(t *testing.T) {
	for _, tc := range []struct{ args, want string }{
		{"plna", "did you mean: ullage plan"},
		{"server", "did you mean: ullage serve"},
		{"fly", "see: ullage help"},
		{"help plann", "did you mean: ullage plan"},
		{"plan -rout x", "did you mean -route? All of them: ullage help plan"},
		{"plan -palces x", "did you mean -places?"},
		{"plan -zzzzzz x", "there is no flag -zzzzzz; see: ullage help plan"},
		{"plan -within soon", `-within cannot be "soon": write it as -within 2m`},
		{"plan -trip", "-trip needs a value: -trip coast.geojson"},
		{"serve -adr x", "did you mean -addr?"},
	} {
		code, out, errs := ullage(strings.Fields(tc.args)...)
		if code != exitUsage || out != "" || !strings.Contains(errs, tc.want) || strings.Count(errs, "\n") != 1 {
			t.Errorf("ullage %s: exit %d, %q%q, want %q", tc.args, code, out, errs, tc.want)
		}
	}
}

func TestReadFlags(t *testing.T) {
	for _, tc := range []struct {
		args, rest, within string
		roads              bool
	}{
		{"", "", "30s", true},
		{"-within 2m a b", "a b", "2m0s", true},
		{"--within=5s -roads=false a -x", "a -x", "5s", false},
		{"-roads -within 1s -- -a", "-a", "1s", true},
		{"- a", "- a", "30s", true},
	} {
		set := flag.NewFlagSet("plan", flag.ContinueOnError)
		setUpPlan(set)
		rest, err := readFlags("plan", set, strings.Fields(tc.args))
		if got := set.Lookup("within").Value.String(); err != nil || strings.Join(rest, " ") != tc.rest || got != tc.within {
			t.Errorf("%q: within %s, rest %q, %v", tc.args, got, rest, err)
		}
		if got := set.Lookup("roads").Value.String() == "true"; got != tc.roads {
			t.Errorf("%q: roads %v", tc.args, got)
		}
	}
}
