package page

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"path"
	"slices"

	"github.com/andybalholm/brotli"
)

// keptPacked is the size from which a packed file is kept for the next time.
const keptPacked = 100_000

// Pack compresses with brotli (RFC 7932) at a quality of 0 to 11. What takes long
// is kept by its content.
func Pack(b []byte, quality int) ([]byte, error) {
	if len(b) < keptPacked {
		return pack(b, quality)
	}
	return kept(fmt.Sprintf("%x-%d.br", sha256.Sum256(b), quality), func() ([]byte, error) { return pack(b, quality) })
}

func pack(b []byte, quality int) ([]byte, error) {
	var out bytes.Buffer
	w := brotli.NewWriterOptions(&out, brotli.WriterOptions{Quality: quality, LGWin: 24})
	if _, err := w.Write(b); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// packs reports whether a file gets smaller when packed.
func packs(name string) bool {
	return !slices.Contains([]string{".png", ".pbf"}, path.Ext(name))
}
