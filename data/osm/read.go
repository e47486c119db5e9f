package osm

import (
	"context"
	"errors"
	"fmt"
	"io"

	"ullage/planner/trip"
)

// Options say how to read. The zero value reads everything silently.
type Options struct {
	Progress   func(done, total int64) // bytes of the file taken in; called from Read, often
	NoBackdrop bool                    // places only
}

// An Extract is what the planner and the map need of a file.
type Extract struct {
	Places   []trip.Place // by type and number
	Backdrop Backdrop
	Date     string   // of the data, 2025-01-19; "" if the file does not say
	Objects  int      // objects that had a wanted tag
	Notes    []string // what was left out and why, for people
}

// Read reads an OpenStreetMap file. name is used in errors. The file is scanned up to three times: relations, then ways,
// then nodes, so that only what is wanted is held in memory. Nothing found is not an error.
// Errors name the file and where they can the byte offset.
func Read(ctx context.Context, name string, r io.ReadSeeker, opt Options) (Extract, error) {
	want := placeTags()
	if !opt.NoBackdrop {
		want = append(want, backdropTags()...)
	}
	f, err := Open(ctx, r, append(gateTags(), want...), opt.Progress)
	if err != nil {
		return Extract{}, fmt.Errorf("read %s: %w", name, err)
	}
	x, err := extract(ctx, f, want, opt)
	if errors.Is(err, errOrder) {
		f.scanAll()
		x, err = extract(ctx, f, want, opt)
	}
	if err != nil {
		return Extract{}, fmt.Errorf("read %s: %w", name, err)
	}
	return x, nil
}
