package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/exchange"
	"garner/internal/journal"
	"garner/internal/words"
)

// naming calls rows by what people know them by.
type naming struct{ rows map[string][]KeptRow }

// naming reads all rows as they stand.
func (o *Office) naming() (naming, error) {
	would, err := o.keeper.Would(nil)
	if err != nil {
		return naming{}, err
	}
	return naming{would.Rows}, nil
}

// kindName says what a row of a table is: a bed, a planting.
func kindName(table string) words.Phrase { return words.P("desk.kind_"+table, nil) }

// row names a row: "the leeks in Bed 3", "the bed Long border".
func (n naming) row(table string, row journal.Row) words.Phrase {
	cells := cellsOf(exchange.Columns(table), row)
	switch table {
	case "plantings":
		return words.P("desk.name_planting", words.Args{"crop": cropName(cells["crop"]), "bed": n.name("beds", cells["bed"])})
	case "covers":
		return words.P("desk.name_cover", words.Args{"kind": valueName("covers", "kind", cells["kind"]), "bed": n.name("beds", cells["bed"])})
	case "crops":
		return words.P("desk.name_number", words.Args{"crop": cropName(cells["crop"])})
	case "wants":
		return words.P("desk.name_want", words.Args{"vegetable": n.wanted(cells)})
	case "wishes":
		return n.wish(cells)
	case "moisture_readings":
		return words.P("desk.name_reading", words.Args{"bed": n.name("beds", cells["bed"]), "date": dateIn(cells["date"])})
	case "job_answers":
		return words.P("desk.name_answer", words.Args{"did": valueName("job_answers", "did", cells["did"]), "date": dateIn(cells["date"])})
	case "weather_readings", "forecasts":
		return words.P("desk.name_"+table, words.Args{"site": n.name("sites", cells["site"]), "date": dateIn(cells["date"])})
	case "addresses":
		return words.P("desk.name_addresses", words.Args{"site": n.name("sites", cells["site"])})
	case "members":
		return words.P("desk.name_member", words.Args{"vegetable": cells["vegetable"], "group": n.name("groups", cells["group"])})
	case "visits":
		return words.P("desk.name_visit", words.Args{"date": dateIn(cells["from"])})
	case "gaps_left":
		return words.P("desk.name_gap_left", words.Args{"vegetable": n.wanted(cells)})
	case "purchases":
		return words.P("desk.name_purchase", words.Args{"vegetable": n.wanted(cells), "date": dateIn(cells["from"])})
	case "batches":
		return words.P("desk.name_batch", words.Args{"crop": cropName(cells["crop"]), "store": n.name("stores", cells["store"])})
	case "records":
		return words.P("desk.name_record", words.Args{"what": valueName("records", "what", cells["what"]), "date": dateIn(cells["date"])})
	}
	name := cells["name"]
	if name == "" {
		name = cells["id"]
	}
	return words.P("desk.name_other", words.Args{"kind": kindName(table), "name": name})
}

// wanted is what a want or a gap is of: a vegetable, or a group by its name.
func (n naming) wanted(cells map[string]string) string {
	if cells["group"] != "" {
		return n.name("groups", cells["group"])
	}
	return cells["vegetable"]
}

// name is the name of a row with an id, the id when it has none.
func (n naming) name(table, id string) string {
	columns := exchange.Columns(table)
	at := slices.Index(columns, "name")
	for _, r := range n.rows[table] {
		if r.ID == id && at >= 0 && r.Row[at] != "" {
			return r.Row[at]
		}
	}
	return id
}

// cropName is the plural of a crop of the book, the id when it is in none.
func cropName(id string) string {
	b, err := book()
	if err != nil {
		return id
	}
	c, known := b.Crop(id)
	if !known {
		return id
	}
	if c.Plural == "" {
		return c.Name
	}
	return c.Plural
}

// dateIn reads a date as it is written in the files.
func dateIn(cell string) cal.Date {
	d, err := cal.Parse(cell)
	if err != nil {
		return cal.None
	}
	return d
}
