package data

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
)

// A node is a JSON value that knows where it stands, so that an error in the
// middle of a large file can name the line.
type node struct {
	offset int
	kind   byte // { [ " 0 t f n as they start, 0 for "not there"
	text   string
	nums   []float64 // of an array of numbers only
	items  []node    // of any other array
	keys   []string  // of an object, with values
	values []node
}

// maxDepth is far more than any GeoJSON needs.
const maxDepth = 64

// parseJSON reads one JSON value; the error names line and column.
func parseJSON(text []byte) (node, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	n, err := parseNode(d, maxDepth)
	if err == nil {
		if _, more := d.Token(); more != io.EOF {
			err = errors.New("there is more after the end of the JSON value")
		}
	}
	if err == nil {
		return n, nil
	}
	at := int(d.InputOffset())
	var syntax *json.SyntaxError
	if errors.As(err, &syntax) {
		at = int(syntax.Offset) - 1
	}
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		at, err = len(text), errors.New("the file ends in the middle; copy or export it again")
	}
	return node{}, at1(text, at, err)
}

// at1 adds line and column to an error.
func at1(text []byte, offset int, err error) error {
	line, column := lineColumn(text, offset)
	return fmt.Errorf("line %d, column %d: %w", line, column, err)
}

func parseNode(d *json.Decoder, depth int) (node, error) {
	if depth == 0 {
		return node{}, fmt.Errorf("values are nested more than %d deep", maxDepth)
	}
	t, err := d.Token()
	if err != nil {
		return node{}, err
	}
	n := node{offset: int(d.InputOffset()) - 1}
	switch t := t.(type) {
	case json.Delim:
		n.kind = byte(t)
		for d.More() {
			if t == '{' {
				key, err := d.Token()
				if err != nil {
					return n, err
				}
				n.keys = append(n.keys, key.(string))
			}
			v, err := parseNode(d, depth-1)
			if err != nil {
				return n, err
			}
			if t == '{' {
				n.values = append(n.values, v)
			} else {
				n.push(v)
			}
		}
		_, err = d.Token() // the closing delimiter
		return n, err
	case string:
		n.kind, n.text = '"', t
	case float64:
		n.kind, n.nums = '0', []float64{t}
	case bool:
		n.kind = 't'
	case nil:
		n.kind = 'n'
	}
	return n, nil
}

// push adds to an array, which keeps numbers flat as long as it can.
func (n *node) push(v node) {
	if v.kind == '0' && n.items == nil {
		n.nums = append(n.nums, v.nums[0])
		return
	}
	for _, f := range n.nums {
		n.items = append(n.items, node{offset: n.offset, kind: '0', nums: []float64{f}})
	}
	n.nums = nil
	n.items = append(n.items, v)
}

// get returns a member of an object, the last of equals; kind 0 if none.
func (n node) get(key string) node {
	for i := len(n.keys) - 1; i >= 0; i-- {
		if n.keys[i] == key {
			return n.values[i]
		}
	}
	return node{offset: n.offset}
}

func nanIfMissing(nums []float64, i int) float64 {
	if i < len(nums) {
		return nums[i]
	}
	return math.NaN()
}
