package cli

import (
	"bytes"
	"errors"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// exportCommand writes a holding's files to a folder or zip.
type exportCommand struct {
	Target  string `arg:"" placeholder:"FOLDER|FILE.zip"`
	Replace bool
	holdingFlags
	JSON bool `name:"json"`
}

// exportAnswer is the JSON of an export.
type exportAnswer struct {
	Target string   `json:"target"`
	Files  []string `json:"files"`
}

// Run writes the files; what is there already is left alone unless told
// otherwise.
func (c *exportCommand) Run(a *App) error {
	h, err := c.open(a)
	if err != nil {
		return err
	}
	files, err := exchange.Write(h)
	if err != nil {
		return err
	}
	if !c.Replace && !isFree(c.Target) {
		return fault.New(fault.Conflict, "cli.export_there", words.Args{"path": c.Target})
	}
	if err := c.write(h, files); err != nil {
		return unwritable(c.Target, err)
	}
	names := slices.Sorted(maps.Keys(files))
	if c.JSON {
		return a.json(exportAnswer{Target: c.Target, Files: names})
	}
	a.say(words.P("cli.exported", words.Args{"holding": h.Name, "path": c.Target, "n": len(names)}))
	return nil
}

func (c *exportCommand) write(h *holding.Holding, files map[string][]byte) error {
	if strings.EqualFold(filepath.Ext(c.Target), ".zip") {
		var packed bytes.Buffer
		if err := exchange.WriteZip(&packed, h); err != nil {
			return err
		}
		return writeWhole(c.Target, packed.Bytes())
	}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		path := filepath.Join(c.Target, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		if err := writeWhole(path, files[name]); err != nil {
			return err
		}
	}
	return nil
}

// isFree tells whether nothing is at a path, or only an empty folder.
func isFree(path string) bool {
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
		return true
	}
	entries, err := os.ReadDir(path)
	return err == nil && len(entries) == 0
}

// writeWhole writes a file beside its place and moves it there, so that no file
// is ever half written.
func writeWhole(path string, content []byte) error {
	f, err := os.CreateTemp(filepath.Dir(path), ".garner-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) // it is gone when all went well
	if _, err := f.Write(content); err != nil {
		f.Close()
		return err
	}
	if err := errors.Join(f.Chmod(0o644), f.Sync(), f.Close()); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

// unwritable says why files could not be written.
func unwritable(path string, err error) error {
	var own *fault.Error
	if errors.As(err, &own) {
		return err
	}
	key := "cli.export_unwritable"
	switch {
	case errors.Is(err, syscall.ENOSPC):
		key = "cli.export_full"
	case errors.Is(err, fs.ErrPermission):
		key = "cli.export_forbidden"
	case errors.Is(err, fs.ErrNotExist):
		key = "cli.export_no_folder"
	}
	return &fault.Error{Kind: fault.Storage, Phrase: words.P(key, words.Args{"path": path}), Err: err}
}
