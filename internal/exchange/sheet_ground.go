package exchange

import (
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/holding"
	"garner/internal/place"
)

var holdingSheet = rowsOf[holding.Holding]{
	table: tableNamed("holding"),
	blank: holding.Holding{Today: cal.None},
	columns: []column[holding.Holding]{
		text("id", func(h *holding.Holding) *string { return &h.ID }),
		text("name", func(h *holding.Holding) *string { return &h.Name }),
		text("zone", func(h *holding.Holding) *string { return &h.Zone }),
		date("today", func(h *holding.Holding) *cal.Date { return &h.Today }),
		number("eaters", func(h *holding.Holding) *float64 { return &h.Eaters }),
		text("plan", func(h *holding.Holding) *string { return &h.Plan }),
	},
	list: func(h *holding.Holding) []holding.Holding { return []holding.Holding{*h} },
	put: func(h *holding.Holding, rows []holding.Holding) {
		r := rows[0]
		h.ID, h.Name, h.Zone, h.Today, h.Eaters, h.Plan = r.ID, r.Name, r.Zone, r.Today, r.Eaters, r.Plan
	},
}

var sitesSheet = rowsOf[place.Site]{
	table: tableNamed("sites"),
	columns: []column[place.Site]{
		text("id", func(s *place.Site) *string { return &s.ID }),
		text("name", func(s *place.Site) *string { return &s.Name }),
		number("latitude_deg", func(s *place.Site) *float64 { return &s.Location.LatitudeDeg }),
		number("longitude_deg", func(s *place.Site) *float64 { return &s.Location.LongitudeDeg }),
		number("elevation_m", func(s *place.Site) *float64 { return &s.Location.ElevationM }),
		text("weather", func(s *place.Site) *string { return &s.Weather }),
	},
	list: func(h *holding.Holding) []place.Site { return h.Sites },
	put:  func(h *holding.Holding, rows []place.Site) { h.Sites = rows },
}

var bedsSheet = rowsOf[place.Bed]{
	table: tableNamed("beds"),
	columns: []column[place.Bed]{
		text("id", func(b *place.Bed) *string { return &b.ID }),
		text("site", func(b *place.Bed) *string { return &b.Site }),
		text("name", func(b *place.Bed) *string { return &b.Name }),
		text("kind", func(b *place.Bed) *string { return &b.Kind }),
		number("length_m", func(b *place.Bed) *float64 { return &b.LengthM }),
		number("width_m", func(b *place.Bed) *float64 { return &b.WidthM }),
		number("light_share", func(b *place.Bed) *float64 { return &b.Light }),
		text("soil", func(b *place.Bed) *string { return &b.Soil }),
		whole("order", func(b *place.Bed) *int { return &b.Order }),
	},
	list: func(h *holding.Holding) []place.Bed { return h.Beds },
	put:  func(h *holding.Holding, rows []place.Bed) { h.Beds = rows },
}

var coversSheet = rowsOf[place.CoverSpell]{
	table: tableNamed("covers"),
	blank: place.CoverSpell{Spell: cover.Spell{On: cal.None, Off: cal.None}},
	columns: []column[place.CoverSpell]{
		text("id", func(c *place.CoverSpell) *string { return &c.ID }),
		text("bed", func(c *place.CoverSpell) *string { return &c.Bed }),
		text("kind", func(c *place.CoverSpell) *cover.Kind { return &c.Kind }),
		date("on", func(c *place.CoverSpell) *cal.Date { return &c.On }),
		date("off", func(c *place.CoverSpell) *cal.Date { return &c.Off }),
	},
	list: func(h *holding.Holding) []place.CoverSpell { return h.Covers },
	put:  func(h *holding.Holding, rows []place.CoverSpell) { h.Covers = rows },
}
