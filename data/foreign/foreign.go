// Package foreign names files that are none of those that can be read: a table, an archive, a picture.
//
// In comes the beginning of a file, out goes an error that says what it is and what to do instead. Files that are damaged,
// or of a kind that is read, are the business of their readers.
package foreign

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"ullage/planner/fact"
)

// An Error says what a file is.
type Error struct {
	File string
	Kind fact.Kind // what it is, and what to do: {file}
}

func (e *Error) Error() string {
	return "read " + e.File + ": this " + said[e.Kind]
}

// Fact says it in words.
func (e *Error) Fact() fact.Fact { return fact.Of(e.Kind, fact.V{"file": fact.Text(e.File)}) }

// Kinds of file that are not read.
const (
	archive fact.Kind = "file.archive"
	table   fact.Kind = "file.table"
	picture fact.Kind = "file.picture"
	paper   fact.Kind = "file.paper"
	webPage fact.Kind = "file.web_page"
	tiles   fact.Kind = "file.tiles"
)

// said is what programs are told; people are told the fact.
var said = map[fact.Kind]string{
	archive: "is an archive (zip, KMZ or tar); unpack it and give the file in it",
	table:   "is a table (CSV); places are read from OpenStreetMap data or GeoJSON: save the table as GeoJSON with a map tool",
	picture: "is a picture; a route is a GPX, KML or GeoJSON file",
	paper:   "is a document; a route is a GPX, KML or GeoJSON file",
	webPage: "is a web page; download the file itself, not the page that shows it",
	tiles:   "is a database of map tiles or layers; give the OpenStreetMap extract (.osm.pbf) of the region",
}

// beginnings of files by which they are known. Sources: PKWARE APPNOTE 4.3.7, POSIX ustar is further in, W3C PNG, JFIF, ISO
// 32000-1 (PDF), OLE 2, sqlite.org/fileformat, PMTiles 3.
var beginnings = []struct {
	bytes string
	kind  fact.Kind
}{
	{"PK\x03\x04", archive}, {"PK\x05\x06", archive}, {"7z\xbc\xaf\x27\x1c", archive}, {"Rar!", archive}, {"\xfd7zXZ", archive},
	{"\x89PNG", picture}, {"\xff\xd8\xff", picture}, {"GIF8", picture}, {"RIFF", picture},
	{"%PDF", paper}, {"\xd0\xcf\x11\xe0", paper}, {"{\\rtf", paper},
	{"SQLite format 3", tiles}, {"PMTiles", tiles},
}

// Enough bytes of the beginning tell what a file is.
const Enough = 512

// Recognise says what a file is by its beginning, of which [Enough] is looked at; nil: nothing that is known here.
func Recognise(file string, head []byte) error {
	head = bytes.TrimPrefix(head[:min(len(head), Enough)], []byte("\xef\xbb\xbf"))
	for _, b := range beginnings {
		if bytes.HasPrefix(head, []byte(b.bytes)) {
			return &Error{file, b.kind}
		}
	}
	trimmed := bytes.ToLower(bytes.TrimSpace(head))
	switch {
	case bytes.HasPrefix(trimmed, []byte("<!doctype html")), bytes.HasPrefix(trimmed, []byte("<html")):
		return &Error{file, webPage}
	case len(head) > 262 && string(head[257:262]) == "ustar":
		return &Error{file, archive}
	case isTable(head):
		return &Error{file, table}
	}
	return nil
}

// isTable: the first two lines have the same separators, two or more of them, and are text that is no XML or JSON.
func isTable(head []byte) bool {
	lines := strings.Split(strings.ReplaceAll(string(head), "\r\n", "\n"), "\n")
	cut := len(head) >= Enough // the last line may go on
	if len(lines) < 2 && !cut || strings.ContainsAny(lines[0][:min(len(lines[0]), 1)], "<{[") || !utf8.ValidString(lines[0]) || strings.ContainsRune(lines[0], 0) {
		return false
	}
	for _, separator := range []string{",", ";", "\t", "|"} {
		n := strings.Count(lines[0], separator)
		if n >= 2 && (len(lines) == 1 || strings.Count(lines[1], separator) >= n || len(lines) == 2 && cut) {
			return true
		}
	}
	return false
}
