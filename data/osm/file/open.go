package file

import (
	"bufio"
	"bytes"
	"compress/bzip2"
	"compress/gzip"
	"context"
	"errors"
	"fmt"
	"io"
)

// A File is an OpenStreetMap file opened for scans by type of object. Scan relations first, then ways, then nodes: so what
// a later scan must keep is known, and every block of a PBF file in the usual order is unpacked once.
type File struct{ scans }

// scans of the objects that have a tag wanted at [Open], or a number in also. Callbacks run on the caller's goroutine;
// an error of theirs ends the scan and is returned as it is.
type scans interface {
	Relations(ctx context.Context, fn func(Relation) error) error
	Ways(ctx context.Context, also IDs, fn func(Way) error) error
	Nodes(ctx context.Context, also IDs, fn func(Node) error) error

	// Date is the day that the data are of, 2025-01-19: as stated, else that of the newest object once all scans are done; ""
	// if the file says neither.
	Date() string
}

// Options say how to open a file.
type Options struct {
	Want     Want                    // all tags that any of the scans may ask for, at most 64
	Progress func(done, total int64) // may be nil; called with the bytes of the file taken in, often
	Most     int64                   // bytes of memory that what is wanted may take, about; 0: 4 GB. More is [TooMuch]
}

// Read opens a file and calls read, which scans it. Where the blocks of a PBF file turn out not to be in the usual order, read is
// called once more, and must begin anew; its error is returned.
func Read(ctx context.Context, r io.ReadSeeker, opt Options, read func(*File) error) error {
	f, err := Open(ctx, r, opt)
	if err != nil {
		return err
	}
	err = read(f)
	if p, ok := f.scans.(*pbf); ok && errors.Is(err, errOrder) {
		p.anyOrder, p.scanned, p.kept.bytes = true, 0, 0
		err = read(f)
	}
	return err
}

// Open recognises the encoding by the content. Scans of the file may fail for its order of blocks; see [Read].
func Open(ctx context.Context, r io.ReadSeeker, opt Options) (*File, error) {
	total, err := r.Seek(0, io.SeekEnd)
	if err != nil {
		return nil, err
	}
	if _, err := r.Seek(0, io.SeekStart); err != nil {
		return nil, err
	}
	if opt.Most == 0 {
		opt.Most = usualMost
	}
	c := &counter{r: r, total: total, progress: opt.Progress}
	in := bufio.NewReaderSize(c, 1<<16)
	head, err := in.Peek(64)
	if err != nil && err != io.EOF {
		return nil, err
	}
	if bytes.Contains(head, []byte("OSMHeader")) {
		p := &pbf{r: r, step: c.add, look: newLookup(opt.Want), kept: kept{most: opt.Most}}
		if err := p.start(total); err != nil {
			return nil, err
		}
		return &File{p}, nil
	}
	text, err := unpacked(in, head)
	if err != nil {
		return nil, err
	}
	x, err := parseXML(ctx, text, newXMLParser(opt.Want, opt.Most))
	if err != nil && text != in && !isTooMuch(err) {
		err = fmt.Errorf("unpacked text, %w", err)
	}
	if err != nil {
		return nil, err
	}
	return &File{x}, nil
}

// unpacked returns the XML text of a stream by its first bytes.
func unpacked(in *bufio.Reader, head []byte) (io.Reader, error) {
	switch {
	case len(head) == 0:
		return nil, ErrEmpty
	case bytes.HasPrefix(head, []byte("BZh")):
		return bzip2.NewReader(in), nil
	case bytes.HasPrefix(head, []byte{0x1f, 0x8b}):
		return gzip.NewReader(in)
	case bytes.HasPrefix(bytes.TrimLeft(head, "\ufeff \t\r\n"), []byte("<")):
		return in, nil
	}
	return nil, ErrNotOSM
}

// A counter counts what is read.
type counter struct {
	r           io.Reader
	done, total int64
	progress    func(done, total int64)
}

func (c *counter) Read(p []byte) (int, error) {
	n, err := c.r.Read(p)
	c.add(n)
	return n, err
}

func (c *counter) add(n int) {
	c.done += int64(n)
	if c.progress != nil {
		c.progress(min(c.done, c.total), c.total)
	}
}
