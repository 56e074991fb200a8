// Command calibrate fits the free numbers of the crop book and writes them to
// the files the book reads them from. `calibrate` fits the yields of the
// reference plantings (`make calibrate`); `calibrate windows` first fits what
// classes and groups share to published planting dates (`make calibrate-windows`).
package main

import (
	"fmt"
	"io/fs"
	"os"
	"strings"

	"garner/internal/calibrate"
	"garner/internal/crop"
)

const (
	dataFolder = "internal/crop/data"
	fittedFile = "fitted.csv"
)

// unfitted is the book's folder without the numbers fitted last time.
type unfitted struct{ fs.FS }

func (u unfitted) Open(name string) (fs.File, error) {
	if name == fittedFile {
		return nil, fs.ErrNotExist
	}
	return u.FS.Open(name)
}

func main() {
	if err := chosen(); err != nil {
		fmt.Fprintln(os.Stderr, "calibrate:", err)
		os.Exit(1)
	}
}

// chosen runs the fit that was asked for.
func chosen() error {
	if len(os.Args) > 1 && os.Args[1] == "windows" {
		if err := windows(); err != nil {
			return err
		}
	}
	return run()
}

func run() error {
	book, faults := crop.LoadFrom(unfitted{os.DirFS(dataFolder)})
	if len(faults) > 0 {
		return faults
	}
	fits, err := calibrate.Fit(book)
	if err != nil {
		return err
	}
	var b strings.Builder
	b.WriteString("crop,use,parameter,value,unit,source,where,mark,note\n")
	for _, f := range fits {
		b.WriteString(f.Line() + "\n")
	}
	return os.WriteFile(dataFolder+"/"+fittedFile, []byte(b.String()), 0o644)
}
