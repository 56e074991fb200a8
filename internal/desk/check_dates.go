package desk

import (
	"os"
	"runtime"

	"garner/internal/printed"
)

// DatesResult holds the windows against a folder of printed planting dates.
type DatesResult struct {
	WithinDays int             `json:"within_days"` // as far off still agrees
	Tallies    printed.Tallies `json:"tallies"`
	Rows       []DateRow       `json:"rows"`
}

// DatesTally sums up the dates of one kind.
type DatesTally = printed.Tally

// DateRow is one printed date and how far the nearest window lies from it.
type DateRow struct {
	Region    string `json:"region"`
	Crop      string `json:"crop"`
	Group     string `json:"group"`
	Published string `json:"published"`
	Source    string `json:"source"`
	End       string `json:"end"`
	Counted   bool   `json:"counted"`
	OffDays   *int   `json:"off_days"` // null: no window
	Agrees    bool   `json:"agrees"`
}

// CheckDates computes the windows of every date of a folder at the pace of
// garner window.
func CheckDates(folder string) (*DatesResult, error) {
	b, err := book()
	if err != nil {
		return nil, err
	}
	dates, err := printed.Read(os.DirFS(folder))
	if err != nil {
		return nil, err
	}
	rows, err := printed.Windows(dates, b, printed.FullPace, runtime.GOMAXPROCS(0))
	if err != nil {
		return nil, err
	}
	r := &DatesResult{WithinDays: printed.Within, Tallies: printed.TalliesOf(rows), Rows: []DateRow{}}
	for i := range rows {
		r.Rows = append(r.Rows, dateRow(&rows[i]))
	}
	return r, nil
}

func dateRow(r *printed.Row) DateRow {
	out := DateRow{Region: r.Date.Region, Crop: r.Date.Crop, Group: r.Group, Published: r.Date.Text,
		Source: r.Date.Source, End: r.End, Counted: r.Counted, Agrees: r.Agrees()}
	if r.Answer {
		out.OffDays = &r.Off
	}
	return out
}
