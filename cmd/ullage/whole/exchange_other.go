//go:build !linux

package whole

import "errors"

func exchange(string, string) error { return errors.ErrUnsupported }
