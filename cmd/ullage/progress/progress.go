// Package progress shows on a terminal what a command is doing, and for how long.
//
// What comes in is a line of text for each thing done; what goes out is one line
// that is drawn over and over and taken away at the end. A writer that is no
// terminal gets nothing: files, pipes and other programs see results only.
//
// Decision. Whether a writer is a terminal, and how wide, says golang.org/x/term
// (BSD-3-Clause, kept by the Go project, in the command line only); the rest are
// the lines below. Libraries of bars were looked at: they want to know how much
// there is to do, which neither a compiler nor a search for the best plan says, and
// bring four more modules.
package progress

import (
	"fmt"
	"io"
	"os"
	"sync"
	"time"

	"golang.org/x/term"
)

// every is how often the line is drawn: the seconds shall be seen to pass.
const every = 200 * time.Millisecond

// A Line shows what is being done. It can be used from several goroutines.
type Line struct {
	w     io.Writer
	width int // of the terminal; 0: w is none, and nothing is shown

	mu    sync.Mutex
	text  string
	since time.Time
	done  chan struct{} // closed when the line is taken away; nil: none is shown
}

// To is a line on w, which shows nothing unless w is a terminal.
func To(w io.Writer) *Line {
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return &Line{w: w}
	}
	width, _, err := term.GetSize(int(f.Fd()))
	if err != nil || width < 20 {
		width = 80
	}
	return &Line{w: w, width: width}
}

// Show says what is done from now on, and counts the seconds from nothing.
func (l *Line) Show(text string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.width == 0 {
		return
	}
	l.text, l.since = text, time.Now()
	l.start()
}

// Update changes the text and lets the seconds count on.
func (l *Line) Update(text string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.width == 0 {
		return
	}
	if l.text = text; l.since.IsZero() {
		l.since = time.Now()
	}
	l.start()
}

// start draws the line, and goes on drawing it. l.mu is held.
func (l *Line) start() {
	l.draw()
	if l.done != nil {
		return
	}
	done := make(chan struct{})
	l.done = done
	go func() {
		tick := time.NewTicker(every)
		defer tick.Stop()
		for {
			select {
			case <-done:
				return
			case <-tick.C:
				l.mu.Lock()
				if l.done == done {
					l.draw()
				}
				l.mu.Unlock()
			}
		}
	}()
}

// draw writes the line in place of the one before.
func (l *Line) draw() {
	line := []rune(fmt.Sprintf("%s  %d s", l.text, int(time.Since(l.since).Seconds())))
	if len(line) >= l.width {
		line = line[:l.width-1]
	}
	fmt.Fprintf(l.w, "\r\x1b[K%s", string(line))
}

// Clear takes the line away, so that something else can be printed.
func (l *Line) Clear() {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.done == nil {
		return
	}
	close(l.done)
	l.done = nil
	fmt.Fprint(l.w, "\r\x1b[K")
}
