package planner

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
)

// maxFile is the size in bytes of the largest file that is decoded: about
// twenty times a problem of 4,000 km.
const maxFile = 32 << 20

// Decode reads a problem in format ullage-problem-1. It is strict: unknown,
// repeated fields, null for anything but a list or table, wrong types and anything after the problem are
// errors that name the file, line, column and field; so are the faults that
// [Problem.Validate] finds. name is the file's name for errors. b is not
// changed or kept. Files over 32 MiB are refused.
func Decode(name string, b []byte) (*Problem, error) {
	p := new(Problem)
	if err := decode(name, b, p); err != nil {
		return nil, err
	}
	if err := p.Validate(); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return p, nil
}

// DecodePlan reads a plan in format ullage-plan-1, as strictly as [Decode].
// Whether it is a valid plan is for [audit.Check] to say.
func DecodePlan(name string, b []byte) (Plan, error) {
	var plan Plan
	if err := decode(name, b, &plan); err != nil {
		return Plan{}, err
	}
	if plan.Format != PlanFormat {
		return Plan{}, fmt.Errorf("%s: format is %q, want %q", name, plan.Format, PlanFormat)
	}
	return plan, nil
}

func decode(name string, b []byte, into any) error {
	if len(b) > maxFile {
		return fmt.Errorf("%s: %d bytes, but at most %d are read", name, len(b), maxFile)
	}
	f := &fields{b: b, dec: json.NewDecoder(bytes.NewReader(b))}
	f.dec.UseNumber()
	// 1. The shape: which fields, where. encoding/json alone would tell of an
	// unknown field without its place, and say nothing of a repeated one.
	err := f.value(reflect.TypeOf(into).Elem(), "")
	if err == nil && f.dec.More() {
		err = errors.New("more after the end of the value")
		f.at = f.dec.InputOffset()
	}
	// 2. The values.
	at := f.at
	if err == nil {
		if err = json.Unmarshal(b, into); err == nil {
			return nil
		}
	}
	var syntax *json.SyntaxError
	if errors.As(err, &syntax) {
		at = syntax.Offset - 1
	}
	line, column := position(b, at)
	return fmt.Errorf("%s: line %d, column %d: %w", name, line, column, err)
}

// position turns an offset into a line and column, both from 1.
func position(b []byte, offset int64) (line, column int) {
	before := b[:min(max(offset, 0), int64(len(b)))]
	return 1 + bytes.Count(before, []byte("\n")), len(before) - bytes.LastIndexByte(before, '\n')
}

// fields compares JSON tokens with the fields of a Go type.
type fields struct {
	b   []byte
	dec *json.Decoder
	at  int64 // where the last token begins
}

// token reads a token and keeps its place.
func (f *fields) token() (json.Token, error) {
	f.at = f.dec.InputOffset()
	f.at += int64(len(f.b[f.at:]) - len(bytes.TrimLeft(f.b[f.at:], " \t\r\n,:")))
	token, err := f.dec.Token()
	if err == io.EOF {
		err = errors.New("the file ends early")
	}
	return token, err
}

// value reads one value for type t; path is its name for errors.
func (f *fields) value(t reflect.Type, path string) error {
	token, err := f.token()
	if err != nil {
		return within(path, err)
	}
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	wrong := within(path, fmt.Errorf("found %s, want %s", found(token), wanted(t)))
	switch x := token.(type) {
	case nil: // what programs write for a list of none
		if t.Kind() != reflect.Slice && t.Kind() != reflect.Map {
			return wrong
		}
	case json.Delim:
		switch {
		case x == '{' && (t.Kind() == reflect.Struct || t.Kind() == reflect.Map):
			return f.object(t, path)
		case x == '[' && (t.Kind() == reflect.Slice || t.Kind() == reflect.Array):
			return f.array(t, path)
		}
		return wrong
	case string:
		if t.Kind() != reflect.String {
			return wrong
		}
	case bool:
		if t.Kind() != reflect.Bool {
			return wrong
		}
	case json.Number:
		return f.number(x, t, path, wrong)
	default:
		return wrong
	}
	return nil
}

func (f *fields) number(x json.Number, t reflect.Type, path string, wrong error) error {
	switch t.Kind() {
	case reflect.Float64:
		if _, err := x.Float64(); err != nil {
			return within(path, fmt.Errorf("number %s is out of range", x))
		}
		return nil
	case reflect.Int:
		if i, err := x.Int64(); err != nil || i != int64(int32(i)) {
			return within(path, fmt.Errorf("number %s is not a whole number in range", x))
		}
		return nil
	}
	return wrong
}

func (f *fields) object(t reflect.Type, path string) error {
	seen := map[string]bool{}
	for f.dec.More() {
		token, err := f.token()
		if err != nil {
			return within(path, err)
		}
		key := token.(string) // the decoder lets nothing else be a key
		if seen[key] {
			return within(path, fmt.Errorf("field %q is given twice", key))
		}
		seen[key] = true
		inner, err := member(t, key)
		if err != nil {
			return within(path, err)
		}
		if err := f.value(inner, strings.TrimPrefix(path+"."+key, ".")); err != nil {
			return err
		}
	}
	_, err := f.token()
	return within(path, err)
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

func (f *fields) array(t reflect.Type, path string) error {
	i := 0
	for ; f.dec.More(); i++ {
		if err := f.value(t.Elem(), fmt.Sprintf("%s[%d]", path, i)); err != nil {
			return err
		}
	}
	if t.Kind() == reflect.Array && i != t.Len() {
		return within(path, fmt.Errorf("has %d values, want %d", i, t.Len()))
	}
	_, err := f.token()
	return within(path, err)
}

func within(path string, err error) error {
	if err == nil || path == "" {
		return err
	}
	return fmt.Errorf("%s: %w", path, err)
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

func wanted(t reflect.Type) string {
	switch t.Kind() {
	case reflect.Struct, reflect.Map:
		return "an object"
	case reflect.Slice, reflect.Array:
		return "a list"
	case reflect.String:
		return "text"
	case reflect.Bool:
		return "true or false"
	}
	return "a number"
}
