package exchange

import (
	"io"
	"io/fs"
	"path"
	"strings"

	"garner/internal/fault"
	"garner/internal/words"
)

// bundle is the files of a holding by their path from its top folder.
type bundle map[string][]byte

// find returns a file whatever the case of its name.
func (b bundle) find(name string) (actual string, content []byte, ok bool) {
	if content, ok = b[name]; ok {
		return name, content, true
	}
	for actual, content = range b {
		if strings.EqualFold(actual, name) {
			return actual, content, true
		}
	}
	return "", nil, false
}

// atTop takes off the one folder that a holding was packed in.
func (b bundle) atTop() bundle {
	if _, _, ok := b.find("holding.csv"); ok || len(b) == 0 {
		return b
	}
	top := ""
	for name := range b {
		first, _, nested := strings.Cut(name, "/")
		if !nested || top != "" && first != top {
			return b
		}
		top = first
	}
	out := make(bundle, len(b))
	for name, content := range b {
		out[strings.TrimPrefix(name, top+"/")] = content
	}
	return out
}

// isHidden tells what operating systems put beside the files of a person.
func isHidden(name string) bool {
	for _, part := range strings.Split(name, "/") {
		if strings.HasPrefix(part, ".") && part != "." || part == "__MACOSX" || strings.EqualFold(part, "Thumbs.db") {
			return true
		}
	}
	return false
}

// isTable tells the files that are read; others beside them are passed over.
func isTable(name string) bool { return strings.EqualFold(path.Ext(name), ".csv") }

// folder gathers the files of a folder within the limits.
func folder(fsys fs.FS) (bundle, *fault.Error) {
	b, entries, total := bundle{}, 0, int64(0)
	err := fs.WalkDir(fsys, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return unreadableFile(name, err)
		}
		if isHidden(name) {
			if entry.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		entries++
		if entries > mostEntries || len(b) > mostFiles {
			return tooManyFiles()
		}
		if entry.IsDir() {
			return nil
		}
		content, err := readFile(fsys, name, mostBytes-total)
		if err != nil {
			return err
		}
		total += int64(len(content))
		b[name] = content
		return nil
	})
	if err != nil {
		return nil, asFileFault(err)
	}
	if len(b) > mostFiles {
		return nil, tooManyFiles()
	}
	return b.atTop(), nil
}

// readFile reads a table; of a file that is no table only the name is kept.
func readFile(fsys fs.FS, name string, room int64) ([]byte, error) {
	if !isTable(name) {
		return nil, nil
	}
	f, err := fsys.Open(name)
	if err != nil {
		return nil, unreadableFile(name, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.Size() > room {
		return nil, tooLarge().In(fault.Place{File: name})
	}
	return readAll(f, name, room)
}

// readAll reads what a file truly holds, whatever size it says it has.
func readAll(r io.Reader, name string, room int64) ([]byte, error) {
	content, err := io.ReadAll(io.LimitReader(r, room+1))
	switch {
	case err != nil:
		return nil, unreadableFile(name, err)
	case int64(len(content)) > room:
		return nil, tooLarge().In(fault.Place{File: name})
	}
	return content, nil
}

func tooLarge() *fault.Error {
	return fault.New(fault.Invalid, "exchange.too_large", words.Args{"limit": mostBytes / 1_000_000})
}

func tooManyFiles() *fault.Error {
	return fault.New(fault.Invalid, "exchange.too_many_files", words.Args{"limit": mostFiles})
}

func unreadableFile(name string, err error) *fault.Error {
	e := fault.New(fault.Invalid, "exchange.unreadable_file", nil).In(fault.Place{File: name})
	e.Err = err
	return e
}

func asFileFault(err error) *fault.Error {
	if e, ok := err.(*fault.Error); ok {
		return e
	}
	return unreadableFile("", err)
}
