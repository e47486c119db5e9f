package main

import (
	"context"
	"flag"
	"fmt"

	"github.com/andybalholm/brotli"

	"ullage/cmd/ullage/page"
	"ullage/planner/fact"
)

// A siteRun writes the page as static files.
type siteRun struct {
	out     string
	quality int
}

func setUpSite(set *flag.FlagSet) action {
	s := &siteRun{}
	set.StringVar(&s.out, "out", "", "")
	set.IntVar(&s.quality, "brotli", brotli.BestCompression, "")
	return s.run
}

func (s *siteRun) run(ctx context.Context, args []string, to streams) int {
	switch {
	case len(args) > 0:
		return to.wrong("site: %q is too much: write ullage site -out DIR", args[0])
	case s.out == "":
		return to.wrong("site: say where to write: ullage site -out DIR")
	case s.quality < -1 || s.quality > brotli.BestCompression:
		return to.wrong("site: -brotli %d: write 0 to 11, or -1 for no packed files", s.quality)
	}
	if err := page.CheckFolder(s.out); err != nil {
		return to.wrong("site: %v", err)
	}
	b := newBuilding(to.err)
	defer b.end()
	files, err := b.files(ctx)
	if err != nil {
		return to.wrong("site: %v", err)
	}
	sizes, err := page.WriteFiles(s.out, files, page.WriteOptions{Quality: s.quality, Packing: b.packing})
	b.end()
	if err != nil {
		return to.wrong("site: %v", err)
	}
	_, err = fmt.Fprintln(to.out, voice.Text("site.done", fact.V{"folder": fact.Text(s.out), "program": megabytes(sizes.Program), "program_packed": megabytes(sizes.ProgramPacked),
		"all": megabytes(sizes.All), "all_packed": megabytes(sizes.AllPacked)}))
	return to.printed(err)
}

// megabytes are a size as people read it.
func megabytes(n int) fact.Value { return fact.Quantity(float64(n)/1e6, "MB", 2) }
