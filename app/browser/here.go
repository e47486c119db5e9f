package browser

import (
	"errors"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// A Fix is where the device says that it is: degrees, and within how many
// metres (with 95 % confidence, as the browser's interface defines it).
type Fix struct{ Lon, Lat, WithinM float64 }

// Why there is no [Fix]: GeolocationPositionError of the W3C's Geolocation.
var (
	ErrNotAllowed = errors.New("browser: the page may not know the position")      // code 1, also without https
	ErrNoPosition = errors.New("browser: the device does not know its position")   // code 2, or it cannot
	ErrTooLong    = errors.New("browser: the device took too long for a position") // code 3
)

// Here asks the device for its position, which asks its person first. It waits
// for both, for the device at most that long; a satellite receiver needs no
// network.
func Here(atMost time.Duration) (Fix, error) {
	if app.IsServer {
		return Fix{}, ErrNoBrowser
	}
	g, err := reflectGet(app.Window().Get("navigator"), "geolocation")
	if err != nil || !g.Truthy() {
		return Fix{}, ErrNoPosition
	}
	type result struct {
		fix Fix
		err error
	}
	c := make(chan result, 1)
	ok := app.FuncOf(func(_ app.Value, a []app.Value) any {
		defer guard("position")
		at := first(a).Get("coords")
		c <- result{fix: Fix{at.Get("longitude").Float(), at.Get("latitude").Float(), at.Get("accuracy").Float()}}
		return nil
	})
	no := app.FuncOf(func(_ app.Value, a []app.Value) any {
		defer guard("position")
		err := ErrNoPosition
		switch first(a).Get("code").Int() {
		case 1:
			err = ErrNotAllowed
		case 3:
			err = ErrTooLong
		}
		c <- result{err: err}
		return nil
	})
	defer ok.Release()
	defer no.Release()
	if _, err := try(func() app.Value {
		return g.Call("getCurrentPosition", ok, no, map[string]any{"enableHighAccuracy": true, "timeout": atMost.Milliseconds()})
	}); err != nil {
		return Fix{}, err
	}
	r := <-c
	return r.fix, r.err
}
