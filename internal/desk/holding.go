package desk

import (
	"errors"
	"io/fs"
	"os"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/sample"
	"garner/internal/words"
)

// CheckResult is what a check of a holding's files found.
type CheckResult struct {
	OK       bool
	Rows     map[string]int // rows read, by table
	Faults   fault.List
	Warnings fault.List
}

// read reads a holding's files from a folder or a zip.
func read(path string) (*holding.Holding, exchange.Report, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, exchange.Report{}, unreadable(path, err)
	}
	if info.IsDir() {
		h, report := exchange.ReadFolder(os.DirFS(path))
		return h, report, nil
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, exchange.Report{}, unreadable(path, err)
	}
	defer f.Close()
	h, report := exchange.ReadZip(f, info.Size())
	return h, report, nil
}

func unreadable(path string, err error) error {
	kind, key := fault.Invalid, "desk.holding_unreadable"
	if errors.Is(err, fs.ErrNotExist) {
		kind, key = fault.NotFound, "desk.holding_missing"
	}
	return &fault.Error{Kind: kind, Phrase: words.P(key, words.Args{"path": path}), Err: err}
}

// checked adds to a report what the crop book has to say.
func checked(h *holding.Holding, report exchange.Report) (fault.List, error) {
	faults := report.Faults
	if h == nil {
		return faults, nil
	}
	b, err := book()
	if err != nil {
		return nil, err
	}
	return append(faults, exchange.Check(h, b)...), nil
}

// OpenHolding reads a holding from a folder or zip. With faults there is no
// holding.
func OpenHolding(path string) (h *holding.Holding, faults, warnings fault.List, err error) {
	h, report, err := read(path)
	if err != nil {
		return nil, nil, nil, err
	}
	if faults, err = checked(h, report); err != nil {
		return nil, nil, nil, err
	}
	if len(faults) > 0 {
		h = nil
	}
	return h, faults, report.Warnings, nil
}

// CheckFiles checks a holding's files and reports every fault at once.
func CheckFiles(path string) (*CheckResult, error) {
	h, report, err := read(path)
	if err != nil {
		return nil, err
	}
	faults, err := checked(h, report)
	if err != nil {
		return nil, err
	}
	return &CheckResult{OK: len(faults) == 0, Rows: report.Rows, Faults: faults, Warnings: report.Warnings}, nil
}

// Sample returns a demo holding: "" the main one, "south" the small one in the
// southern hemisphere.
func Sample(name string) (*holding.Holding, error) {
	files, err := sample.Files(name)
	if err != nil {
		return nil, err
	}
	h, report := exchange.ReadFolder(files)
	faults, err := checked(h, report)
	if err != nil {
		return nil, err
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return h, nil
}
