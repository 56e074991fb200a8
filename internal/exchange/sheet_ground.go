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
		number("kitchen_h_per_week", func(h *holding.Holding) *float64 { return &h.KitchenH }),
		number("can_l", func(h *holding.Holding) *float64 { return &h.CanL }),
		number("feed_ml_l", func(h *holding.Holding) *float64 { return &h.FeedMLL }),
		number("feed_g_m2", func(h *holding.Holding) *float64 { return &h.FeedGM2 }),
	},
	list: func(h *holding.Holding) []holding.Holding { return []holding.Holding{*h} },
	put: func(h *holding.Holding, rows []holding.Holding) {
		r := rows[0]
		h.ID, h.Name, h.Zone, h.Today, h.Eaters, h.Plan = r.ID, r.Name, r.Zone, r.Today, r.Eaters, r.Plan
		h.KitchenH, h.CanL, h.FeedMLL, h.FeedGM2 = r.KitchenH, r.CanL, r.FeedMLL, r.FeedGM2
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
		number("plan_width_m", func(s *place.Site) *float64 { return &s.PlanWidthM }),
		number("plan_depth_m", func(s *place.Site) *float64 { return &s.PlanDepthM }),
		number("up_deg", func(s *place.Site) *float64 { return &s.UpDeg }),
		text("not_allowed", func(s *place.Site) *string { return &s.NotAllowed }),
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
		text("shape", func(b *place.Bed) *place.Shape { return &b.Shape }),
		number("x_m", func(b *place.Bed) *float64 { return &b.At.XM }),
		number("y_m", func(b *place.Bed) *float64 { return &b.At.YM }),
		number("turn_deg", func(b *place.Bed) *float64 { return &b.At.TurnDeg }),
		text("outline", func(b *place.Bed) *string { return &b.Outline }),
		text("texture", func(b *place.Bed) *string { return &b.Texture }),
		number("ph", func(b *place.Bed) *float64 { return &b.PH }),
		text("rotation", func(b *place.Bed) *string { return &b.Rotation }),
		whole("turn_round_d", func(b *place.Bed) *int { return &b.TurnRoundD }),
		text("water", func(b *place.Bed) *string { return &b.Water }),
		number("volume_l", func(b *place.Bed) *float64 { return &b.VolumeL }),
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
		text("sides", func(c *place.CoverSpell) *cover.Sides { return &c.Sides }),
		number("mesh_mm", func(c *place.CoverSpell) *float64 { return &c.MeshMM }),
	},
	list: func(h *holding.Holding) []place.CoverSpell { return h.Covers },
	put:  func(h *holding.Holding, rows []place.CoverSpell) { h.Covers = rows },
}
