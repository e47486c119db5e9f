package browser

import (
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// MaxFile is the largest file taken from a person, in bytes: it is copied
// once, and the program has 4 GB in all.
const MaxFile = 512 << 20

// A File is one that a person chose or dropped; its bytes are not read yet.
type File struct {
	Name string
	Size int64
	v    app.Value
}

// Chosen returns the files of a file input and clears the input, so that the
// same file can be chosen again. Call it in the handler of its change event.
func Chosen(input app.Value) []File {
	if !input.Truthy() {
		return nil
	}
	files := list(input.Get("files"))
	if len(files) > 0 {
		input.Set("value", "")
	}
	return files
}

// Dropped returns the files of a drop event. Call it in the event's handler,
// after PreventDefault.
func Dropped(event app.Value) []File {
	if !event.Truthy() {
		return nil
	}
	d := event.Get("dataTransfer")
	if !d.Truthy() {
		return nil
	}
	return list(d.Get("files"))
}

// list reads a FileList; nothing chosen gives none.
func list(files app.Value) []File {
	if !files.Truthy() {
		return nil
	}
	var out []File
	for i := range files.Get("length").Int() {
		f := files.Index(i)
		if !f.Truthy() {
			continue
		}
		out = append(out, File{Name: f.Get("name").String(), Size: int64(f.Get("size").Float()), v: f})
	}
	return out
}

// Bytes reads the file. It waits.
func (f File) Bytes() ([]byte, error) {
	if f.v == nil {
		return nil, ErrNoBrowser
	}
	if f.Size > MaxFile {
		return nil, fmt.Errorf("%s has %d MB; at most %d MB can be read here: cut the extract to the region of the route",
			f.Name, f.Size>>20, MaxFile>>20)
	}
	v, err := awaitCall(func() app.Value { return f.v.Call("arrayBuffer") })
	if err != nil {
		return nil, fmt.Errorf("read %s: %w", f.Name, err)
	}
	return toGo(v)
}

// Fetch reads a file of our own site. It waits.
func Fetch(path string) ([]byte, error) {
	r, err := awaitCall(func() app.Value { return app.Window().Call("fetch", path) })
	if err != nil {
		return nil, fmt.Errorf("fetch %s: %w", path, err)
	}
	if !r.Get("ok").Bool() {
		return nil, fmt.Errorf("fetch %s: the server answers %d", path, r.Get("status").Int())
	}
	v, err := awaitCall(func() app.Value { return r.Call("arrayBuffer") })
	if err != nil {
		return nil, fmt.Errorf("fetch %s: %w", path, err)
	}
	return toGo(v)
}

// Download offers data as a file of the given name and media type.
func Download(name, mediaType string, data []byte) error {
	return DownloadPieces(name, mediaType, func(give func([]byte) error) error { return give(data) })
}

// DownloadPieces offers a file that comes in pieces, as it may be larger than this
// program's memory: pieces gives one after the other.
func DownloadPieces(name, mediaType string, pieces func(give func([]byte) error) error) error {
	parts, err := try(func() app.Value { return app.Window().Get("Array").New() })
	if err == nil {
		err = pieces(func(b []byte) error {
			u, err := toJS(b)
			if err != nil {
				return err
			}
			_, err = try(func() app.Value { // a blob may lie on a disk
				parts.Call("push", app.Window().Get("Blob").New([]any{u}))
				return nil
			})
			return err
		})
	}
	if err != nil {
		return fmt.Errorf("download %s: %w", name, err)
	}
	_, err = try(func() app.Value {
		w := app.Window()
		blob := w.Get("Blob").New(parts, map[string]any{"type": mediaType})
		url := w.Get("URL").Call("createObjectURL", blob)
		a := w.Get("document").Call("createElement", "a")
		a.Set("href", url)
		a.Set("download", name)
		a.Call("click")
		// The download starts after this task: the address must live a while longer.
		var revoke app.Func
		revoke = app.FuncOf(func(app.Value, []app.Value) any {
			w.Get("URL").Call("revokeObjectURL", url)
			revoke.Release()
			return nil
		})
		return w.Call("setTimeout", revoke, 30_000)
	})
	if err != nil {
		return fmt.Errorf("download %s: %w", name, err)
	}
	return nil
}

// FileName makes a name fit for a file.
func FileName(name string) string {
	out := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, strings.TrimSpace(name))
	if out == "" {
		return "trip"
	}
	return out
}
