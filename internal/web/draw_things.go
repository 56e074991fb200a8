package web

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"garner/internal/draw"
	"garner/internal/place"
	"garner/internal/words"
)

// things are all that is drawn on the site, what lies lowest first.
func (s *drawnSite) things() []draw.SiteThing {
	var out, high []draw.SiteThing
	for i := range s.holding.Features {
		f := &s.holding.Features[i]
		switch {
		case f.Site != s.site.ID:
		case f.Tree():
			high = append(high, s.featureThing(f))
		default:
			out = append(out, s.featureThing(f))
		}
	}
	slices.SortStableFunc(out, func(a, b draw.SiteThing) int { return cmp.Compare(rankOf(a.Class), rankOf(b.Class)) })
	for _, b := range s.beds() {
		if b.At.IsSet() {
			out = append(out, s.bedThing(&b))
		}
	}
	return append(out, high...)
}

// rankOf puts paths below what stands.
func rankOf(class string) int {
	if class == "path" {
		return 0
	}
	return 1
}

// beds are the site's beds in walking order.
func (s *drawnSite) beds() []place.Bed {
	var out []place.Bed
	for _, b := range s.holding.Beds {
		if b.Site == s.site.ID {
			out = append(out, b)
		}
	}
	slices.SortStableFunc(out, func(a, b place.Bed) int { return cmp.Or(cmp.Compare(a.Order, b.Order), byNumbers(a.Name, b.Name)) })
	return out
}

func (s *drawnSite) bedThing(b *place.Bed) draw.SiteThing {
	key := "beds/" + b.ID
	shape := b.Shape
	if shape == "" {
		shape = place.Rectangle
	}
	t := draw.SiteThing{Class: "bed", Path: s.at.picking(key).path(), Chosen: key == s.at.pick, At: b.At, LengthM: b.LengthM, WidthM: b.WidthM,
		Corners: b.Corners(), Names: []string{b.Name}, Size: []string{s.size(b.LengthM, b.WidthM)},
		Label: s.say("web.draw_bed_label", words.Args{"bed": b.Name, "size": s.size(b.LengthM, b.WidthM), "place": s.spot(b.At)})}
	t.Data = append(s.data(key, b.At, b.LengthM, b.WidthM), "data-shape", string(shape), "data-outline", b.Outline)
	return t
}

func (s *drawnSite) featureThing(f *place.Feature) draw.SiteThing {
	key := "features/" + f.ID
	kind := s.named("desk.value_features.kind.", string(f.Kind))
	t := draw.SiteThing{Class: classOf(f.Kind), Path: s.at.picking(key).path(), Chosen: key == s.at.pick, At: f.At, LengthM: f.LengthM, WidthM: f.WidthM,
		Corners: f.Corners(), Trunk: f.Tree(), Names: []string{f.Name},
		Label: s.say("web.draw_feature_label", words.Args{"feature": f.Name, "kind": kind, "size": s.size(f.LengthM, f.WidthM), "place": s.spot(f.At)})}
	if f.HeightM > 0 {
		t.Names = []string{s.say("web.draw_with_height", words.Args{"name": f.Name, "height": s.plain(f.HeightM)}), f.Name}
		t.Label = s.say("web.draw_high_label", words.Args{"feature": f.Name, "kind": kind, "size": s.size(f.LengthM, f.WidthM), "height": s.plain(f.HeightM), "place": s.spot(f.At)})
	}
	shape := place.Rectangle
	if f.Tree() {
		shape = place.Round
	}
	t.Data = append(s.data(key, f.At, f.LengthM, f.WidthM), "data-shape", string(shape))
	return t
}

// classOf is the look of a feature.
func classOf(k place.FeatureKind) string {
	switch k {
	case place.DeciduousTree:
		return "deciduous"
	case place.EvergreenTree:
		return "evergreen"
	}
	return string(k)
}

// data is what the script reads of a thing.
func (s *drawnSite) data(key string, at place.Spot, length, width float64) []string {
	f := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	return []string{"data-thing", key, "data-base", strconv.FormatInt(s.versions[key], 10), "data-x", f(at.XM), "data-y", f(at.YM),
		"data-turn", f(at.TurnDeg), "data-length", f(length), "data-width", f(width), "data-save", s.savePath(key)}
}

// savePath is where the changes of a thing are sent; it is the chosen one then.
func (s *drawnSite) savePath(key string) string {
	return drawPath + "/" + key + s.at.picking(key).query()
}

// planPath is where the size of the plan is sent; what is chosen stays so.
func (s *drawnSite) planPath() string {
	return drawPath + "/sites/" + pathEscaped(s.site.ID) + s.at.query()
}

func (s *drawnSite) options() draw.SiteOptions {
	return draw.SiteOptions{WidthPX: drawnWidth, HeightPX: drawnHeight, Zoom: float64(s.at.zoom),
		Label: s.say("web.draw_label", words.Args{"site": s.site.Name}), North: s.say("web.draw_north", nil),
		Metres: func(m float64) string { return s.say("web.draw_metres", words.Args{"m": s.plain(m)}) },
		// The script puts figures where # stands.
		Data: []string{"aria-describedby", "draw-keys", "data-size", s.say("web.draw_size", words.Args{"length": "#", "width": "#"}),
			"data-spot", s.say("web.draw_spot", words.Args{"x": "#", "y": "#"}), "data-turned", s.say("web.draw_turned", words.Args{"turn": "#"})}}
}

func (s *drawnSite) plain(v float64) string { return s.words.Format().Plain(math.Round(v*100) / 100) }

func (s *drawnSite) size(length, width float64) string {
	return s.say("web.draw_size", words.Args{"length": s.plain(length), "width": s.plain(width)})
}

func (s *drawnSite) spot(at place.Spot) string {
	if !at.IsSet() {
		return s.say("web.draw_not_drawn", nil)
	}
	return s.say("web.draw_spot", words.Args{"x": s.plain(at.XM), "y": s.plain(at.YM)})
}

// bearings are the directions of the compass, clockwise from north.
var bearings = []string{"n", "ne", "e", "se", "s", "sw", "w", "nw"}

// bearing names a direction: by its name where it has one, else in degrees.
func (v *visit) bearing(degrees float64) string {
	at := math.Mod(math.Mod(degrees, 360)+360, 360)
	if math.Mod(at, 45) == 0 {
		return v.say("web.draw_bearing_"+bearings[int(at/45)%8], nil)
	}
	return v.say("web.draw_bearing", words.Args{"degrees": v.words.Format().Plain(at)})
}

// figures tell everything in words and figures, as the drawing does by lines.
func (s *drawnSite) figures(b *drawBody) {
	turn := func(at place.Spot) string {
		if at.TurnDeg == 0 {
			return ""
		}
		return s.say("web.draw_turned", words.Args{"turn": s.plain(at.TurnDeg)})
	}
	for _, bed := range s.beds() {
		b.Beds = append(b.Beds, drawnLine{Name: bed.Name, Path: s.at.picking("beds/" + bed.ID).path(), Kind: s.named("desk.value_beds.kind.", bed.Kind),
			Size: s.size(bed.LengthM, bed.WidthM), Place: s.spot(bed.At), Turn: turn(bed.At), AreaM2: bed.AreaM2()})
		b.AreaM2 += bed.AreaM2()
	}
	for _, f := range s.holding.Features {
		if f.Site == s.site.ID {
			b.Stands = append(b.Stands, drawnLine{Name: f.Name, Path: s.at.picking("features/" + f.ID).path(),
				Kind: s.named("desk.value_features.kind.", string(f.Kind)), Size: s.size(f.LengthM, f.WidthM), Place: s.spot(f.At), Turn: turn(f.At)})
		}
	}
}
