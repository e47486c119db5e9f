package whole

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"errors"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

var kills = flag.Int("kills", 12, "how often TestKills kills a process that writes a file and a site")

// content is a version of some length whose end says whether it is whole.
func content(version int) []byte {
	b := bytes.Repeat([]byte(fmt.Sprintln("version", version)), 200+version*131%4000)
	return fmt.Appendf(b, "%x", sha256.Sum256(b))
}

func isContent(b []byte) bool {
	n := len(b) - 64
	return n > 0 && fmt.Sprintf("%x", sha256.Sum256(b[:n])) == string(b[n:])
}

// TestMain writes versions until it is killed, if it is told to.
func TestMain(m *testing.M) {
	if dir := os.Getenv("ULLAGE_WRITE_VERSIONS"); dir != "" {
		writeVersions(dir)
	}
	os.Exit(m.Run())
}

func writeVersions(dir string) {
	fmt.Println("ready")
	for v := os.Getpid(); ; v++ {
		b := content(v)
		// On a full disk one version fails, and the next is shorter again.
		_ = File(filepath.Join(dir, "trip.geojson"), func(w io.Writer) error { _, err := w.Write(b); return err }) // an error is fine: what was there stays
		_ = Folder(filepath.Join(dir, "site"), func(put Put) error {
			return errors.Join(put("a.txt", b), put("web/b.txt", b))
		})
	}
}

// TestKills kills a process at many moments while it replaces a file and a folder, on a small disk that is full again and again
// where this machine lets tests have one: both
// are whole ever after.
func TestKills(t *testing.T) {
	dir := t.TempDir()
	if small(t, dir) {
		t.Log("on a disk of 160 kB")
	} else {
		t.Log("no small disk to be had here: on the usual one")
	}
	if err := errors.Join(
		File(filepath.Join(dir, "trip.geojson"), func(w io.Writer) error { _, err := w.Write(content(0)); return err }),
		Folder(filepath.Join(dir, "site"), func(put Put) error { return errors.Join(put("a.txt", content(0)), put("web/b.txt", content(0))) })); err != nil {
		t.Fatal(err)
	}
	random := rand.New(rand.NewPCG(1, 2))
	for n := range *kills {
		killOne(t, dir, time.Duration(random.Int64N(int64(20*time.Millisecond))))
		a, errA := os.ReadFile(filepath.Join(dir, "site", "a.txt"))
		b, errB := os.ReadFile(filepath.Join(dir, "site", "web", "b.txt"))
		f, errF := os.ReadFile(filepath.Join(dir, "trip.geojson"))
		if err := errors.Join(errA, errB, errF); err != nil || !isContent(a) || !bytes.Equal(a, b) || !isContent(f) {
			t.Fatalf("after kill %d: %v, site of %d and %d bytes, file of %d", n+1, err, len(a), len(b), len(f))
		}
		entries, _ := os.ReadDir(dir)
		for _, e := range entries { // an hour later
			if strings.HasPrefix(e.Name(), ".") {
				os.RemoveAll(filepath.Join(dir, e.Name()))
			}
		}
	}
}

// killOne starts the writer and kills it a while after it began.
func killOne(t *testing.T, dir string, after time.Duration) {
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), "ULLAGE_WRITE_VERSIONS="+dir)
	out, err := c.StdoutPipe()
	if err := errors.Join(err, c.Start()); err != nil {
		t.Fatal(err)
	}
	if _, err := bufio.NewReader(out).ReadString('\n'); err != nil {
		t.Fatal(err)
	}
	time.Sleep(after) // the moment of the kill: any will do
	if err := c.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = c.Wait() // killed
}
