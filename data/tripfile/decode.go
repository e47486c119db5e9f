package tripfile

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"
)

// maxBytes is the size of the largest file that is read: a route of a
// million points.
const maxBytes = 64 << 20

func load(name string, r io.Reader) ([]byte, error) {
	b, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("read %s: %w", name, err)
	}
	if len(b) > maxBytes {
		return nil, fmt.Errorf("%s: larger than %d MiB: is it a trip or fleet file?", name, maxBytes>>20)
	}
	b = bytes.TrimPrefix(b, []byte("\xef\xbb\xbf"))
	if !utf8.Valid(b) {
		return nil, fmt.Errorf("%s: not UTF-8 text: save it as UTF-8", name)
	}
	return b, nil
}

// decode is json.Unmarshal with the place of the fault in the error.
func decode(name string, b []byte, into any) error {
	err := json.Unmarshal(b, into)
	var syntax *json.SyntaxError
	var typ *json.UnmarshalTypeError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &syntax):
		return fmt.Errorf("%s: %s: not JSON: %w", name, position(b, syntax.Offset), err)
	case errors.As(err, &typ):
		return fmt.Errorf("%s: %s: %s is a %s: write a %s", name, position(b, typ.Offset), typ.Field, typ.Value, jsonType(typ))
	}
	return fmt.Errorf("%s: %w", name, err)
}

// jsonType says what JSON calls the wanted type.
func jsonType(e *json.UnmarshalTypeError) string {
	if word, ok := map[string]string{"float64": "number", "int": "whole number", "string": "text", "bool": "true or false",
		"slice": "list", "struct": "object", "map": "object"}[e.Type.Kind().String()]; ok {
		return word
	}
	return e.Type.String()
}

func position(b []byte, offset int64) string {
	before := b[:min(max(offset, 0), int64(len(b)))]
	return fmt.Sprintf("line %d, column %d", 1+bytes.Count(before, []byte("\n")), len(before)-bytes.LastIndexByte(before, '\n'))
}
