package strict

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"iter"
)

// A Value is a JSON value that knows where it stands, so that an error in the middle of a large file can name the line.
type Value struct {
	Offset int
	Kind   byte // { [ " 0 t f n as they start, 0 for "not there"
	Text   string
	Nums   []float64 // of a number, or of an array of numbers only
	Items  []Value   // of any other array
	keys   []string  // of an object, with values
	values []Value
}

// maxDepth is far more than any format needs.
const maxDepth = 64

var errDeep = fmt.Errorf("values are nested more than %d deep", maxDepth)

// Parse reads one JSON value. An error is an [*Error].
func Parse(text []byte) (Value, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	v, err := parse(d, maxDepth)
	if err != nil {
		if errors.Is(err, errDeep) || json.Valid(text) {
			return Value{}, At(text, int(d.InputOffset()), err)
		}
		return Value{}, broken(text)
	}
	if _, more := d.Token(); more != io.EOF {
		return Value{}, broken(text)
	}
	return v, nil
}

func parse(d *json.Decoder, depth int) (Value, error) {
	if depth == 0 {
		return Value{}, errDeep
	}
	t, err := d.Token()
	if err != nil {
		return Value{}, err
	}
	v := Value{Offset: int(d.InputOffset()) - 1}
	switch t := t.(type) {
	case json.Delim:
		err = v.inside(d, t, depth-1)
	case string:
		v.Kind, v.Text = '"', t
	case float64:
		v.Kind, v.Nums = '0', []float64{t}
	case bool:
		v.Kind = 't'
	case nil:
		v.Kind = 'n'
	}
	return v, err
}

// inside reads what an object or array holds, with its end.
func (v *Value) inside(d *json.Decoder, kind json.Delim, depth int) error {
	v.Kind = byte(kind)
	for d.More() {
		if kind == '{' {
			key, err := d.Token()
			if err != nil {
				return err
			}
			v.keys = append(v.keys, key.(string))
		}
		inner, err := parse(d, depth)
		if err != nil {
			return err
		}
		if kind == '{' {
			v.values = append(v.values, inner)
		} else {
			v.push(inner)
		}
	}
	_, err := d.Token() // the closing delimiter
	return err
}

// push adds to an array, which keeps numbers flat as long as it can.
func (v *Value) push(inner Value) {
	if inner.Kind == '0' && v.Items == nil {
		v.Nums = append(v.Nums, inner.Nums[0])
		return
	}
	for _, f := range v.Nums {
		v.Items = append(v.Items, Value{Offset: v.Offset, Kind: '0', Nums: []float64{f}})
	}
	v.Nums = nil
	v.Items = append(v.Items, inner)
}

// Get returns a member of an object, the last of equals; kind 0 if none.
func (v Value) Get(key string) Value {
	for i := len(v.keys) - 1; i >= 0; i-- {
		if v.keys[i] == key {
			return v.values[i]
		}
	}
	return Value{Offset: v.Offset}
}

// Members are those of an object, in their order.
func (v Value) Members() iter.Seq2[string, Value] {
	return func(yield func(string, Value) bool) {
		for i, key := range v.keys {
			if !yield(key, v.values[i]) {
				return
			}
		}
	}
}
