package file

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"
	"unicode/utf8"
)

// This file cuts XML text into tags. By hand, because the general decoder takes four times as long, most of it for
// text between tags, of which OSM XML has only line ends. It reads elements and attributes, references to
// characters and the five named entities; it passes over text, comments, CDATA, instructions and a document type.
// Namespaces and other encodings than UTF-8 do not occur in OSM XML.
// Source: Extensible Markup Language (XML) 1.0, sections 2.3, 2.4, 3.1, 4.1.

// maxXMLTag is the most bytes that a tag may have; OSM values have at most 255 characters.
const maxXMLTag = 1 << 20

// An xmlTag is a start or an end tag. It is valid until the next one is read.
type xmlTag struct {
	name  string
	end   bool // </name>
	empty bool // <name/>
	attrs []xmlAttr
}

type xmlAttr struct{ name, value []byte }

// get returns an attribute's value; nil if there is none.
func (t *xmlTag) get(name string) []byte {
	for _, a := range t.attrs {
		if string(a.name) == name {
			return a.value
		}
	}
	return nil
}

// An xmlTokens reads tags. Its buffer grows to the longest tag.
type xmlTokens struct {
	r    io.Reader
	buf  []byte
	at   int // of the unread part of buf
	done bool
	tag  xmlTag

	dropped int64 // bytes before buf
	start   int64 // offset of the last tag in the text, for errors
}

func newXMLTokens(r io.Reader) *xmlTokens {
	return &xmlTokens{r: r, buf: make([]byte, 0, 1<<16)}
}

var errXMLEnd = fmt.Errorf("%w inside a tag", ErrCut)

// next reads the next tag; io.EOF after the last.
func (x *xmlTokens) next() (*xmlTag, error) {
	for {
		if err := x.find("<"); err != nil {
			return nil, err
		}
		for len(x.buf)-x.at < 4 && !x.done { // enough to tell a comment
			if err := x.fill(); err != nil {
				return nil, err
			}
		}
		x.start = x.dropped + int64(x.at)
		rest := x.buf[x.at:]
		var err error
		switch {
		case bytes.HasPrefix(rest, []byte("<!--")):
			err = x.skip("-->")
		case bytes.HasPrefix(rest, []byte("<![")):
			err = x.skip("]]>")
		case bytes.HasPrefix(rest, []byte("<?")):
			err = x.skip("?>")
		case bytes.HasPrefix(rest, []byte("<!")):
			err = x.skip(">")
		default:
			return x.read()
		}
		if err == io.EOF {
			err = errXMLEnd
		}
		if err != nil {
			return nil, err
		}
	}
}

// fill reads more after moving the unread part to the front. At the end of the file it sets done.
func (x *xmlTokens) fill() error {
	if x.at > 0 {
		x.dropped += int64(x.at)
		x.buf = x.buf[:copy(x.buf, x.buf[x.at:])]
		x.at = 0
	}
	if len(x.buf) == cap(x.buf) {
		if cap(x.buf) > maxXMLTag {
			return fmt.Errorf("a tag of more than %d bytes: the file is damaged", maxXMLTag)
		}
		x.buf = append(make([]byte, 0, 2*cap(x.buf)), x.buf...)
	}
	for range 100 {
		n, err := x.r.Read(x.buf[len(x.buf):cap(x.buf)])
		x.buf = x.buf[:len(x.buf)+n]
		if err == io.EOF {
			x.done = true
			return nil
		}
		if err != nil || n > 0 {
			return err
		}
	}
	return io.ErrNoProgress
}

// find drops everything before mark; io.EOF if it does not come.
func (x *xmlTokens) find(mark string) error {
	for {
		if i := bytes.Index(x.buf[x.at:], []byte(mark)); i >= 0 {
			x.at += i
			return nil
		}
		if x.done {
			return io.EOF
		}
		x.at = max(x.at, len(x.buf)-len(mark)+1) // the mark may be cut
		if err := x.fill(); err != nil {
			return err
		}
	}
}

func (x *xmlTokens) skip(mark string) error {
	err := x.find(mark)
	if err == nil {
		x.at += len(mark)
	}
	return err
}

// read takes the tag at x.at apart, after making sure that all of it is in the buffer.
func (x *xmlTokens) read() (*xmlTag, error) {
	size := 0
	for from, quote := 1, byte(0); size == 0; {
		size, from, quote = tagEnd(x.buf[x.at:], from, quote)
		if size > 0 {
			break
		}
		if x.done {
			return nil, errXMLEnd
		}
		if err := x.fill(); err != nil {
			return nil, err
		}
	}
	text := x.buf[x.at+1 : x.at+size-1]
	x.at += size
	return &x.tag, x.tag.parse(text)
}

// tagEnd returns the size of a tag up to its >, which does not count inside quotes; 0 and where to go on if more is needed.
func tagEnd(b []byte, from int, quote byte) (size, next int, open byte) {
	for i := from; i < len(b); i++ {
		switch c := b[i]; {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '"' || c == '\'':
			quote = c
		case c == '>':
			return i + 1, 0, 0
		}
	}
	return 0, len(b), quote
}

// parse reads what is between < and >.
func (t *xmlTag) parse(b []byte) error {
	t.attrs, t.end, t.empty = t.attrs[:0], false, false
	if len(b) > 0 && b[0] == '/' {
		t.end, b = true, b[1:]
	}
	if len(b) > 0 && b[len(b)-1] == '/' {
		t.empty, b = true, b[:len(b)-1]
	}
	i := 0
	for i < len(b) && !isSpace(b[i]) {
		i++
	}
	if i == 0 {
		return errors.New("a tag without a name")
	}
	t.name = elementName(b[:i])
	for b = trimSpace(b[i:]); len(b) > 0; b = trimSpace(b) {
		eq := bytes.IndexByte(b, '=')
		if eq < 1 {
			return fmt.Errorf("<%s>: an attribute without a value", t.name)
		}
		name := bytes.TrimRight(b[:eq], " \t\r\n")
		b = trimSpace(b[eq+1:])
		if len(b) < 2 || b[0] != '"' && b[0] != '\'' {
			return fmt.Errorf("<%s %s>: an attribute without quotes", t.name, name)
		}
		end := bytes.IndexByte(b[1:], b[0])
		if end < 0 {
			return fmt.Errorf("<%s %s>: an attribute without quotes", t.name, name)
		}
		value, err := resolve(b[1 : 1+end])
		if err != nil {
			return fmt.Errorf("<%s %s>: %w", t.name, name, err)
		}
		t.attrs = append(t.attrs, xmlAttr{name, value})
		b = b[end+2:]
	}
	return nil
}

// elementName avoids a new string for each of the usual names.
func elementName(b []byte) string {
	for _, name := range [...]string{"nd", "tag", "node", "way", "member", "relation"} {
		if string(b) == name {
			return name
		}
	}
	return string(b)
}

func isSpace(c byte) bool { return c == ' ' || c == '\n' || c == '\t' || c == '\r' }

func trimSpace(b []byte) []byte {
	for len(b) > 0 && isSpace(b[0]) {
		b = b[1:]
	}
	return b
}

var xmlEntities = map[string]string{"amp": "&", "lt": "<", "gt": ">", "quot": `"`, "apos": "'"}

// resolve replaces entities, in place: what they stand for is never longer.
func resolve(b []byte) ([]byte, error) {
	amp := bytes.IndexByte(b, '&')
	if amp < 0 {
		return b, nil
	}
	out := b[:amp]
	for b = b[amp:]; len(b) > 0; {
		if b[0] != '&' {
			out = append(out, b[0])
			b = b[1:]
			continue
		}
		end := bytes.IndexByte(b, ';')
		if end < 0 || end > 12 {
			return nil, errors.New("a & that starts no entity")
		}
		name := string(b[1:end])
		b = b[end+1:]
		if s, ok := xmlEntities[name]; ok {
			out = append(out, s...)
			continue
		}
		r, ok := character(name)
		if !ok {
			return nil, fmt.Errorf("unknown entity &%s;", name)
		}
		out = utf8.AppendRune(out, r)
	}
	return out, nil
}

// character reads #10 or #xA.
func character(name string) (rune, bool) {
	if len(name) < 2 || name[0] != '#' {
		return 0, false
	}
	digits, base := name[1:], 10
	if digits[0] == 'x' {
		digits, base = digits[1:], 16
	}
	v, err := strconv.ParseUint(digits, base, 32)
	return rune(v), err == nil && v > 0 && utf8.ValidRune(rune(v))
}
