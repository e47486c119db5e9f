package file

import (
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

// tagsText writes all tags of a text as our reader cuts it: name k=v, /name, and | where <name/> ends.
func tagsText(r io.Reader) (string, error) {
	var words []string
	x := newXMLTokens(r)
	for {
		t, err := x.next()
		if err == io.EOF {
			return strings.Join(words, "; "), nil
		}
		if err != nil {
			return strings.Join(words, "; "), err
		}
		if !t.end {
			word := t.name
			for _, a := range t.attrs {
				word += fmt.Sprintf(" %s=%q", a.name, a.value)
			}
			words = append(words, word)
		}
		if t.end || t.empty {
			words = append(words, "/"+t.name)
		}
	}
}

// referenceText does the same with the standard library's decoder.
func referenceText(r io.Reader) (string, error) {
	var words []string
	d := xml.NewDecoder(r)
	for {
		tok, err := d.RawToken()
		if err == io.EOF {
			return strings.Join(words, "; "), nil
		}
		if err != nil {
			return strings.Join(words, "; "), err
		}
		switch t := tok.(type) {
		case xml.StartElement:
			word := t.Name.Local
			for _, a := range t.Attr {
				word += fmt.Sprintf(" %s=%q", a.Name.Local, a.Value)
			}
			words = append(words, word)
		case xml.EndElement:
			words = append(words, "/"+t.Name.Local)
		}
	}
}

var xmlTexts = []string{
	`<?xml version='1.0' encoding='UTF-8'?><osm version="0.6"><node id="1"/></osm>`,
	`<a b="1>2" c='"' d = "x"  ><e/></a>`,
	`<a b="&amp;&lt;&gt;&quot;&apos;&#65;&#x20ac;"/>`,
	`<!-- <no/> --><a><![CDATA[<no/>]]>text &amp; text</a>`,
	`<!DOCTYPE osm><a></a>`,
	"<a\n\tb='1'\n/>",
	`<tag k="name" v="Càmping Casal"/>`,
	`<a b=""/>`,
}

func TestXMLTokens(t *testing.T) {
	for _, text := range xmlTexts {
		want, err := referenceText(strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		for name, r := range map[string]io.Reader{"at once": strings.NewReader(text), "byte by byte": iotest.OneByteReader(strings.NewReader(text))} {
			if got, err := tagsText(r); err != nil || got != want {
				t.Errorf("%s, %s:\n got %s (%v)\nwant %s", text, name, got, err, want)
			}
		}
	}
	for _, text := range []string{"<", "<a", "<>", "<a b>", "<a b=1/>", `<a b="1/>`, `<a b="&nope;"/>`, `<a b="& "/>`, `<a b="&#0;"/>`, "<!-- ", "<?xml"} {
		if got, err := tagsText(strings.NewReader(text)); err == nil {
			t.Errorf("%s: no error, %s", text, got)
		}
	}
}

// What the standard library takes, we read the same (its extra: prefixes of names, line ends in values, bad UTF-8).
func FuzzXMLTokens(f *testing.F) {
	for _, text := range xmlTexts {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := tagsText(strings.NewReader(text))
		if strings.ContainsAny(text, ":\r!?]") {
			return
		}
		if want, wantErr := referenceText(strings.NewReader(text)); wantErr == nil && (err != nil || got != want) {
			t.Errorf("got %s (%v)\nwant %s", got, err, want)
		}
	})
}
