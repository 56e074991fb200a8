package exchange

import (
	"sync"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/table"
)

// File is a weather file kept somewhere: its name in the holding, the hash of
// its content, and how to get the content.
type File struct {
	Name, Hash string
	Open       func() ([]byte, error)
}

// Build makes a holding of rows as they are written and of weather files, and
// holds it to the schemas. Weather that the memory knows by its hash is neither
// fetched nor read again.
func Build(rows map[string][][]string, files []File, m *WeatherMemory) (*holding.Holding, Report) {
	r := newReading(bundle{})
	kept := make(map[string]File, len(files))
	for _, f := range files {
		kept[f.Name] = f
		r.files[f.Name] = nil
	}
	r.weather = func(kind, name string) weatherRead { return m.read(kind, kept[name]) }
	r.laid = &m.laid
	for _, s := range sheets {
		r.fillSheet(s, tableOf(s.schema(), rows[s.schema().Name]))
	}
	r.readWeather()
	return r.finish(nil)
}

// tableOf is a table of rows that were never in a file.
func tableOf(s *tableSchema, rows [][]string) *table.Table {
	t := &table.Table{Name: s.file(), Header: s.names(), Rows: rows, Numbers: make([]int, len(rows)), Delimiter: ','}
	for i := range rows {
		t.Numbers[i] = i + 2
	}
	return t
}

// WeatherMemory remembers weather files once read. Forty years of days take far
// longer to read than everything else of a holding, and hardly ever change. It
// may be used from many places at once.
type WeatherMemory struct {
	mu    sync.Mutex
	files map[weatherKey]weatherRead
	laid  laidMemory
}

// mostRemembered bounds the memory: a holding has a few weather files, and more
// are known only when they were exchanged often.
const mostRemembered = 24

type weatherKey struct{ kind, name, hash string }

// NewWeatherMemory returns an empty memory.
func NewWeatherMemory() *WeatherMemory {
	return &WeatherMemory{files: map[weatherKey]weatherRead{}}
}

func (m *WeatherMemory) read(kind string, f File) weatherRead {
	m.mu.Lock()
	defer m.mu.Unlock()
	key := weatherKey{kind, f.Name, f.Hash}
	if known, ok := m.files[key]; ok {
		return known
	}
	content, err := f.Open()
	if err != nil {
		return weatherRead{faults: fault.List{unreadableFile(f.Name, err)}}
	}
	read := readWeatherFile(kind, f.Name, content)
	if len(m.files) >= mostRemembered {
		clear(m.files)
	}
	m.files[key] = read
	return read
}
