package progress

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"time"
)

// What is no terminal gets nothing, whatever is shown.
func TestNothingElsewhere(t *testing.T) {
	var out bytes.Buffer
	l := To(&out)
	l.Show("planning")
	l.Update("planning on")
	time.Sleep(2 * every)
	l.Clear()
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	piped := To(w)
	piped.Show("planning")
	piped.Clear()
	w.Close()
	var got bytes.Buffer
	if _, err := got.ReadFrom(r); err != nil || out.Len() > 0 || got.Len() > 0 {
		t.Errorf("%v, %q, %q", err, out.String(), got.String())
	}
}

// A terminal gets one line that is taken away again.
func TestOnTerminal(t *testing.T) {
	var out bytes.Buffer
	l := &Line{w: &out, width: 14}
	l.Show("planning")
	l.Update("looking for other plans")
	l.Clear()
	l.Clear() // there is none any more
	if got, want := out.String(), "\r\x1b[Kplanning  0 s\r\x1b[Klooking for o\r\x1b[K"; got != want {
		t.Errorf("drew %q, want %q", got, want)
	}
}

// The line is drawn anew while nothing is said.
func TestSecondsPass(t *testing.T) {
	var out bytes.Buffer
	l := &Line{w: &out, width: 80}
	l.Show("planning")
	l.mu.Lock()
	l.since = l.since.Add(-7 * time.Second)
	l.mu.Unlock()
	for deadline := time.Now().Add(10 * time.Second); ; time.Sleep(every / 4) {
		l.mu.Lock()
		drawn := out.String()
		l.mu.Unlock()
		if strings.Contains(drawn, "planning  7 s") {
			break
		}
		if time.Now().After(deadline) {
			t.Fatalf("drew %q", drawn)
		}
	}
	l.Clear()
}

// The other end of a pseudo terminal is one.
func TestIsTerminal(t *testing.T) {
	f, err := os.OpenFile("/dev/ptmx", os.O_RDWR, 0)
	if err != nil {
		t.Skip("no pseudo terminals here: ", err)
	}
	defer f.Close()
	if To(f).width == 0 {
		t.Error("a terminal is not known as one")
	}
}
