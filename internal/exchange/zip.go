package exchange

import (
	"archive/zip"
	"io"
	"io/fs"
	"strings"

	"garner/internal/fault"
	"garner/internal/words"
)

// unzip gathers the files of a zip within the limits. Neither the sizes nor the
// names a zip gives are believed.
func unzip(r io.ReaderAt, size int64) (bundle, *fault.Error) {
	if size > mostBytes {
		return nil, tooLarge()
	}
	z, err := zip.NewReader(r, size)
	if z == nil || err != nil && err != zip.ErrInsecurePath {
		e := fault.New(fault.Invalid, "exchange.not_a_zip", nil)
		e.Err = err
		return nil, e
	}
	if len(z.File) > mostEntries {
		return nil, tooManyFiles()
	}
	b, total := bundle{}, int64(0)
	for _, f := range z.File {
		if strings.HasSuffix(f.Name, "/") || isHidden(f.Name) && isInside(f.Name) {
			continue
		}
		content, wrong := entry(f, b, mostBytes-total)
		if wrong != nil {
			return nil, wrong
		}
		total += int64(len(content))
		b[f.Name] = content
		if len(b) > mostFiles {
			return nil, tooManyFiles()
		}
	}
	return b.atTop(), nil
}

// isInside tells whether a name stays inside the folder on every system.
func isInside(name string) bool {
	return fs.ValidPath(name) && !strings.ContainsAny(name, "\\:\x00")
}

// entry reads one file of a zip.
func entry(f *zip.File, b bundle, room int64) ([]byte, *fault.Error) {
	if !isInside(f.Name) {
		return nil, fault.New(fault.Invalid, "exchange.bad_path", words.Args{"given": f.Name})
	}
	if _, twice := b[f.Name]; twice {
		return nil, fault.New(fault.Conflict, "exchange.file_twice", words.Args{"given": f.Name})
	}
	if f.UncompressedSize64 > uint64(room) {
		return nil, tooLarge().In(fault.Place{File: f.Name})
	}
	if !isTable(f.Name) {
		return nil, nil
	}
	content, err := f.Open()
	if err != nil {
		return nil, unreadableFile(f.Name, err)
	}
	defer content.Close()
	text, err := readAll(content, f.Name, room)
	if err != nil {
		return nil, asFileFault(err)
	}
	return text, nil
}
