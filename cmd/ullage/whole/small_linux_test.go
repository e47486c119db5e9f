package whole

import (
	"testing"

	"golang.org/x/sys/unix"
)

// small makes a folder a disk of its own of 160 kB, where that is allowed.
func small(t *testing.T, dir string) bool {
	if unix.Mount("tmpfs", dir, "tmpfs", 0, "size=160k") != nil {
		return false
	}
	t.Cleanup(func() { _ = unix.Unmount(dir, unix.MNT_DETACH) })
	return true
}
