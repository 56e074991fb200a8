package desk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
)

// WeatherFilesView is the weather on record.
type WeatherFilesView struct {
	Sites []FiledSite
	Maps  []holding.ColumnMap
}

// FiledSite is the weather of a site, or of several that share it.
type FiledSite struct {
	Sites   []string // names of those that share it
	Source  string   // of figures beside the files; blank: none
	Normals bool     // monthly normals beside the files
	Record  *WeatherLine
	Files   []WeatherLine
	All     *WeatherLine // the days of everything
}

// WeatherLine is a record of days, or a typical year.
type WeatherLine struct {
	ID, Name    string
	Format      string
	Station     string
	Typical     bool
	First, Last cal.Date
	Days        int
	Share       float64 // of the days of its period that are on file
	HourDays    int     // days that count by their hours alone
	LeftOut     int
	Added       cal.Date
}

// WeatherFiles lists what weather is on record.
func (o *Office) WeatherFiles() (*WeatherFilesView, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	v := &WeatherFilesView{Maps: h.Maps}
	at := map[string]int{}
	for _, s := range h.Sites {
		if k, shared := at[s.Weather]; shared && s.Weather != "" {
			v.Sites[k].Sites = append(v.Sites[k].Sites, s.Name)
			continue
		}
		at[s.Weather] = len(v.Sites)
		v.Sites = append(v.Sites, weatherOf(h, s.Name, s.Weather))
	}
	return v, nil
}

func weatherOf(h *holding.Holding, site, source string) FiledSite {
	out := FiledSite{Sites: []string{site}}
	for i := range h.Weather {
		w := &h.Weather[i]
		if w.ID != source {
			continue
		}
		own := w.Own()
		out.Source, out.Normals = w.Source, own.Normals != nil
		out.Record, out.All = lineOfDays(own.Record), lineOfDays(w.Record)
	}
	for i := range h.Files {
		f := &h.Files[i]
		if f.Weather != source {
			continue
		}
		line := lineOfDays(f.Record)
		if line == nil {
			line = &WeatherLine{Typical: true}
		}
		line.ID, line.Name, line.Format, line.Station, line.LeftOut, line.Added = f.ID, f.Name, f.Format, f.Station, f.LeftOut, f.Added
		line.HourDays = hourDays(f.Hours)
		out.Files = append(out.Files, *line)
	}
	return out
}

// lineOfDays is the period and the coverage of a record; nil where it has no day.
func lineOfDays(r *climate.Record) *WeatherLine {
	if r == nil || len(r.Days) == 0 {
		return nil
	}
	first, last := r.Days[0].Date, r.Days[len(r.Days)-1].Date
	return &WeatherLine{First: first, Last: last, Days: len(r.Days), Share: float64(len(r.Days)) / float64(last-first+1)}
}
