package desk

import (
	"bytes"
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

// read reads and checks a holding's files in a folder or a zip.
func read(path string) (*holding.Holding, exchange.Report, error) {
	b, err := book()
	if err != nil {
		return nil, exchange.Report{}, err
	}
	info, err := os.Stat(path)
	if err != nil {
		return nil, exchange.Report{}, unreadable(path, err)
	}
	if info.IsDir() {
		h, report := exchange.CheckFolder(os.DirFS(path), b)
		return h, report, nil
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, exchange.Report{}, unreadable(path, err)
	}
	defer f.Close()
	h, report := exchange.CheckZip(f, info.Size(), b)
	return h, report, nil
}

func unreadable(path string, err error) error {
	kind, key := fault.Invalid, "desk.holding_unreadable"
	if errors.Is(err, fs.ErrNotExist) {
		kind, key = fault.NotFound, "desk.holding_missing"
	}
	return &fault.Error{Kind: kind, Phrase: words.P(key, words.Args{"path": path}), Err: err}
}

// OpenHolding reads a holding from a folder or zip. With faults there is no
// holding.
func OpenHolding(path string) (h *holding.Holding, faults, warnings fault.List, err error) {
	h, report, err := read(path)
	if err != nil {
		return nil, nil, nil, err
	}
	return h, report.Faults, report.Warnings, nil
}

// OpenChecked is OpenHolding with all that CheckFiles warns of.
func OpenChecked(path string) (h *holding.Holding, faults, warnings fault.List, err error) {
	h, report, err := read(path)
	if err == nil {
		err = warnOfBarren(h, &report)
	}
	if err != nil {
		return nil, nil, nil, err
	}
	return h, report.Faults, report.Warnings, nil
}

// CheckFiles checks a holding's files and reports every fault at once, and what of its
// wants no bed can grow.
func CheckFiles(path string) (*CheckResult, error) {
	h, report, err := read(path)
	if err == nil {
		err = warnOfBarren(h, &report)
	}
	if err != nil {
		return nil, err
	}
	return &CheckResult{OK: report.OK(), Rows: report.Rows, Faults: report.Faults, Warnings: report.Warnings}, nil
}

// CheckHolding checks a holding that lies in no files, as its files would be.
func CheckHolding(h *holding.Holding) (*CheckResult, error) {
	b, err := book()
	if err != nil {
		return nil, err
	}
	var packed bytes.Buffer
	if err := exchange.WriteZip(&packed, h); err != nil {
		return nil, err
	}
	back, report := exchange.CheckZip(bytes.NewReader(packed.Bytes()), int64(packed.Len()), b)
	if err := warnOfBarren(back, &report); err != nil {
		return nil, err
	}
	return &CheckResult{OK: report.OK(), Rows: report.Rows, Faults: report.Faults, Warnings: report.Warnings}, nil
}

// Sample returns a demo holding: "" the main one, "south" the small one in the
// southern hemisphere.
func Sample(name string) (*holding.Holding, error) {
	files, err := sample.Files(name)
	if err != nil {
		return nil, err
	}
	b, err := book()
	if err != nil {
		return nil, err
	}
	h, report := exchange.CheckFolder(files, b)
	if !report.OK() {
		return nil, report.Faults
	}
	return h, nil
}
