// Command calibrate fits the free numbers of the crop book and writes them to
// the file the book reads them from. It is run by `make calibrate`.
package main

import (
	"fmt"
	"os"
	"strings"

	"garner/internal/calibrate"
	"garner/internal/crop"
)

const fittedFile = "internal/crop/data/fitted.csv"

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "calibrate:", err)
		os.Exit(1)
	}
}

func run() error {
	book, err := crop.Load()
	if err != nil {
		return err
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
	return os.WriteFile(fittedFile, []byte(b.String()), 0o644)
}
