package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// The library of the page has its server in the same package. Its init
// functions keep net/http with all of TLS in the page's program, which uses
// none of it: a sixth of the program, packed. So the page is built with a copy
// of the library (the version that go.mod names) that lacks the server's files,
// and the ciphers for states kept in the browser, of which the page has none.

const (
	library       = "github.com/maxence-charriere/go-app/v10"
	resourceStart = "func clientResourceResolver("

	// in place of crypto.go
	noCipher = `package app

import "errors"

var errNoCipher = errors.New("the page is built without ciphers")

func encrypt(string, []byte) ([]byte, error) { return nil, errNoCipher }

func decrypt(string, []byte) ([]byte, error) { return nil, errNoCipher }
`
	// in place of github.com/google/uuid, of which the library takes one
	// function to tell one tab from another: 128 random bits
	idModule  = "github.com/google/uuid"
	randomIDs = `package uuid

import (
	"math/rand/v2"
	"strconv"
)

func NewString() string {
	return strconv.FormatUint(rand.Uint64(), 16) + "-" + strconv.FormatUint(rand.Uint64(), 16)
}
`
)

// leftOut are the files that the copy lacks. Of resource.go, what the page uses
// is kept: from resourceStart on.
var leftOut = map[string]bool{"http.go": true, "static.go": true, "resource.go": true, "crypto.go": true}

// pageModules writes the copy and a go.mod with it beside go.sum, and returns
// the name of the go.mod, for -modfile. All are kept in the user's cache under
// one name, so that go need not compile the copy again.
func pageModules(root string) (modfile string, err error) {
	list := exec.Command("go", "list", "-m", "-f", "{{.Version}}\n{{.Dir}}", library)
	list.Dir = root
	out, err := list.Output()
	if err != nil {
		return "", fmt.Errorf("find %s: %w", library, err)
	}
	version, from, _ := strings.Cut(strings.TrimSpace(string(out)), "\n")
	cache, err := os.UserCacheDir()
	if err != nil {
		cache = os.TempDir()
	}
	dir := filepath.Join(cache, "ullage", "page-"+version)
	copied := filepath.Join(dir, "go-app")
	for _, folder := range []string{"pkg/app", "pkg/errors"} {
		if err := copySources(filepath.Join(from, folder), filepath.Join(copied, folder)); err != nil {
			return "", err
		}
	}
	resource, err := os.ReadFile(filepath.Join(from, "pkg/app/resource.go"))
	if err != nil {
		return "", err
	}
	at := bytes.Index(resource, []byte(resourceStart))
	if at < 0 {
		return "", errors.New("the page's library is another one than this was written for: resource.go has no " + resourceStart)
	}
	kept := "package app\n\nimport \"strings\"\n\n// Handler is the server's.\ntype Handler struct{}\n\n" + string(resource[at:])
	mod, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		return "", err
	}
	sum, err := os.ReadFile(filepath.Join(root, "go.sum"))
	if err != nil {
		return "", err
	}
	own, err := os.ReadFile(filepath.Join(from, "go.mod"))
	if err != nil {
		return "", err
	}
	modfile = filepath.Join(dir, "go.mod")
	ids := filepath.Join(dir, "uuid")
	if err := os.MkdirAll(ids, 0o755); err != nil {
		return "", err
	}
	for name, b := range map[string][]byte{
		filepath.Join(copied, "pkg/app/resource.go"): []byte(kept),
		filepath.Join(copied, "pkg/app/crypto.go"):   []byte(noCipher),
		filepath.Join(copied, "go.mod"):              own,
		filepath.Join(ids, "uuid.go"):                []byte(randomIDs),
		filepath.Join(ids, "go.mod"):                 []byte("module " + idModule + "\n"),
		modfile:                                      fmt.Appendf(mod, "\nreplace %s => %s\n\nreplace %s => %s\n", library, copied, idModule, ids),
		filepath.Join(dir, "go.sum"):                 sum,
	} {
		if err := writeIfOther(name, b); err != nil {
			return "", err
		}
	}
	return modfile, nil
}

// copySources copies the Go files of a folder, without tests and what is left out.
func copySources(from, to string) error {
	if err := os.MkdirAll(to, 0o755); err != nil {
		return err
	}
	entries, err := os.ReadDir(from)
	if err != nil {
		return err
	}
	for _, e := range entries {
		name := e.Name()
		if filepath.Ext(name) != ".go" || strings.HasSuffix(name, "_test.go") || leftOut[name] {
			continue
		}
		b, err := os.ReadFile(filepath.Join(from, name))
		if err != nil {
			return err
		}
		if err := writeIfOther(filepath.Join(to, name), b); err != nil {
			return err
		}
	}
	return nil
}

// writeIfOther leaves a file alone that holds b already, and else replaces it
// at once: another build may read it meanwhile.
func writeIfOther(name string, b []byte) error {
	if was, err := os.ReadFile(name); err == nil && bytes.Equal(was, b) {
		return nil
	}
	f, err := os.CreateTemp(filepath.Dir(name), "new-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	if _, err := f.Write(b); err != nil {
		f.Close()
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), name)
}
