package file

import (
	"cmp"
	"context"
	"errors"
	"io"
	"strings"
)

// This file scans a PBF file: relations, ways or nodes. Blocks of a usual file are in the order nodes, ways, relations, so
// each scan unpacks only its own part; the scans for an extract, relations first, unpack every block once.

// A pbf is an opened PBF file.
type pbf struct {
	r      io.ReadSeeker
	blobs  []blob // data blocks
	stated string // date of the data
	newest int64  // time of the newest object, if no date is stated; milliseconds since 1970
	data   []byte // buffer
	u      unpacker
	b      block
	step   func(bytes int)
	look   lookup
	kept   kept

	kinds    []int // per blob, what it holds; 0 is not known yet
	scanned  int   // kinds that a scan has gone through
	anyOrder bool
}

// start finds the blocks and reads the file's header.
func (p *pbf) start(total int64) error {
	list, err := listBlobs(p.r, total)
	if err != nil {
		return err
	}
	p.blobs, p.kinds = list[1:], make([]int, len(list)-1)
	head, err := p.load(list[0])
	if err != nil {
		return err
	}
	return p.header(head, list[0].at)
}

// load reads and unpacks a blob. The result is valid until the next call.
func (p *pbf) load(b blob) ([]byte, error) {
	if _, err := p.r.Seek(b.at, io.SeekStart); err != nil {
		return nil, err
	}
	if cap(p.data) < b.size {
		p.data = make([]byte, b.size)
	}
	p.data = p.data[:b.size]
	if _, err := io.ReadFull(p.r, p.data); err != nil {
		return nil, faultAt(b.at, "read the block: %w", err)
	}
	p.step(b.size)
	return p.u.unpack(p.data, b.at)
}

// header reads what the file demands and says of itself.
func (p *pbf) header(data []byte, at int64) error {
	w := wire{b: data}
	for w.more() {
		switch num, t := w.field(); {
		case num == 4 && t == wireBytes:
			switch f := string(w.bytes()); f {
			case "OsmSchema-V0.6", "DenseNodes":
			default:
				return faultAt(at, "the file demands the feature %.40q, which is not read here", f)
			}
		case num == 5 && t == wireBytes:
			// The generator's timestamp is an optional feature "timestamp=…" in older files.
			if s, ok := strings.CutPrefix(string(w.bytes()), "timestamp="); ok && p.stated == "" && len(s) >= 10 {
				p.stated = s[:10]
			}
		case num == 32 && t == wireVarint: // osmosis_replication_timestamp, seconds since 1970
			if s := w.varint(); s > 0 && s < 1<<35 {
				p.stated = dayOf(int64(s) * 1000)
			}
		default:
			w.skip(t)
		}
	}
	if w.bad {
		return faultAt(at, "the file's header is damaged")
	}
	return nil
}

// errOrder says that the blocks are not in the order nodes, ways, relations, as a scan had assumed.
var errOrder = errors.New("osm: blocks are not in the usual order")

// each opens every block that may hold the kind of object, from the last to the first, down to the first block that
// holds only kinds which come earlier in the usual order. A block found on the way that an earlier scan should have seen
// gives errOrder. With p.anyOrder every block is opened.
func (p *pbf) each(ctx context.Context, kind int, fn func(b *block) (ok bool, err error)) error {
	for i := len(p.blobs) - 1; i >= 0; i-- {
		if err := ctx.Err(); err != nil {
			return err
		}
		known := p.kinds[i]
		if known == 0 {
			opened, err := p.open(i)
			if err != nil {
				return err
			}
			if opened&p.scanned != 0 && !p.anyOrder {
				return errOrder
			}
			known, p.kinds[i] = opened, opened
		} else if known&kind != 0 {
			if _, err := p.open(i); err != nil {
				return err
			}
		}
		if known&kind == 0 {
			if known != 0 && known < kind && !p.anyOrder {
				break
			}
			continue
		}
		ok, err := fn(&p.b)
		if err != nil {
			return err
		}
		if !ok {
			return p.damaged(i)
		}
	}
	p.scanned |= kind
	return nil
}

// open makes block i the current one and returns the kinds in it.
func (p *pbf) open(i int) (kinds int, err error) {
	data, err := p.load(p.blobs[i])
	if err != nil {
		return 0, err
	}
	if !p.b.open(data, p.look) {
		return 0, p.damaged(i)
	}
	if p.stated == "" {
		p.newest = max(p.newest, p.b.newest())
	}
	return p.b.kinds, nil
}

func (p *pbf) damaged(i int) error {
	if p.b.crowded {
		return faultAt(p.blobs[i].at, "%w", errCrowded)
	}
	return faultAt(p.blobs[i].at, "the block is damaged: its content does not make sense")
}

// Date is the stated one, or that of the newest object seen by the scans so far.
func (p *pbf) Date() string { return cmp.Or(p.stated, dayOf(p.newest)) }

func (p *pbf) Relations(ctx context.Context, fn func(Relation) error) error {
	return p.each(ctx, hasRelations, func(b *block) (bool, error) {
		list, ok := b.relations()
		for _, r := range list {
			if err := p.kept.object(r.Tags, len(r.Members)); err != nil {
				return ok, err
			}
			if err := fn(r); err != nil {
				return ok, err
			}
		}
		return ok, nil
	})
}

func (p *pbf) Ways(ctx context.Context, also IDs, fn func(Way) error) error {
	return p.each(ctx, hasWays, func(b *block) (bool, error) {
		list, ok := b.ways(also)
		for _, w := range list {
			if err := p.kept.object(w.Tags, len(w.Refs)+len(w.Points)); err != nil {
				return ok, err
			}
			if err := fn(w); err != nil {
				return ok, err
			}
		}
		return ok, nil
	})
}

func (p *pbf) Nodes(ctx context.Context, also IDs, fn func(Node) error) error {
	return p.each(ctx, hasNodes, func(b *block) (bool, error) {
		list, ok := b.nodes(also)
		for _, n := range list {
			if n.Tags != nil { // others are corners of what was counted
				if err := p.kept.object(n.Tags, 0); err != nil {
					return ok, err
				}
			}
			if err := fn(n); err != nil {
				return ok, err
			}
		}
		return ok, nil
	})
}
