package osm

import (
	"context"
	"errors"
	"io"

	"ullage/data/osm/file"
	"ullage/data/wrong"
	"ullage/planner/trip"
)

// Read reads an OpenStreetMap file. name is used in errors. The file is scanned up to three times: relations, then ways,
// then nodes, so that only what is wanted is held in memory. Nothing found is not an error.
// A file with more than may be kept is refused while it is read ([TooLarge]). Errors name the file and where they can the byte offset.
func Read(ctx context.Context, name string, r io.ReadSeeker, opt Options) (x Extract, err error) {
	want := placeTags()
	if !opt.NoBackdrop {
		want = append(want, backdropTags()...)
	}
	all := file.Options{Want: append(gateTags(), want...), Progress: opt.Progress, Most: opt.Most}
	err = file.Read(ctx, r, all, func(f *file.File) error {
		s := &scan{want: want, gates: newGates()}
		if err := s.read(ctx, f); err != nil {
			return err
		}
		x = s.extract(builder{date: trip.Date(f.Date()), backdrop: !opt.NoBackdrop})
		return nil
	})
	var much *file.TooMuch
	if errors.As(err, &much) {
		err = TooLarge{much}
	}
	if err != nil {
		return Extract{}, wrong.In(name, err)
	}
	return x, nil
}
