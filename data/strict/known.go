package strict

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
)

// UnmarshalKnown decodes a text into what into points at, as encoding/json does: members that it does not have are passed over.
// An error is an [*Error].
func UnmarshalKnown(text []byte, into any) error {
	err := json.Unmarshal(text, into)
	if err == nil {
		return nil
	}
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		e := At(text, int(kind.Offset), mismatch(describe(kind.Value), kind.Type))
		e.Path = kind.Field
		return e
	}
	return broken(text)
}

// describe puts what encoding/json found as it is called here: "number 2.5" stays.
func describe(value string) string {
	switch value {
	case "string":
		return "text"
	case "bool":
		return "true or false"
	case "array":
		return "a list"
	case "object":
		return "an object"
	}
	return value
}

func mismatch(found string, want reflect.Type) error {
	return fmt.Errorf("found %s, want %s", found, wanted(want))
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
	case reflect.Int, reflect.Int64:
		return "a whole number"
	}
	return "a number"
}
