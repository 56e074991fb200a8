package exchange

import (
	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/plan"
)

var plansSheet = rowsOf[plan.Plan]{
	table: tableNamed("plans"),
	columns: []column[plan.Plan]{
		text("id", func(p *plan.Plan) *string { return &p.ID }),
		text("name", func(p *plan.Plan) *string { return &p.Name }),
		text("base", func(p *plan.Plan) *string { return &p.Base }),
	},
	list: func(h *holding.Holding) []plan.Plan { return h.Plans },
	put:  func(h *holding.Holding, rows []plan.Plan) { h.Plans = rows },
}

var plantingsSheet = rowsOf[plan.Planting]{
	table: tableNamed("plantings"),
	blank: plan.New("", ""),
	columns: []column[plan.Planting]{
		text("id", func(p *plan.Planting) *string { return &p.ID }),
		text("plan", func(p *plan.Planting) *string { return &p.Plan }),
		text("bed", func(p *plan.Planting) *string { return &p.Bed }),
		text("crop", func(p *plan.Planting) *string { return &p.Crop }),
		text("use", func(p *plan.Planting) *string { return &p.Use }),
		text("variety", func(p *plan.Planting) *string { return &p.Variety }),
		text("method", func(p *plan.Planting) *plan.Method { return &p.Method }),
		date("date", func(p *plan.Planting) *cal.Date { return &p.Date }),
		number("area_m2", func(p *plan.Planting) *float64 { return &p.AreaM2 }),
		text("relation", func(p *plan.Planting) *plan.Relation { return &p.Relation }),
		text("to", func(p *plan.Planting) *string { return &p.To }),
		date("clear_by", func(p *plan.Planting) *cal.Date { return &p.ClearBy }),
		text("store", func(p *plan.Planting) *string { return &p.Store }),
		number("years_old", func(p *plan.Planting) *float64 { return &p.YearsOld }),
		whole("date_within_d", func(p *plan.Planting) *int { return &p.DateWithinD }),
		number("area_within", func(p *plan.Planting) *float64 { return &p.AreaWithin }),
		number("in_row_m", func(p *plan.Planting) *float64 { return &p.InRowM }),
		number("between_row_m", func(p *plan.Planting) *float64 { return &p.BetweenRowM }),
		date("strip_on", func(p *plan.Planting) *cal.Date { return &p.StripOn }),
		number("strip_share", func(p *plan.Planting) *float64 { return &p.StripShare }),
		text("stock", func(p *plan.Planting) *plan.Stock { return &p.Stock }),
		number("seed_plants", func(p *plan.Planting) *float64 { return &p.SeedPlants }),
	},
	list: func(h *holding.Holding) []plan.Planting { return h.Plantings },
	put:  func(h *holding.Holding, rows []plan.Planting) { h.Plantings = rows },
}

var changesSheet = rowsOf[plan.Change]{
	table: tableNamed("changes"),
	columns: []column[plan.Change]{
		text("id", func(c *plan.Change) *string { return &c.ID }),
		text("plan", func(c *plan.Change) *string { return &c.Plan }),
		whole("order", func(c *plan.Change) *int { return &c.Order }),
		text("action", func(c *plan.Change) *string { return &c.Action }),
		text("planting", func(c *plan.Change) *string { return &c.Planting }),
		text("field", func(c *plan.Change) *string { return &c.Field }),
		text("value", func(c *plan.Change) *string { return &c.Value }),
	},
	list: func(h *holding.Holding) []plan.Change { return h.Changes },
	put:  func(h *holding.Holding, rows []plan.Change) { h.Changes = rows },
	tidy: func(c *plan.Change, delimiter rune) {
		if at := plantingsSheet.table.column(c.Field); at >= 0 && plantingsSheet.table.Fields[at].isNumber() {
			c.Value = pointed(c.Value, delimiter)
		}
	},
}

var onhandSheet = rowsOf[plan.Lot]{
	table: tableNamed("onhand"),
	blank: plan.Lot{Since: cal.None},
	columns: []column[plan.Lot]{
		text("id", func(l *plan.Lot) *string { return &l.ID }),
		text("form", func(l *plan.Lot) *string { return &l.Form }),
		text("crop", func(l *plan.Lot) *string { return &l.Crop }),
		text("use", func(l *plan.Lot) *string { return &l.Use }),
		text("variety", func(l *plan.Lot) *string { return &l.Variety }),
		number("amount", func(l *plan.Lot) *float64 { return &l.Amount }),
		text("unit", func(l *plan.Lot) *string { return &l.Unit }),
		date("since", func(l *plan.Lot) *cal.Date { return &l.Since }),
	},
	list: func(h *holding.Holding) []plan.Lot { return h.OnHand },
	put:  func(h *holding.Holding, rows []plan.Lot) { h.OnHand = rows },
}
