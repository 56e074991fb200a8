package cli

import (
	"errors"
	"io/fs"
	"os"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/station"
	"garner/internal/words"
)

// open opens a file that was named on the command line.
func open(path string) (*os.File, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, fileFault(path, err)
	}
	info, err := file.Stat()
	if err != nil {
		return nil, errors.Join(fileFault(path, err), file.Close())
	}
	if info.IsDir() {
		return nil, errors.Join(fault.New(fault.Invalid, "cli.file_is_folder", words.Args{"file": path}), file.Close())
	}
	return file, nil
}

// fileFault says why a file could not be opened.
func fileFault(path string, err error) error {
	args := words.Args{"file": path}
	f := fault.New(fault.Invalid, "cli.file_unreadable", args)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		f = fault.New(fault.NotFound, "cli.file_missing", args)
	case errors.Is(err, fs.ErrPermission):
		f = fault.New(fault.Invalid, "cli.file_forbidden", args)
	}
	f.Err = err
	return f
}

// readDaily reads a daily record. What looks odd in it is said on the way; what
// was refused is returned, and said too when aloud.
func (a *App) readDaily(path string, aloud bool) (*climate.Record, fault.List, error) {
	file, err := open(path)
	if err != nil {
		return nil, nil, err
	}
	defer file.Close()
	record, report, err := station.ReadDaily(file, path)
	if err != nil {
		return nil, nil, err
	}
	a.warn(report.Warnings)
	if aloud {
		a.warn(report.Refused)
	}
	return record, report.Refused, nil
}

func (a *App) readNormals(path string) (*climate.Normals, error) {
	file, err := open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return station.ReadNormals(file, path)
}
