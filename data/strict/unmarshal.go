package strict

import (
	"bytes"
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"

	"ullage/data/meant"
)

// Unmarshal decodes a text into what into points at, of structs whose fields all have names in their json tags, lists, tables and
// plain values. Unknown and repeated members, null for anything but a list, a table or what may be left out, wrong kinds, lists of
// another length than an array's, and anything after the value are errors, each an [*Error]. text is not kept.
func Unmarshal(text []byte, into any) error {
	w := newWalk(text)
	if err := w.whole(into); err != nil {
		return err
	}
	return decode(text, into)
}

// An Unknown is a member that nothing is known of.
type Unknown struct {
	Line int    // from 1
	Path string // "ullage.day.weather"
}

// UnmarshalKnown is Unmarshal for a text that may say more than is known here: such members are passed over, and told. One that
// is nearly called as a known one is an error, which says which one was meant.
func UnmarshalKnown(text []byte, into any) ([]Unknown, error) {
	w := newWalk(text)
	w.passes = true
	if err := w.whole(into); err != nil {
		return nil, err
	}
	return w.passed, decode(text, into)
}

// A walk compares JSON tokens with the fields of a Go type.
type walk struct {
	text   []byte
	dec    *json.Decoder
	at     int  // where the last token begins
	passes bool // unknown members are passed over
	passed []Unknown
}

func newWalk(text []byte) *walk {
	w := &walk{text: text, dec: json.NewDecoder(bytes.NewReader(text))}
	w.dec.UseNumber()
	return w
}

// whole walks over the text from its beginning to its end.
func (w *walk) whole(into any) error {
	if err := w.value(reflect.TypeOf(into).Elem(), ""); err != nil {
		return err
	}
	w.step()
	if _, err := w.dec.Token(); err != io.EOF {
		return w.wrong("", errors.New("more after the end of the value"))
	}
	return nil
}

// step finds where the next token begins.
func (w *walk) step() {
	w.at = int(w.dec.InputOffset())
	w.at += len(w.text[w.at:]) - len(bytes.TrimLeft(w.text[w.at:], " \t\r\n,:"))
}

// token reads a token; path is for errors.
func (w *walk) token(path string) (json.Token, error) {
	w.step()
	token, err := w.dec.Token()
	if err != nil {
		e := broken(w.text)
		e.Path = path
		return nil, e
	}
	return token, nil
}

// wrong places an error at the last token.
func (w *walk) wrong(path string, err error) error {
	e := At(w.text, w.at, err)
	e.Path = path
	return e
}

// value reads one value for type t; path is its name for errors.
func (w *walk) value(t reflect.Type, path string) error {
	if opaque(t) {
		return w.skip(path)
	}
	token, err := w.token(path)
	if err != nil {
		return err
	}
	if t.Kind() == reflect.Pointer {
		if t = t.Elem(); token == nil {
			return nil // left out
		}
	}
	if !fits(token, t.Kind()) {
		return w.wrong(path, fmt.Errorf("found %s, want %s", found(token), wanted(t)))
	}
	switch x := token.(type) {
	case json.Delim:
		if x == '{' {
			return w.object(t, path)
		}
		return w.list(t, path)
	case json.Number:
		return w.number(x, t, path)
	}
	return nil
}

var (
	jsonReader = reflect.TypeFor[json.Unmarshaler]()
	textReader = reflect.TypeFor[encoding.TextUnmarshaler]()
)

// opaque tells whether a type reads its JSON itself.
func opaque(t reflect.Type) bool {
	p := reflect.PointerTo(t)
	return t.Kind() == reflect.Interface || p.Implements(jsonReader) || p.Implements(textReader)
}

// skip passes over a value.
func (w *walk) skip(path string) error {
	w.step()
	if err := w.dec.Decode(new(json.RawMessage)); err != nil {
		e := broken(w.text)
		e.Path = path
		return e
	}
	return nil
}

// fits says whether a token may begin a value of a kind.
func fits(token json.Token, kind reflect.Kind) bool {
	switch x := token.(type) {
	case nil: // what programs write for a list of none
		return kind == reflect.Slice || kind == reflect.Map
	case json.Delim:
		if x == '{' {
			return kind == reflect.Struct || kind == reflect.Map
		}
		return kind == reflect.Slice || kind == reflect.Array
	case json.Number:
		return kind >= reflect.Int && kind <= reflect.Float64
	case string:
		return kind == reflect.String
	}
	return kind == reflect.Bool
}

func (w *walk) number(x json.Number, t reflect.Type, path string) error {
	if t.Kind() >= reflect.Float32 {
		if _, err := x.Float64(); err != nil {
			return w.wrong(path, fmt.Errorf("number %s is out of range", x))
		}
		return nil
	}
	if i, err := x.Int64(); err != nil || i != int64(int32(i)) {
		return w.wrong(path, fmt.Errorf("number %s is not a whole number in range", x))
	}
	return nil
}

func (w *walk) object(t reflect.Type, path string) error {
	seen := map[string]bool{}
	for w.dec.More() {
		token, err := w.token(path)
		if err != nil {
			return err
		}
		key := token.(string) // the decoder lets nothing else be a key
		if seen[key] {
			return w.wrong(path, fmt.Errorf("field %q is given twice", key))
		}
		seen[key] = true
		inner := strings.TrimPrefix(path+"."+key, ".")
		known, names := member(t, key)
		switch most := meant.Which(key, names); {
		case known != nil:
			err = w.value(known, inner)
		case !w.passes:
			err = w.wrong(path, unknown(key, most, names))
		case most != "":
			err = w.wrong(path, unknown(key, most, nil))
		default:
			w.passed = append(w.passed, Unknown{At(w.text, w.at, nil).Line, inner})
			err = w.skip(inner)
		}
		if err != nil {
			return err
		}
	}
	_, err := w.token(path)
	return err
}

// member is the type of an object's field; nil if it has none of that name, and the names that it has.
func member(t reflect.Type, key string) (known reflect.Type, names []string) {
	if t.Kind() == reflect.Map {
		return t.Elem(), nil
	}
	for field := range t.Fields() {
		name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
		switch {
		case field.Anonymous && name == "": // what stands outside hides what it holds
			inner, more := member(field.Type, key)
			names = append(names, more...)
			if known == nil {
				known = inner
			}
		case name == key && name != "-":
			return field.Type, nil
		case name != "-":
			names = append(names, name)
		}
	}
	return known, names
}

func unknown(key, meant string, names []string) error {
	if meant != "" {
		return fmt.Errorf("unknown field %q: did you mean %q?", key, meant)
	}
	return fmt.Errorf("unknown field %q, want one of %s", key, strings.Join(names, ", "))
}

func (w *walk) list(t reflect.Type, path string) error {
	begin, i := w.at, 0
	for ; w.dec.More(); i++ {
		if err := w.value(t.Elem(), fmt.Sprintf("%s[%d]", path, i)); err != nil {
			return err
		}
	}
	if t.Kind() == reflect.Array && i != t.Len() {
		w.at = begin
		return w.wrong(path, fmt.Errorf("has %d values, want %d", i, t.Len()))
	}
	_, err := w.token(path)
	return err
}

func found(token json.Token) string {
	switch x := token.(type) {
	case nil:
		return "null"
	case json.Delim:
		return map[rune]string{'{': "an object", '[': "a list"}[rune(x)]
	case string:
		return fmt.Sprintf("text %.20q", x)
	}
	return fmt.Sprintf("%v", token)
}
