package keep

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
)

// This file writes and reads as much of the tar format as one flat file of files needs
// (POSIX.1-1988 ustar), for any archiver to open. archive/tar, the twin in the test, is
// several times the size in the page.

const (
	tarBlock  = 512
	tarName   = 100
	tarSizeAt = 124
	tarSumAt  = 148
	tarMagic  = 257
)

// tarHead is the block before a file's bytes.
func tarHead(name string, size int) ([]byte, error) {
	if len(name) > tarName {
		return nil, fmt.Errorf("the name %s is too long for a tar file", name)
	}
	b := make([]byte, tarBlock)
	copy(b, name)
	copy(b[100:], "0000644\x000000000\x000000000\x00")
	copy(b[tarSizeAt:], fmt.Sprintf("%011o\x00%011o\x00", size, 0))
	b[156] = '0' // an ordinary file
	copy(b[tarMagic:], "ustar\x0000")
	copy(b[tarSumAt:], fmt.Sprintf("%06o\x00 ", tarSum(b)))
	return b, nil
}

// tarSum is the sum of a head's bytes, its own place taken for spaces.
func tarSum(b []byte) int {
	sum := 8 * int(' ')
	for i, c := range b {
		if i < tarSumAt || i >= tarSumAt+8 {
			sum += int(c)
		}
	}
	return sum
}

// tarPad fills up the last block of so many bytes.
func tarPad(size int) []byte { return make([]byte, (tarBlock-size%tarBlock)%tarBlock) }

// tarEnd follows the last file.
func tarEnd() []byte { return make([]byte, 2*tarBlock) }

// readTar lists the files of a tar file; their bytes are parts of it.
func readTar(b []byte) (map[string][]byte, error) {
	out := map[string][]byte{}
	for len(b) >= tarBlock && b[0] != 0 {
		head := b[:tarBlock]
		size, err := octal(head[tarSizeAt : tarSizeAt+12])
		sum, bad := octal(head[tarSumAt : tarSumAt+8])
		b = b[tarBlock:]
		if err != nil || bad != nil || sum != tarSum(head) || size > len(b) {
			return nil, fmt.Errorf("%w: the file breaks off after %d files", ErrDamaged, len(out))
		}
		name, _, _ := bytes.Cut(head[:tarName], []byte{0})
		out[string(name)] = b[:size:size]
		b = b[min(size+len(tarPad(size)), len(b)):]
	}
	return out, nil
}

func octal(field []byte) (int, error) {
	n, err := strconv.ParseUint(strings.Trim(string(field), " \x00"), 8, 40)
	return int(n), err
}
