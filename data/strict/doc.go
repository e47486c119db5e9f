// Package strict decodes JSON and says where it is wrong: line, column, and the path of the value.
//
// In come texts as people write and export them, out go Go values, or an [*Error]. [Unmarshal] is for formats of this
// program; [UnmarshalKnown] for files that may say more than this version knows. In both a misspelt member never becomes 0;
// [Parse] for texts whose shape only shows while they are read. Read unmarshal.go first.
//
// Decision: encoding/json with a walk over its tokens. It names neither the place of an unknown member nor repeated ones;
// github.com/go-json-experiment/json does both, with offset and path, but makes the page's program 220 kB larger (2.164 → 2.384
// MB, brotli 11; encoding/json is in it anyway). Price: 250 lines, and every text is read twice.
//
// Files, each using only those above it:
//
//   - error.go: what is wrong, and where
//   - decode.go: encoding/json, with the place of a fault
//   - value.go: values that know where they stand
//   - unmarshal.go: decoding that refuses the rest
package strict
