package exchange

import (
	"bytes"
	"io"
	"io/fs"
	"path"
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/near"
	"garner/internal/table"
	"garner/internal/words"
)

// Report is what reading a holding found.
type Report struct {
	Faults   fault.List     // with any, there is no holding
	Warnings fault.List     // worth a look
	Rows     map[string]int // rows read, by table, and by file for weather

	numbers map[string][]int // row numbers of the tables as read
}

// At is the place of a cell in the files that were read: the row of a table, counted
// from 0 as in the holding, and a column.
func (r Report) At(table string, row int, column string) fault.Place {
	return (&checker{numbers: r.numbers}).place(table, row, column)
}

// OK tells whether the holding can be used.
func (r Report) OK() bool { return len(r.Faults) == 0 }

// ReadFolder reads a holding from a folder and holds it to the descriptor of
// its files. What needs the crop book is left to Check.
func ReadFolder(fsys fs.FS) (*holding.Holding, Report) { return CheckFolder(fsys, nil) }

// ReadZip is ReadFolder for a zip of the given size [bytes].
func ReadZip(r io.ReaderAt, size int64) (*holding.Holding, Report) { return CheckZip(r, size, nil) }

// CheckFolder reads a holding from a folder and checks all of it at once, as
// Check does, with the places of the files as they are. Nothing can be told of
// crops without a book.
func CheckFolder(fsys fs.FS, book *crop.Book) (*holding.Holding, Report) {
	b, wrong := folder(fsys)
	return readBundle(b, wrong, book)
}

// CheckZip is CheckFolder for a zip of the given size [bytes].
func CheckZip(r io.ReaderAt, size int64, book *crop.Book) (*holding.Holding, Report) {
	b, wrong := unzip(r, size)
	return readBundle(b, wrong, book)
}

func readBundle(b bundle, wrong *fault.Error, book *crop.Book) (*holding.Holding, Report) {
	if wrong != nil {
		return nil, Report{Faults: fault.List{wrong}, Rows: map[string]int{}}
	}
	r := newReading(b)
	for _, s := range sheets {
		r.readSheet(s)
	}
	r.readWeather()
	r.unused()
	return r.finish(book)
}

// finish checks what was read; nothing is told of crops without a book.
func (r *reading) finish(book *crop.Book) (*holding.Holding, Report) {
	r.check.h = r.h
	r.check.indexIDs()
	r.check.checkSchemas()
	if book != nil {
		r.check.checkBook(book)
		r.check.checkSense()
	}
	report := Report{Faults: r.check.found.all(), Warnings: r.check.warnings.all(), Rows: r.rows, numbers: r.check.numbers}
	if !report.OK() {
		return nil, report
	}
	r.h.Observe()
	return r.h, report
}

// reading is a holding while it is read.
type reading struct {
	files   bundle
	used    map[string]bool
	h       *holding.Holding
	check   *checker
	rows    map[string]int
	weather func(kind, name string) weatherRead // reads a file of the bundle
	laid    *laidMemory                         // may be nil
}

func newReading(b bundle) *reading {
	h := &holding.Holding{Today: cal.None}
	r := &reading{files: b, used: map[string]bool{}, h: h, check: newChecker(h, newFindings()), rows: map[string]int{}}
	r.weather = func(kind, name string) weatherRead { return readWeatherFile(kind, name, r.files[name]) }
	return r
}

// fault reports faults of reading itself.
func (r *reading) fault(faults ...*fault.Error) { r.check.found.add(faults...) }

func (r *reading) readSheet(s sheet) {
	schema := s.schema()
	actual, content, ok := r.files.find(schema.file())
	if !ok {
		if schema.Required {
			r.check.unread[schema.Name] = true
			r.fault(fault.New(fault.NotFound, "exchange.table_missing", words.Args{"file": schema.file()}).In(fault.Place{File: schema.file()}))
		}
		return
	}
	r.used[actual] = true
	t, err := table.Read(bytes.NewReader(content), schema.file(), mostBytes)
	if err != nil {
		r.check.unread[schema.Name] = true
		r.fault(asFault(err))
		return
	}
	r.fillSheet(s, t)
}

// fillSheet puts a table's rows into the holding.
func (r *reading) fillSheet(s sheet, t *table.Table) {
	schema := s.schema()
	r.check.numbers[schema.Name] = t.Numbers
	r.rows[schema.Name] = len(t.Rows)
	r.fault(t.Refused...)
	r.check.unread[schema.Name] = len(t.Refused) > 0
	r.checkColumns(schema, t)
	r.fault(s.fill(r.h, t)...)
	if schema.OneRow && len(t.Rows) != 1 {
		r.fault(fault.New(fault.Invalid, "exchange.one_row", words.Args{"rows": len(t.Rows)}).In(fault.Place{File: schema.file()}))
		r.check.unread[schema.Name] = true
	}
}

// checkColumns finds columns that are missing and columns nobody knows.
func (r *reading) checkColumns(s *tableSchema, t *table.Table) {
	for i := range s.Fields {
		f := &s.Fields[i]
		if t.Column(f.Name) >= 0 || !f.required() {
			continue
		}
		if f.Name == s.PrimaryKey {
			r.check.unread[s.Name] = true
		}
		r.check.found.columnMissing(fault.New(fault.NotFound, "exchange.column_missing",
			words.Args{"column": f.Name, "meaning": f.Description}).In(fault.Place{File: t.Name, Row: 1, Column: f.Name}))
	}
	for _, name := range t.Header {
		if !slices.ContainsFunc(s.Fields, func(f field) bool { return t.Column(f.Name) == t.Column(name) }) {
			r.check.warnings.add(unknownColumn(name, s).In(fault.Place{File: t.Name, Row: 1, Column: name}))
		}
	}
}

func unknownColumn(name string, s *tableSchema) *fault.Error {
	if found := near.Names(name, s.names(), 1); len(found) > 0 {
		return fault.New(fault.NotFound, "exchange.column_unknown_near", words.Args{"column": name, "near": found[0]})
	}
	return fault.New(fault.NotFound, "exchange.column_unknown", words.Args{"column": name})
}

// unused warns of files that belong to no table, since a misspelt name of a
// table would otherwise lose it in silence.
func (r *reading) unused() {
	var names []string
	for name := range r.files {
		if !r.used[name] && isTable(name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	var tables []string
	for i := range schemas.Tables {
		tables = append(tables, schemas.Tables[i].file())
	}
	for _, name := range names {
		e := fault.New(fault.NotFound, "exchange.file_unused", nil)
		if found := near.Names(path.Base(name), tables, 1); len(found) > 0 {
			e = fault.New(fault.NotFound, "exchange.file_unused_near", words.Args{"near": found[0]})
		}
		r.check.warnings.add(e.In(fault.Place{File: name}))
	}
}
