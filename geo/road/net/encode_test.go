package net_test

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"math/rand/v2"
	"reflect"
	"testing"

	"ullage/data/osm/osmtest"
	"ullage/geo/road"
	"ullage/geo/road/net"
)

func TestEncodeDecode(t *testing.T) {
	for seed := range uint64(4) {
		in := osmtest.Grid(9, 300+seed)
		in.Date, in.Omitted[net.LeavesData] = "2026-11-25", 3
		in.Ways[0].Road.Name, in.Ways[1].Road.Unclear = "N 1", "maxheight=low"
		in.Turns = append(in.Turns, osmtest.TurnsOver(in, rand.New(rand.NewPCG(seed, 5)), 20)...)
		for i := range in.Turns {
			if i%4 == 3 {
				in.Turns[i].At = "no_left_turn @ (Su)"
			}
		}
		n := built(t, in)
		if net.Onward(n) == 0 || net.Doubts(n) == 0 {
			t.Fatalf("%d states over ways between, %d turns at times", net.Onward(n), net.Doubts(n))
		}
		b := n.Encode()
		if again := built(t, in).Encode(); !bytes.Equal(b, again) {
			t.Fatal("the same input gives other bytes")
		}
		m, err := net.Decode(context.Background(), b)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(n, m) {
			t.Fatal("the network decoded is not the one coded")
		}
	}
}

func TestDecodeErrors(t *testing.T) {
	good := built(t, osmtest.Grid(5, 1)).Encode()
	changed := bytes.Clone(good)
	changed[len(changed)/2] ^= 1
	newer := bytes.Clone(good)
	newer[4] = 9
	for name, b := range map[string][]byte{"nothing": nil, "text": []byte("this is no network"), "cut": good[:len(good)-7], "changed": changed, "newer": newer} {
		if _, err := net.Decode(context.Background(), b); !errors.Is(err, net.ErrCoded) {
			t.Errorf("%s: error %v", name, err)
		}
	}
}

// FuzzDecode changes the body under a right checksum: any bytes give a network or an error.
func FuzzDecode(f *testing.F) {
	for seed := range uint64(3) {
		in := osmtest.Grid(3+int(seed), 400+seed)
		if seed > 0 {
			in.Turns = append(in.Turns, osmtest.TurnsOver(in, rand.New(rand.NewPCG(seed, 5)), 10)...)
			in.Turns[len(in.Turns)-1].At = "no_u_turn @ (Su)"
		}
		b := built(f, in).Encode()
		f.Add(b[:len(b)-4])
	}
	f.Fuzz(func(t *testing.T, body []byte) {
		b := binary.LittleEndian.AppendUint32(bytes.Clone(body), crc32.ChecksumIEEE(body))
		n, err := net.Decode(context.Background(), b)
		if err != nil {
			return
		}
		if m, err := net.Decode(context.Background(), n.Encode()); err != nil || !reflect.DeepEqual(n, m) {
			t.Fatalf("coded again: %v", err)
		}
		r, err := road.NewRouter(context.Background(), n, net.Vehicle{HeightM: 3}, road.Fastest)
		if err != nil {
			t.Fatal(err)
		}
		if p, err := r.Query().Route(road.Spot{OK: true}, road.Spot{OK: true, Edge: uint32(n.Edges() - 1)}); err == nil {
			n.Line(p.Steps)
			r.Notes(p)
		}
	})
}

func built(t testing.TB, in net.Input) *net.Network {
	t.Helper()
	n, err := net.Build(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	return n
}
