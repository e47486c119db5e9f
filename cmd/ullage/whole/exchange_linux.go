package whole

import (
	"errors"

	"golang.org/x/sys/unix"
)

// exchange lets two names change places.
func exchange(a, b string) error {
	err := unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE)
	if errors.Is(err, unix.EINVAL) || errors.Is(err, unix.ENOSYS) { // a file system that cannot
		return errors.ErrUnsupported
	}
	return err
}
