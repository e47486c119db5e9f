package page

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
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

// keptOfResource stands before what is kept of resource.go.
const keptOfResource = "package app\n\nimport \"strings\"\n\n// Handler is the server's.\ntype Handler struct{}\n\n"

// leftOut are the files that the copy lacks. Of resource.go, what the page uses
// is kept: from resourceStart on.
var leftOut = map[string]bool{"http.go": true, "static.go": true, "resource.go": true, "crypto.go": true}

// pageModules writes the copy and a go.mod with it beside go.sum, and returns
// the name of the go.mod, for -modfile. All are kept in the user's cache under
// one name, so that go need not compile the copy again.
func pageModules(ctx context.Context, root string) (modfile string, err error) {
	version, from, err := findLibrary(ctx, root)
	if err != nil {
		return "", err
	}
	dir := filepath.Join(cacheDir(), "page-"+version)
	copied, ids := filepath.Join(dir, "go-app"), filepath.Join(dir, "uuid")
	for _, folder := range []string{"pkg/app", "pkg/errors"} {
		if err := copySources(filepath.Join(from, folder), filepath.Join(copied, folder)); err != nil {
			return "", err
		}
	}
	if err := os.MkdirAll(ids, 0o755); err != nil {
		return "", err
	}
	var read [4][]byte
	for i, name := range []string{filepath.Join(from, "pkg/app/resource.go"), filepath.Join(root, "go.mod"), filepath.Join(root, "go.sum"), filepath.Join(from, "go.mod")} {
		if read[i], err = os.ReadFile(name); err != nil {
			return "", err
		}
	}
	resource, mod, sum, own := read[0], read[1], read[2], read[3]
	at := bytes.Index(resource, []byte(resourceStart))
	if at < 0 {
		return "", errors.New("the page's library is another one than this was written for: resource.go has no " + resourceStart)
	}
	modfile = filepath.Join(dir, "go.mod")
	for name, b := range map[string][]byte{
		filepath.Join(copied, "pkg/app/resource.go"): []byte(keptOfResource + string(resource[at:])),
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

// findLibrary asks go for the library's version and folder; it is fetched if it
// is not there.
func findLibrary(ctx context.Context, root string) (version, folder string, err error) {
	if out, err := goTool(ctx, root, "mod", "download", library); err != nil {
		return "", "", fmt.Errorf("fetch %s: %w\n%s", library, err, bytes.TrimSpace(out))
	}
	out, err := goTool(ctx, root, "list", "-m", "-f", "{{.Version}}\n{{.Dir}}", library)
	if err != nil {
		return "", "", fmt.Errorf("find %s: %w", library, err)
	}
	version, folder, _ = strings.Cut(strings.TrimSpace(string(out)), "\n")
	return version, folder, nil
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
