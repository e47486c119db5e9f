package main

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"slices"

	"ullage/app/say"
	"ullage/cmd/ullage/progress"
	"ullage/data"
	"ullage/data/foreign"
	"ullage/data/osm"
	"ullage/data/wrong"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

func setUpPlaces(*flag.FlagSet) action { return printPlaces }

// printPlaces prints the places of OSM extracts and place files as GeoJSON.
func printPlaces(ctx context.Context, args []string, to streams) int {
	if len(args) == 0 || slices.ContainsFunc(args, isFlag) {
		return to.wrong("places: give one or more files: ullage places FILE…")
	}
	line := progress.To(to.err)
	line.Show(voice.Text("plan.reading"))
	found, err := readPlaces(ctx, args)
	line.Clear()
	if err != nil {
		return to.failed("places", err)
	}
	if err := data.WritePlaces(to.out, found.places); err != nil {
		return to.failed("places", err)
	}
	counts := map[trip.PlaceKind]int{}
	for _, p := range found.places {
		counts[p.Kind]++
	}
	for _, kind := range slices.Sorted(maps.Keys(counts)) {
		fmt.Fprintf(to.err, "%7d %s\n", counts[kind], placesOf(kind, counts[kind]))
	}
	fmt.Fprintf(to.err, "%7d %s\n", len(found.places), voice.Text("places.all"))
	for _, line := range found.lines(voice) {
		fmt.Fprintln(to.err, line)
	}
	return exitOK
}

// placesOf is what n places of a kind are called; a file may have kinds of its own.
func placesOf(kind trip.PlaceKind, n int) string {
	if key := "places." + string(kind); voice.Has(key) {
		return voice.Text(key, fact.V{"n": fact.Count(n)})
	}
	return string(kind)
}

// A source is what the given files hold together.
type source struct {
	places []trip.Place
	osm    bool        // some are from OpenStreetMap
	date   trip.Date   // of the newest data
	notes  []fact.Fact // what was left out, and why
}

// readPlaces reads OSM extracts and GeoJSON place files. A place that several
// files hold is taken from the first.
func readPlaces(ctx context.Context, names []string) (source, error) {
	var all source
	seen := map[string]bool{}
	for _, name := range names {
		one, err := readPlacesFile(ctx, name)
		if err != nil {
			return source{}, err
		}
		for _, p := range one.places {
			if !seen[p.ID] {
				seen[p.ID] = true
				all.places = append(all.places, p)
			}
		}
		all.osm = all.osm || one.osm
		all.date = max(all.date, one.date)
		all.notes = append(all.notes, one.notes...)
	}
	return all, nil
}

func readPlacesFile(ctx context.Context, name string) (source, error) {
	f, err := os.Open(name)
	if err != nil {
		return source{}, wrong.In(name, err)
	}
	defer f.Close()
	json, err := isJSON(name, f)
	if err != nil {
		return source{}, err
	}
	var x osm.Extract
	if json {
		x, err = osm.ReadGeoJSON(name, f)
	} else {
		x, err = osm.Read(ctx, name, f, osm.Options{NoBackdrop: true})
	}
	return source{places: x.Places, osm: x.FromOSM(), date: x.Date, notes: x.Notes}, err
}

// isJSON tells GeoJSON from map data by the beginning of the file, to which it
// returns.
func isJSON(name string, f io.ReadSeeker) (bool, error) {
	head := make([]byte, foreign.Enough)
	n, err := io.ReadFull(f, head)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) {
		return false, wrong.In(name, cmp.Or(notEmpty(err), err))
	}
	if err := foreign.Recognise(name, head[:n]); err != nil {
		return false, err
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return false, err
	}
	text := bytes.TrimLeft(bytes.TrimPrefix(head[:n], []byte("\xef\xbb\xbf")), " \t\r\n")
	return bytes.HasPrefix(text, []byte("{")), nil
}

func notEmpty(err error) error {
	if errors.Is(err, io.EOF) {
		return wrong.ErrEmpty
	}
	return nil
}

// lines tell where the data are from, and what was wrong with them.
func (s source) lines(voice say.Voice) []string {
	if !s.osm {
		return voice.Facts(s.notes)
	}
	return append([]string{voice.Text("sheet.attribution", fact.V{"date": fact.Text(string(s.date))})}, voice.Facts(s.notes)...)
}
