package exchange

import (
	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/record"
)

var sourcesSheet = rowsOf[place.WaterSource]{
	table: tableNamed("water_sources"),
	columns: []column[place.WaterSource]{
		text("id", func(w *place.WaterSource) *string { return &w.ID }),
		text("site", func(w *place.WaterSource) *string { return &w.Site }),
		text("name", func(w *place.WaterSource) *string { return &w.Name }),
		text("kind", func(w *place.WaterSource) *place.SourceKind { return &w.Kind }),
		number("holds_l", func(w *place.WaterSource) *float64 { return &w.HoldsL }),
		number("roof_m2", func(w *place.WaterSource) *float64 { return &w.RoofM2 }),
		text("covering", func(w *place.WaterSource) *string { return &w.Covering }),
		number("filter_loss", func(w *place.WaterSource) *float64 { return &w.FilterLoss }),
		monthDay("shut_from", func(w *place.WaterSource) *cal.MonthDay { return &w.ShutFrom }),
		monthDay("shut_to", func(w *place.WaterSource) *cal.MonthDay { return &w.ShutTo }),
		number("l_per_week", func(w *place.WaterSource) *float64 { return &w.LPerWeek }),
	},
	list: func(h *holding.Holding) []place.WaterSource { return h.Sources },
	put:  func(h *holding.Holding, rows []place.WaterSource) { h.Sources = rows },
}

var readingsSheet = rowsOf[record.Reading]{
	table: tableNamed("moisture_readings"),
	blank: record.Reading{Date: cal.None},
	columns: []column[record.Reading]{
		text("id", func(r *record.Reading) *string { return &r.ID }),
		date("date", func(r *record.Reading) *cal.Date { return &r.Date }),
		text("bed", func(r *record.Reading) *string { return &r.Bed }),
		text("way", func(r *record.Reading) *record.ReadWay { return &r.Way }),
		number("value", func(r *record.Reading) *float64 { return &r.Value }),
		text("felt", func(r *record.Reading) *string { return &r.Felt }),
		text("sure", func(r *record.Reading) *string { return &r.Sure }),
		text("note", func(r *record.Reading) *string { return &r.Note }),
	},
	list: func(h *holding.Holding) []record.Reading { return h.Readings },
	put:  func(h *holding.Holding, rows []record.Reading) { h.Readings = rows },
}
