package holding

import (
	"garner/internal/cal"
	"garner/internal/climate"
)

// WeatherFile is what was taken in from weather files of one station.
type WeatherFile struct {
	ID      string
	Weather string // the weather source it belongs to
	Name    string // of the file as it came
	Format  string // as station.Format
	Station string // as the file tells it; may be blank
	Added   cal.Date
	LeftOut int    // rows and values that were left out
	Days    string // name inside the holding of the file of days; blank: none
	Typical string // of the file of a typical year's normals; blank: none
	Hourly  string // of the file of hours; blank: none

	Record  *climate.Record
	Normals *climate.Normals
	Hours   []climate.Hour // by the site's clock, in order; none where the file tells days alone
}

// ColumnMap says what the columns of a table of days are; the fields are those
// of station.ColumnMap.
type ColumnMap struct {
	ID, Name  string
	Headings  string
	Date      string
	TMin      string
	TMax      string
	Rain      string
	Sun       string
	Radiation string
	Humidity  string
	Dew       string
	Wind      string

	DateOrder     string
	TempUnit      string
	RainUnit      string
	SunUnit       string
	RadiationUnit string
	WindUnit      string
	WindHeightM   float64
	Missing       string
}
