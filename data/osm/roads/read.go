package roads

import (
	"cmp"
	"context"
	"io"

	"ullage/data/osm/file"
	"ullage/data/wrong"
	"ullage/geo/road/net"
)

// Options say how to read roads. The zero value reads silently.
type Options struct {
	Progress func(done, total int64) // bytes of the file taken in; called from Read, often
	Most     int64                   // bytes of memory that roads may take while they are read, about; 0: 16 GB. More is refused: [file.TooMuch]
}

const usualMost = 16 << 30

// Read reads the roads, ferries, barriers and turn restrictions of an OpenStreetMap file, for [net.Build]. name is used
// in errors. The file is scanned three times, relations, ways, nodes; only what roads need is held in memory.
// A file without roads gives an empty input and no error. What was left out is counted in Omitted.
func Read(ctx context.Context, name string, r io.ReadSeeker, opt Options) (in net.Input, err error) {
	all := file.Options{Want: wanted(), Progress: opt.Progress, Most: cmp.Or(opt.Most, usualMost)}
	err = file.Read(ctx, r, all, func(f *file.File) error {
		in, err = survey(ctx, f)
		return err
	})
	if err != nil {
		return net.Input{}, wrong.In(name, err)
	}
	return in, nil
}
