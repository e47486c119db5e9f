package say

import (
	"bytes"
	"encoding/json"

	"ullage/planner/fact"
)

// JSON is a value as JSON in which each fact has its sentence beside kind and
// values, as the member text.
func (v Voice) JSON(x any) ([]byte, error) {
	plain, err := json.Marshal(x)
	if err != nil {
		return nil, err
	}
	r := retelling{voice: v, in: json.NewDecoder(bytes.NewReader(plain))}
	r.in.UseNumber()
	if err := r.value(); err != nil {
		return nil, err
	}
	return r.out.Bytes(), nil
}

// A retelling copies JSON, member by member in its order, and adds the sentences.
type retelling struct {
	voice Voice
	in    *json.Decoder
	out   bytes.Buffer
}

func (r *retelling) value() error {
	token, err := r.in.Token()
	if err != nil {
		return err
	}
	switch token {
	case json.Delim('['):
		return r.list(']', r.value)
	case json.Delim('{'):
		return r.object()
	}
	return r.write(token)
}

// list copies what stands between brackets, the first of which is read already.
func (r *retelling) list(end json.Delim, element func() error) error {
	r.out.WriteByte(byte(end) - 2) // [ and ] are two apart, and so are { and }
	for first := true; r.in.More(); first = false {
		if !first {
			r.out.WriteByte(',')
		}
		if err := element(); err != nil {
			return err
		}
	}
	_, err := r.in.Token()
	r.out.WriteByte(byte(end))
	return err
}

func (r *retelling) object() error {
	start, others := r.out.Len(), false
	err := r.list('}', func() error {
		name, err := r.in.Token()
		if err != nil {
			return err
		}
		others = others || name != "kind" && name != "values"
		if err := r.write(name); err != nil {
			return err
		}
		r.out.WriteByte(':')
		return r.value()
	})
	var f fact.Fact
	if err != nil || others || json.Unmarshal(r.out.Bytes()[start:], &f) != nil || !r.voice.Has(string(f.Kind)) {
		return err
	}
	r.out.Truncate(r.out.Len() - 1)
	r.out.WriteString(`,"text":`)
	err = r.write(r.voice.Fact(f))
	r.out.WriteByte('}')
	return err
}

func (r *retelling) write(token any) error {
	text, err := json.Marshal(token)
	r.out.Write(text)
	return err
}
