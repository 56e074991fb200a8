package exchange

import (
	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/place"
)

var featuresSheet = rowsOf[place.Feature]{
	table: tableNamed("features"),
	columns: []column[place.Feature]{
		text("id", func(f *place.Feature) *string { return &f.ID }),
		text("site", func(f *place.Feature) *string { return &f.Site }),
		text("name", func(f *place.Feature) *string { return &f.Name }),
		text("kind", func(f *place.Feature) *place.FeatureKind { return &f.Kind }),
		number("x_m", func(f *place.Feature) *float64 { return &f.At.XM }),
		number("y_m", func(f *place.Feature) *float64 { return &f.At.YM }),
		number("length_m", func(f *place.Feature) *float64 { return &f.LengthM }),
		number("width_m", func(f *place.Feature) *float64 { return &f.WidthM }),
		number("turn_deg", func(f *place.Feature) *float64 { return &f.At.TurnDeg }),
		number("height_m", func(f *place.Feature) *float64 { return &f.HeightM }),
		number("base_m", func(f *place.Feature) *float64 { return &f.BaseM }),
		number("through_leaf", func(f *place.Feature) *float64 { return &f.ThroughLeaf }),
		number("through_bare", func(f *place.Feature) *float64 { return &f.ThroughBare }),
		monthDay("leaf_on", func(f *place.Feature) *cal.MonthDay { return &f.LeafOn }),
		monthDay("leaf_off", func(f *place.Feature) *cal.MonthDay { return &f.LeafOff }),
	},
	list: func(h *holding.Holding) []place.Feature { return h.Features },
	put:  func(h *holding.Holding, rows []place.Feature) { h.Features = rows },
}

var gearSheet = rowsOf[place.Gear]{
	table: tableNamed("gear"),
	columns: []column[place.Gear]{
		text("id", func(g *place.Gear) *string { return &g.ID }),
		text("kind", func(g *place.Gear) *string { return &g.Kind }),
		text("name", func(g *place.Gear) *string { return &g.Name }),
		number("mesh_mm", func(g *place.Gear) *float64 { return &g.MeshMM }),
		whole("pieces", func(g *place.Gear) *int { return &g.Pieces }),
		number("length_m", func(g *place.Gear) *float64 { return &g.LengthM }),
		number("width_m", func(g *place.Gear) *float64 { return &g.WidthM }),
	},
	list: func(h *holding.Holding) []place.Gear { return h.Gear },
	put:  func(h *holding.Holding, rows []place.Gear) { h.Gear = rows },
}
