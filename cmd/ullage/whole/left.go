package whole

import (
	"crypto/rand"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// abandoned: what is older is of no run that is still at work.
const abandoned = time.Hour

// beside is a new name in the same folder, with what it is for: "new" or "old".
func beside(name, what string) string {
	return filepath.Join(filepath.Dir(name), "."+filepath.Base(name)+"."+what+"-"+rand.Text()[:8])
}

// left lists what runs left beside a name, of the kind that beside was given, and which of it is abandoned.
func left(name, what string) (all, old []string) {
	entries, _ := os.ReadDir(filepath.Dir(name)) // a folder that cannot be read has nothing to clear
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), "."+filepath.Base(name)+"."+what+"-") {
			continue
		}
		p := filepath.Join(filepath.Dir(name), e.Name())
		all = append(all, p)
		if i, err := e.Info(); err == nil && time.Since(i.ModTime()) > abandoned {
			old = append(old, p)
		}
	}
	return all, old
}
