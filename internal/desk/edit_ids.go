package desk

import (
	"cmp"
	"strconv"
	"strings"
	"unicode"

	"garner/internal/cal"
	"garner/internal/plan"
)

// newID makes a readable id for a new row, such as let-27c for the third lettuce
// of 2027. It never changes afterwards, whatever becomes of the row.
func (o *Office) newID(table string, cells map[string]string) (string, error) {
	taken, err := o.takenIDs(table)
	if err != nil {
		return "", err
	}
	return idFor(table, cells, taken), nil
}

// idFor makes an id that is not taken.
func idFor(table string, cells map[string]string, taken map[string]bool) string {
	switch table {
	case "plantings":
		return plan.IDs(taken).Free(slug(cells["crop"]), dayIn(cells["date"]))
	case "wants":
		return plain("w-"+slug(cells["vegetable"]+cells["group"]), taken)
	case "gaps_left":
		return numbered("left-"+cmp.Or(slug(cells["vegetable"]+cells["group"]), "gap"), taken)
	case "purchases":
		return numbered("buy-"+cmp.Or(slug(cells["vegetable"]+cells["group"]), "some"), taken)
	case "members":
		return plain("m-"+cmp.Or(slug(cells["vegetable"]), "member"), taken)
	case "sites", "varieties", "plans", "stores", "weather", "groups", "water_sources", "column_maps", "weather_files":
		if stem := slug(cells["name"]); stem != "" {
			return plain(stem, taken)
		}
	}
	return numbered(stems[table], taken)
}

// stems begin the ids of tables that are simply counted.
var stems = map[string]string{
	"holding": "holding", "sites": "site", "beds": "bed", "features": "feature", "covers": "cover", "gear": "gear", "crops": "own",
	"varieties": "variety", "plans": "plan", "changes": "step", "stores": "store", "batches": "batch", "records": "r", "onhand": "lot", "visits": "visit", "wishes": "wish", "own_jobs": "job", "job_answers": "said", "moisture_readings": "read", "groups": "group", "water_sources": "water",
	"weather": "weather", "weather_readings": "reading", "forecasts": "ahead", "addresses": "address", "sensors": "sensor",
	"weather_files": "file", "column_maps": "map",
}

// takenIDs are the ids of a table, for plantings with those that drafts add.
func (o *Office) takenIDs(table string) (map[string]bool, error) {
	rows, err := o.keeper.Rows(table)
	if err != nil {
		return nil, err
	}
	taken := map[string]bool{}
	for _, r := range rows {
		taken[r.ID] = true
	}
	if table == "plantings" {
		steps, err := o.Rows("changes")
		if err != nil {
			return nil, err
		}
		for _, s := range steps {
			taken[s.Cells["planting"]] = true
		}
	}
	return taken, nil
}

// dayIn is the day in a cell; None when there is none.
func dayIn(cell string) cal.Date {
	day, err := cal.Parse(strings.TrimSpace(cell))
	if err != nil {
		return cal.None
	}
	return day
}

// plain is the stem itself, with a number when it is taken.
func plain(stem string, taken map[string]bool) string {
	if !taken[stem] {
		return stem
	}
	for n := 2; ; n++ {
		if id := stem + "-" + strconv.Itoa(n); !taken[id] {
			return id
		}
	}
}

func numbered(stem string, taken map[string]bool) string {
	for n := 1; ; n++ {
		if id := stem + "-" + strconv.Itoa(n); !taken[id] {
			return id
		}
	}
}

// slug brings a name to small letters, digits and single hyphens.
func slug(name string) string {
	var b strings.Builder
	hyphen := false
	for _, r := range strings.ToLower(name) {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) {
			hyphen = b.Len() > 0
			continue
		}
		if hyphen {
			b.WriteByte('-')
		}
		hyphen = false
		b.WriteRune(r)
	}
	return b.String()
}
