package strict

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
)

// decode decodes a text that was walked over. What is still wrong is a number out of a type's range, or what a type that reads
// its JSON itself does not take.
func decode(text []byte, into any) error {
	err := json.Unmarshal(text, into)
	if err == nil {
		return nil
	}
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		e := At(text, int(kind.Offset), fmt.Errorf("found %s, want %s", kind.Value, wanted(kind.Type)))
		e.Path = kind.Field
		return e
	}
	return At(text, 0, err)
}

// wanted says what JSON calls a type.
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
	case reflect.Int, reflect.Int8, reflect.Int64:
		return "a whole number"
	}
	return "a number"
}
