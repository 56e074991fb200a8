package exchange

import (
	"garner/internal/crop"
	"garner/internal/holding"
)

var cropsSheet = rowsOf[crop.Override]{
	table: tableNamed("crops"),
	columns: []column[crop.Override]{
		text("id", func(o *crop.Override) *string { return &o.ID }),
		text("crop", func(o *crop.Override) *string { return &o.Crop }),
		text("use", func(o *crop.Override) *string { return &o.Use }),
		text("parameter", func(o *crop.Override) *string { return &o.Parameter }),
		text("value", func(o *crop.Override) *string { return &o.Value }),
		text("unit", func(o *crop.Override) *string { return &o.Unit }),
		text("source", func(o *crop.Override) *string { return &o.Source }),
	},
	list: func(h *holding.Holding) []crop.Override { return h.Overrides },
	put:  func(h *holding.Holding, rows []crop.Override) { h.Overrides = rows },
	tidy: func(o *crop.Override, delimiter rune) { o.Value = pointed(o.Value, delimiter) },
}

var varietiesSheet = rowsOf[crop.Variety]{
	table: tableNamed("varieties"),
	columns: []column[crop.Variety]{
		text("id", func(v *crop.Variety) *string { return &v.ID }),
		text("name", func(v *crop.Variety) *string { return &v.Name }),
		text("crop", func(v *crop.Variety) *string { return &v.Crop }),
		text("use", func(v *crop.Variety) *string { return &v.Use }),
		number("days_offset", func(v *crop.Variety) *float64 { return &v.DaysOffset }),
		number("yield_factor", func(v *crop.Variety) *float64 { return &v.YieldFactor }),
		number("kill_shift_c", func(v *crop.Variety) *float64 { return &v.KillShiftC }),
		number("bolt_factor", func(v *crop.Variety) *float64 { return &v.BoltFactor }),
		number("size_factor", func(v *crop.Variety) *float64 { return &v.SizeFactor }),
	},
	list: func(h *holding.Holding) []crop.Variety { return h.Varieties },
	put:  func(h *holding.Holding, rows []crop.Variety) { h.Varieties = rows },
}
