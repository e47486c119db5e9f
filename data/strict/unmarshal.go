package strict

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
)

// Unmarshal decodes a text into what into points at, of structs whose fields all have names in their json tags, lists, tables and
// plain values. Unknown and repeated members, null for anything but a list or table, wrong kinds, lists of another length than an
// array's, and anything after the value are errors, each an [*Error]. text is not kept.
func Unmarshal(text []byte, into any) error {
	w := &walk{text: text, dec: json.NewDecoder(bytes.NewReader(text))}
	w.dec.UseNumber()
	// 1. The shape: which members, where.
	if err := w.value(reflect.TypeOf(into).Elem(), ""); err != nil {
		return err
	}
	w.step()
	if _, err := w.dec.Token(); err != io.EOF {
		return w.wrong("", errors.New("more after the end of the value"))
	}
	// 2. The values.
	return UnmarshalKnown(text, into)
}

// A walk compares JSON tokens with the fields of a Go type.
type walk struct {
	text []byte
	dec  *json.Decoder
	at   int // where the last token begins
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
	token, err := w.token(path)
	if err != nil {
		return err
	}
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	kind := t.Kind()
	switch x := token.(type) {
	case json.Delim:
		switch {
		case x == '{' && (kind == reflect.Struct || kind == reflect.Map):
			return w.object(t, path)
		case x == '[' && (kind == reflect.Slice || kind == reflect.Array):
			return w.list(t, path)
		}
	case json.Number:
		if kind == reflect.Float64 || kind == reflect.Int {
			return w.number(x, t, path)
		}
	default:
		if fits(token, kind) {
			return nil
		}
	}
	return w.wrong(path, mismatch(found(token), t))
}

// fits says whether a text, a yes or no, or null may stand for a kind.
func fits(token json.Token, kind reflect.Kind) bool {
	switch token.(type) {
	case nil: // what programs write for a list of none
		return kind == reflect.Slice || kind == reflect.Map
	case string:
		return kind == reflect.String
	}
	return kind == reflect.Bool
}

func (w *walk) number(x json.Number, t reflect.Type, path string) error {
	if t.Kind() == reflect.Float64 {
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
		inner, err := member(t, key)
		if err != nil {
			return w.wrong(path, err)
		}
		if err := w.value(inner, strings.TrimPrefix(path+"."+key, ".")); err != nil {
			return err
		}
	}
	_, err := w.token(path)
	return err
}

// member is the type of an object's field.
func member(t reflect.Type, key string) (reflect.Type, error) {
	if t.Kind() == reflect.Map {
		return t.Elem(), nil
	}
	var known []string
	for field := range t.Fields() {
		name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
		if name == key {
			return field.Type, nil
		}
		known = append(known, name)
	}
	return nil, fmt.Errorf("unknown field %q, want one of %s", key, strings.Join(known, ", "))
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
