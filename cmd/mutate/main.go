package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

const (
	exitOK        = 0
	exitSurvivors = 1
	exitUsage     = 2
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdout, os.Stderr))
}

// options are the flags.
type options struct {
	n        int
	seed     uint64
	within   time.Duration
	also     string
	known    string
	workers  int
	patterns []string
}

func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	var o options
	fs := flag.NewFlagSet("mutate", flag.ContinueOnError)
	fs.SetOutput(stderr)
	fs.IntVar(&o.n, "n", 100, "how many mutants to draw; 0 tries all")
	fs.Uint64Var(&o.seed, "seed", 1, "what they are drawn by")
	fs.DurationVar(&o.within, "timeout", time.Minute, "how long a package's tests may take; longer is noticed")
	fs.StringVar(&o.also, "also", "", "packages whose tests are asked too, separated by commas")
	fs.StringVar(&o.known, "known", "", "file of survivors that may stay; default known.txt of this command")
	fs.IntVar(&o.workers, "p", 1, "mutants tried at a time")
	if err := fs.Parse(args); err != nil {
		return exitUsage
	}
	if o.patterns = fs.Args(); len(o.patterns) == 0 || o.workers < 1 {
		fmt.Fprintln(stderr, "mutate: name packages; try: go run ./cmd/mutate -n 50 ./data/hours")
		return exitUsage
	}
	t, err := begin(ctx, o)
	if err != nil {
		fmt.Fprintf(stderr, "mutate: %v\n", err)
		return exitUsage
	}
	outcomes, err := t.all(ctx, o.workers, stderr)
	if err != nil {
		fmt.Fprintf(stderr, "mutate: %v\n", err)
		return exitUsage
	}
	return t.tell(outcomes, stdout)
}

// A trial is what is tried, and by whom.
type trial struct {
	root    string // of the module
	owners  map[string]Package
	mutants []Mutant
	judge   Judge
	known   Known
}

// begin draws the mutants, and sees that the tests pass without any.
func begin(ctx context.Context, o options) (*trial, error) {
	packages, err := List(ctx, o.patterns)
	if err != nil {
		return nil, err
	}
	t := &trial{owners: map[string]Package{}, judge: Judge{Within: o.within}}
	var all []Mutant
	for _, p := range packages {
		t.root, t.owners[p.ImportPath] = p.Module.Dir, p
		for _, name := range p.GoFiles {
			file := filepath.Join(p.Dir, name)
			source, err := os.ReadFile(file)
			if err != nil {
				return nil, err
			}
			found, err := Mutants(p.ImportPath, file, source)
			if err != nil {
				return nil, err
			}
			all = append(all, found...)
		}
	}
	t.mutants = Draw(all, o.n, o.seed)
	if o.also != "" {
		if t.judge.Also, err = List(ctx, strings.Split(o.also, ",")); err != nil {
			return nil, err
		}
	}
	if o.known == "" {
		o.known = filepath.Join(t.root, "cmd", "mutate", "known.txt")
	}
	text, err := os.ReadFile(o.known)
	if err != nil {
		return nil, err
	}
	if t.known, err = ReadKnown(o.known, string(text)); err != nil {
		return nil, err
	}
	for _, p := range packages {
		if outcome, err := t.judge.Try(ctx, p, nil); err != nil || outcome != Survived {
			return nil, fmt.Errorf("the tests of %s, or of -also, fail without any mutant within %v (%w)", p.ImportPath, o.within, err)
		}
	}
	return t, nil
}

// all tries each mutant.
func (t *trial) all(ctx context.Context, workers int, progress io.Writer) ([]Outcome, error) {
	outcomes, errs := make([]Outcome, len(t.mutants)), make([]error, len(t.mutants))
	next := make(chan int)
	var group sync.WaitGroup
	for range workers {
		group.Go(func() {
			for i := range next {
				outcomes[i], errs[i] = t.judge.Try(ctx, t.owners[t.mutants[i].Package], &t.mutants[i])
			}
		})
	}
	for i := range t.mutants {
		if ctx.Err() != nil {
			break
		}
		next <- i
		far(progress, i+1, len(t.mutants))
	}
	close(next)
	group.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return outcomes, ctx.Err()
}

// far says how many mutants are under way: in one place of a terminal, else in a
// line for each tenth, so that a log stays short.
func far(w io.Writer, done, all int) {
	switch {
	case !terminal(w):
		if done*10/all > (done-1)*10/all {
			fmt.Fprintf(w, "%d of %d\n", done, all)
		}
	case done < all:
		fmt.Fprintf(w, "\r%d of %d", done, all)
	default:
		fmt.Fprintf(w, "\r%d of %d\n", done, all)
	}
}

// terminal tells whether a writer is a terminal, or as good as one: nobody reads
// another device.
func terminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// tell prints the survivors and the count.
func (t *trial) tell(outcomes []Outcome, stdout io.Writer) int {
	count := map[Outcome]int{}
	news := 0
	for i, o := range outcomes {
		count[o]++
		if o != Survived {
			continue
		}
		m := t.mutants[i]
		if rel, err := filepath.Rel(t.root, m.File); err == nil {
			m.File = filepath.ToSlash(rel)
		}
		if _, known := t.known[key(m.File, m.Was, m.Is)]; !known {
			news++
			fmt.Fprintln(stdout, m)
		}
	}
	fmt.Fprintf(stdout, "%d mutants: %d noticed, %d survived (%d known), %d do not compile\n",
		len(outcomes), count[Killed], count[Survived], count[Survived]-news, count[NotBuilt])
	if news > 0 {
		return exitSurvivors
	}
	return exitOK
}
