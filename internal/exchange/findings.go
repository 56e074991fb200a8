package exchange

import (
	"cmp"
	"slices"

	"garner/internal/fault"
	"garner/internal/words"
)

// most is the number of faults told one by one. A file with more is the wrong
// file, not a file with faults.
const most = 500

// findings gathers faults so that one wrong cell is told once: the first thing
// found wrong with it is the cause, what follows from it is left out.
type findings struct {
	list  fault.List
	seen  map[fault.Place]bool
	whole map[fault.Place]bool // columns missing altogether, with row 0
	more  int
}

func newFindings() *findings {
	return &findings{seen: map[fault.Place]bool{}, whole: map[fault.Place]bool{}}
}

func (f *findings) add(faults ...*fault.Error) {
	for _, e := range faults {
		if e == nil || f.known(e.At) {
			continue
		}
		if e.At.Column != "" {
			f.seen[e.At] = true
		}
		if len(f.list) < most {
			f.list = append(f.list, e)
		} else {
			f.more++
		}
	}
}

// columnMissing tells that a table lacks a column; its cells are then not
// looked at.
func (f *findings) columnMissing(e *fault.Error) {
	f.add(e)
	f.whole[fault.Place{File: e.At.File, Column: e.At.Column}] = true
}

// known tells whether a fault has been found with a cell.
func (f *findings) known(at fault.Place) bool {
	return at.Column != "" && (f.seen[at] || f.whole[fault.Place{File: at.File, Column: at.Column}])
}

// all returns the faults in the order of the tables, rows and columns.
func (f *findings) all() fault.List {
	slices.SortStableFunc(f.list, func(a, b *fault.Error) int {
		return cmp.Or(
			cmp.Compare(fileRank(a.At.File), fileRank(b.At.File)),
			cmp.Compare(a.At.File, b.At.File),
			cmp.Compare(a.At.Row, b.At.Row),
			cmp.Compare(columnRank(a.At), columnRank(b.At)))
	})
	if f.more > 0 {
		f.list = append(f.list, fault.New(fault.Invalid, "exchange.and_more", words.Args{"n": f.more}))
		f.more = 0
	}
	return f.list
}

// fileRank is the place of a file among the tables: the whole holding first,
// the tables in their order, weather files last.
func fileRank(file string) int {
	if file == "" {
		return -1
	}
	for i := range schemas.Tables {
		if schemas.Tables[i].file() == file {
			return i
		}
	}
	return len(schemas.Tables)
}

func columnRank(at fault.Place) int {
	if i := fileRank(at.File); i >= 0 && i < len(schemas.Tables) {
		return schemas.Tables[i].column(at.Column)
	}
	return 0
}
