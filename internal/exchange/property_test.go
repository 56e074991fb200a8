package exchange

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/observed"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/sun"
)

// draw is one random holding being made. Its ids are known to its references,
// its texts are anything.
type draw struct{ *rapid.T }

func (d draw) text(name string) string {
	return rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"1,5", "=2+3", `"`, "a;b", "x\r\ny", "\uFEFF", "sep=;", "é\t", "NaN", "\x01"})).Draw(d.T, name)
}

func (d draw) filled(name string) string { return "x" + d.text(name) }

func (d draw) number(name string, low, high float64) float64 {
	return rapid.Float64Range(low, high).Draw(d.T, name)
}

func (d draw) date(name string) cal.Date {
	return cal.Date(rapid.IntRange(-20000, 80000).Draw(d.T, name))
}

func (d draw) maybe(name string) bool { return rapid.Bool().Draw(d.T, name) }

func (d draw) dateOrNone(name string) cal.Date {
	if d.maybe(name + "?") {
		return d.date(name)
	}
	return cal.None
}

func (d draw) of(table, column string) string {
	s := tableNamed(table)
	return rapid.SampledFrom(s.Fields[s.column(column)].Constraints.Enum).Draw(d.T, column)
}

// one names one of n rows of a table, or none.
func (d draw) one(prefix string, n int) string {
	if i := rapid.IntRange(-1, n-1).Draw(d.T, prefix); i >= 0 {
		return id(prefix, i)
	}
	return ""
}

func (d draw) sure(prefix string, n int) string {
	return id(prefix, rapid.IntRange(0, n-1).Draw(d.T, prefix))
}

func id(prefix string, i int) string { return fmt.Sprintf("%s-%d", prefix, i) }

func (d draw) count(name string) int { return rapid.IntRange(1, 4).Draw(d.T, name) }

func rows[T any](n int, make func(i int) T) []T {
	var out []T
	for i := range n {
		out = append(out, make(i))
	}
	return out
}

func randomHolding(t *rapid.T) *holding.Holding {
	d := draw{t}
	sites, beds, plans, stores, varieties, sources := d.count("sites"), d.count("beds"), d.count("plans"), d.count("stores"), d.count("varieties"), d.count("sources")
	h := &holding.Holding{ID: "h", Name: d.filled("name"), Zone: d.filled("zone"), Today: d.dateOrNone("today"), Eaters: d.number("eaters", 0.5, 20), KitchenH: d.number("kitchen", 0.1, 100), CanL: d.number("can", 0.5, 100), FeedMLL: d.number("feed", 0.1, 200), FeedGM2: d.number("dry feed", 1, 500), Plan: d.one("plan", plans)}
	h.Sites = rows(sites, func(i int) place.Site {
		s := place.Site{ID: id("site", i), Name: d.filled("name"), Weather: d.one("weather", sources),
			Location: sun.Location{LatitudeDeg: d.number("latitude", -66, 66), LongitudeDeg: d.number("longitude", -180, 180), ElevationM: d.number("elevation", -100, 3000)}}
		if d.maybe("plan drawn?") {
			s.PlanWidthM, s.PlanDepthM, s.UpDeg = d.number("plan width", 1, 2000), d.number("plan depth", 1, 2000), d.number("up", 0, 360)
		}
		return s
	})
	h.Beds = rows(beds, func(i int) place.Bed {
		return place.Bed{ID: id("bed", i), Site: d.sure("site", sites), Name: d.filled("name"), Kind: d.of("beds", "kind"), Soil: d.of("beds", "soil"),
			LengthM: d.number("length", 0.1, 100), WidthM: d.number("width", 0.1, 100), Light: d.number("light", 0, 1), Order: rapid.IntRange(0, 1000).Draw(t, "order"),
			Shape: place.Shape(d.of("beds", "shape")), At: place.Spot{XM: d.number("x", 0.1, 30), YM: d.number("y", 0.1, 30), TurnDeg: d.number("turn", -180, 180)},
			Outline: "0 0; 0.1 0; 0.1 0.1", Texture: d.of("beds", "texture"), PH: d.number("ph", 4, 9), Rotation: d.of("beds", "rotation"), TurnRoundD: rapid.IntRange(0, 30).Draw(t, "turn-round"), Water: d.one("water", 2)}
	})
	h.Sources = rows(2, func(i int) place.WaterSource {
		return place.WaterSource{ID: id("water", i), Site: d.sure("site", sites), Name: d.filled("name"), Kind: place.SourceKind(d.of("water_sources", "kind")), HoldsL: d.number("holds", 1, 5000), RoofM2: d.number("roof", 0.1, 200),
			Covering: d.of("water_sources", "covering"), FilterLoss: d.number("loss", 0.001, 0.9), ShutFrom: cal.MonthDay{Month: 11, Day: 3}, ShutTo: cal.MonthDay{Month: 3, Day: 30}, LPerWeek: d.number("week", 1, 1000)}
	})
	h.Readings = rows(d.count("readings"), func(i int) record.Reading {
		return record.Reading{ID: id("read", i), Date: d.date("date"), Bed: d.sure("bed", beds), Way: record.ReadWay(d.of("moisture_readings", "way")), Value: d.number("moisture", 0.1, 1500), Felt: d.of("moisture_readings", "felt"),
			Sure: d.of("moisture_readings", "sure"), Note: d.text("note")}
	})
	h.Covers = rows(d.count("covers"), func(i int) place.CoverSpell {
		return place.CoverSpell{ID: id("cover", i), Bed: d.sure("bed", beds), Spell: cover.Spell{Kind: cover.Kind(d.of("covers", "kind")), On: d.date("on"), Off: d.dateOrNone("off"), Sides: cover.Sides(d.of("covers", "sides")), MeshMM: d.number("mesh", 0.1, 20)}}
	})
	h.Overrides = rows(d.count("overrides"), func(i int) crop.Override {
		return crop.Override{ID: id("own", i), Crop: d.filled("crop"), Use: d.text("use"), Parameter: d.filled("parameter"), Value: d.filled("value"), Unit: d.filled("unit"), Source: d.text("source")}
	})
	h.Varieties = rows(varieties, func(i int) crop.Variety {
		return crop.Variety{ID: id("variety", i), Name: d.filled("name"), Crop: d.filled("crop"), Use: d.text("use"), DaysOffset: d.number("days", -60, 60),
			YieldFactor: d.number("yield", 0.1, 5), KillShiftC: d.number("kill", -20, 20), BoltFactor: d.number("bolt", 0.1, 10), SizeFactor: d.number("size", 0.1, 10)}
	})
	h.Features = rows(d.count("features"), func(i int) place.Feature {
		return place.Feature{ID: id("feature", i), Site: d.sure("site", sites), Name: d.filled("name"), Kind: place.FeatureKind(d.of("features", "kind")),
			At: place.Spot{XM: d.number("x", -10, 30), YM: d.number("y", -10, 30), TurnDeg: d.number("turn", -180, 180)}, LengthM: d.number("length", 0.1, 30), WidthM: d.number("width", 0.1, 30),
			HeightM: d.number("height", 2, 20), BaseM: d.number("base", 0, 1), ThroughLeaf: d.number("leaf", 0.01, 1), ThroughBare: d.number("bare", 0.01, 1),
			LeafOn: cal.MonthDayOf(rapid.IntRange(1, 365).Draw(t, "on")), LeafOff: cal.MonthDayOf(rapid.IntRange(1, 365).Draw(t, "off"))}
	})
	h.Gear = rows(d.count("gear"), func(i int) place.Gear {
		return place.Gear{ID: id("gear", i), Kind: d.of("gear", "kind"), Name: d.text("name"), MeshMM: d.number("mesh", 0.1, 20), Pieces: rapid.IntRange(0, 9).Draw(t, "pieces"), LengthM: d.number("length", 0.1, 100), WidthM: d.number("width", 0.1, 10)}
	})
	h.OnHand = rows(d.count("lots"), func(i int) plan.Lot {
		return plan.Lot{ID: id("lot", i), Form: d.of("onhand", "form"), Crop: d.filled("crop"), Use: d.text("use"), Variety: d.one("variety", varieties), Amount: d.number("amount", 0.1, 100), Unit: d.of("onhand", "unit"), Since: d.dateOrNone("since")}
	})
	d.plans(h, plans, beds, varieties, stores)
	h.Wishes = []plan.Wish{{ID: "wish-0", Kind: plan.Forbid, Crop: d.filled("crop"), Bed: d.one("bed", beds)}, {ID: "wish-1", Kind: plan.Hours, Hours: d.number("hours", 0, 168)}}
	h.OwnJobs = rows(d.count("own jobs"), func(i int) plan.OwnJob {
		return plan.OwnJob{ID: id("job", i), Name: d.filled("name"), Site: d.one("site", sites), Bed: d.one("bed", beds), Date: d.date("date"), EveryD: rapid.IntRange(0, 3660).Draw(t, "every"), Until: d.dateOrNone("until"), Minutes: d.number("minutes", 1, 1440), Who: d.of("own_jobs", "who")}
	})
	h.Answers = rows(d.count("answers"), func(i int) record.Answer {
		return record.Answer{ID: id("said", i), Date: d.date("date"), Job: "hoe:h1:3", Did: record.Did(d.of("job_answers", "did")), Until: d.dateOrNone("until"), Minutes: d.number("minutes", 1, 1440), Note: d.text("note")}
	})
	d.larder(h, stores, beds)
	h.Weather = rows(sources, func(i int) holding.WeatherSource {
		return holding.WeatherSource{ID: id("weather", i), Name: d.filled("name"), Source: d.filled("source"), Record: d.days("record"), Forecast: d.days("forecast"), Normals: d.normals()}
	})
	d.weatherLive(h, sites, beds)
	if sources > 0 {
		h.Files = rows(d.count("files"), func(i int) holding.WeatherFile {
			return holding.WeatherFile{ID: id("file", i), Weather: d.sure("weather", sources), Name: d.filled("name"), Format: d.of("weather_files", "format"),
				Station: d.text("station"), Added: d.date("added"), LeftOut: rapid.IntRange(0, 9).Draw(t, "left out"), Record: d.days("days"), Normals: d.normals()}
		})
	}
	h.Maps = rows(d.count("maps"), func(i int) holding.ColumnMap {
		return holding.ColumnMap{ID: id("map", i), Name: d.filled("name"), Headings: d.filled("headings"), Date: d.filled("date"), DateOrder: d.of("column_maps", "date_order"),
			TMin: d.text("tmin"), TempUnit: d.of("column_maps", "temp_unit"), RainUnit: d.of("column_maps", "rain_unit"), SunUnit: d.of("column_maps", "sun_unit"),
			RadiationUnit: d.of("column_maps", "radiation_unit"), WindUnit: d.of("column_maps", "wind_unit"), WindHeightM: d.number("height", 0.5, 200), Missing: d.text("missing")}
	})
	return h
}

func (d draw) plans(h *holding.Holding, plans, beds, varieties, stores int) {
	h.Plans = rows(plans, func(i int) plan.Plan {
		return plan.Plan{ID: id("plan", i), Name: d.filled("name"), Base: d.one("plan", i)}
	})
	h.Plantings = rows(d.count("plantings"), func(i int) plan.Planting {
		p := plan.Planting{ID: id("planting", i), Plan: d.sure("plan", plans), Bed: d.sure("bed", beds), Crop: d.filled("crop"), Use: d.text("use"),
			Variety: d.one("variety", varieties), Date: d.date("date"), AreaM2: d.number("area", 0.01, 100), ClearBy: d.dateOrNone("clear"),
			Store: d.one("store", stores), YearsOld: d.number("years", 0, 50),
			DateWithinD: int(d.number("within", 0, 60)), AreaWithin: d.number("share", 0, 0.9),
			InRowM: d.number("in row", 0.01, 2), BetweenRowM: d.number("rows", 0.01, 2), StripOn: cal.None}
		if d.maybe("strip?") {
			p.StripOn, p.StripShare = d.date("strip"), d.number("stripped", 0.01, 0.9)
		}
		if d.maybe("stock?") {
			p.Stock, p.SeedPlants = plan.OwnStock, d.number("seed plants", 0.1, 50)
		}
		if d.maybe("method?") {
			p.Method = plan.Method(d.of("plantings", "method"))
		}
		if d.maybe("relation?") {
			p.Relation, p.To = plan.Relation(d.of("plantings", "relation")), d.filled("to")
		}
		return p
	})
	h.Changes = rows(d.count("changes"), func(i int) plan.Change {
		return plan.Change{ID: id("change", i), Plan: d.sure("plan", plans), Order: i, Action: d.of("changes", "action"), Planting: id("planting", i),
			Field: rapid.SampledFrom(append(plan.Fields(), "")).Draw(d.T, "field"), Value: d.text("value")}
	})
}

func (d draw) larder(h *holding.Holding, stores, beds int) {
	h.Wants = rows(d.count("wants"), func(i int) larder.Want {
		w := larder.Want{ID: id("want", i), Vegetable: d.filled("vegetable"), KgPerWeek: d.number("kg", 0, 100),
			Importance: larder.Importance(d.of("wants", "importance")), BuyKgPerWeek: d.number("buy", 0.001, 100)}
		if d.maybe("group?") {
			w.Vegetable, w.Group = "", d.sure("group", 2)
		}
		if d.maybe("portions?") {
			w.KgPerWeek, w.PortionsPerEater = 0, d.number("portions", 0.05, 100)
		}
		if d.maybe("season?") {
			w.From, w.To = cal.MonthDayOf(rapid.IntRange(1, 365).Draw(d.T, "from")), cal.MonthDayOf(rapid.IntRange(1, 365).Draw(d.T, "to"))
		}
		return w
	})
	h.Groups = rows(2, func(i int) larder.Group { return larder.Group{ID: id("group", i), Name: d.filled("name")} })
	h.Members = rows(d.count("members"), func(i int) larder.Membership {
		return larder.Membership{ID: id("member", i), Group: d.sure("group", 2), Member: larder.Member{Vegetable: d.filled("vegetable"), Preference: rapid.IntRange(1, 100).Draw(d.T, "preference")}}
	})
	h.Visits = rows(d.count("visits"), func(i int) larder.Visit {
		return larder.Visit{ID: id("visit", i), From: d.date("from"), To: d.date("to"), Eaters: d.number("eaters", -4, 9), Note: d.text("note")}
	})
	h.GapsLeft = rows(d.count("gaps left"), func(i int) larder.GapLeft {
		return larder.GapLeft{ID: id("left", i), Vegetable: d.filled("vegetable"), From: d.date("from"), To: d.date("to")}
	})
	h.Purchases = rows(d.count("purchases"), func(i int) larder.Purchase {
		return larder.Purchase{ID: id("buy", i), Vegetable: d.filled("vegetable"), From: d.date("from"), To: d.date("to"), KgPerWeek: d.number("bought", 0.001, 50)}
	})
	h.Stores = rows(stores, func(i int) larder.Store {
		s := larder.Store{ID: id("store", i), Name: d.filled("name"), Method: d.of("stores", "method"), WinterC: d.number("winter", -20, 10), SummerC: d.number("summer", 10, 40)}
		switch {
		case d.maybe("litres?"):
			s.Litres, s.Place = d.number("litres", 1, 1000), d.of("stores", "place")
		case d.maybe("jars?"):
			s.Jars, s.Humidity = d.number("jars", 1, 1000), larder.Humidity(d.of("stores", "humidity"))
		default:
			s.CapacityKg = d.number("capacity", 0.1, 1000)
		}
		return s
	})
	h.Batches = rows(d.count("batches"), func(i int) larder.Batch {
		return larder.Batch{ID: id("batch", i), Store: d.sure("store", stores), Crop: d.filled("crop"), Use: d.text("use"), Kg: d.number("kg", 0.001, 500), Stored: d.date("stored"), Planting: d.text("planting")}
	})
	h.Records = rows(d.count("records"), func(i int) record.Record {
		r := record.Record{ID: id("record", i), Date: d.date("date"), What: record.What(d.of("records", "what")), Planting: d.text("planting"), Bed: d.one("bed", beds), Store: d.one("store", stores), Problem: d.text("problem"), Note: d.text("note")}
		if d.maybe("amount?") {
			r.Value, r.Unit = d.number("value", 0, 100), d.of("records", "unit")
		}
		return r
	})
}

// weatherLive draws readings, typed forecasts, addresses and instruments.
func (d draw) weatherLive(h *holding.Holding, sites, beds int) {
	h.WeatherReadings = rows(d.count("readings"), func(i int) observed.Reading {
		r := observed.Reading{ID: id("reading", i), Site: d.sure("site", sites), Date: d.date("date"), At: d.of("weather_readings", "at"), Since: cal.None,
			By: d.of("weather_readings", "by"), Note: d.text("note"), RainMM: climate.Is(d.number("rain", 0, 200))}
		if d.maybe("warmth?") {
			r.TMinC, r.TMaxC = climate.Is(d.number("low", -30, 0)), climate.Is(d.number("high", 0, 20))
		}
		return r
	})
	h.Foretold = rows(d.count("forecasts"), func(i int) observed.Foretold {
		told := d.date("told")
		return observed.Foretold{ID: id("ahead", i), Site: d.sure("site", sites), Date: told + 1, Told: told, TMinC: climate.Is(0), TMaxC: climate.Is(d.number("high", 0, 30)),
			Wind: d.of("forecasts", "wind"), Sky: d.of("forecasts", "sky")}
	})
	h.Addresses = rows(d.count("addresses"), func(i int) observed.Address {
		return observed.Address{ID: id("address", i), Site: d.sure("site", sites), URL: "https://forecast.example/days", Layout: "json", EveryH: rapid.IntRange(1, 48).Draw(d.T, "every"), On: d.of("addresses", "on")}
	})
	h.Sensors = rows(d.count("sensors"), func(i int) observed.Sensor {
		return observed.Sensor{ID: id("sensor", i), Name: d.filled("name"), Site: d.sure("site", sites), Bed: d.one("bed", beds), Topic: "shed/air", Quantity: observed.Temperature, Unit: "F"}
	})
}

func (d draw) days(name string) *climate.Record {
	if !d.maybe(name + "?") {
		return nil
	}
	r, first := &climate.Record{}, d.date(name)
	for i := range d.count("days") {
		low := d.number("low", -30, 20)
		o := climate.Observation{Date: first + cal.Date(2*i), TMinC: climate.Is(low), TMaxC: climate.Is(low + d.number("range", 0, 20))}
		if d.maybe("rain?") {
			o.RainMM = climate.Is(d.number("rain", 0, 80))
		}
		if d.maybe("sun?") {
			o.SunH = climate.Is(d.number("sun", 0, 16))
		}
		r.Days = append(r.Days, o)
	}
	return r
}

func (d draw) normals() *climate.Normals {
	if !d.maybe("normals?") {
		return nil
	}
	n, sunny := &climate.Normals{}, d.maybe("sunny")
	for i := range n {
		n[i].TMinC = d.number("low", -20, 15)
		n[i].TMaxC = n[i].TMinC + d.number("range", 0, 15)
		n[i].RainMM = d.number("rain", 0, 300)
		if sunny {
			n[i].SunH = climate.Is(d.number("sun", 0, 12))
		}
	}
	return n
}

// What is written can be read, says the same, and is written the same again.
func TestRandomHoldingsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := randomHolding(t)
		var once, twice bytes.Buffer
		if err := WriteZip(&once, h); err != nil {
			t.Fatal(err)
		}
		again, report := ReadZip(bytes.NewReader(once.Bytes()), int64(once.Len()))
		if !report.OK() {
			t.Fatal(report.Faults)
		}
		if err := WriteZip(&twice, again); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(unpacked(t, once.Bytes()), unpacked(t, twice.Bytes())); diff != "" || !bytes.Equal(once.Bytes(), twice.Bytes()) {
			t.Fatalf("written again it differs: %s", diff)
		}
		for i, s := range sheets {
			if diff := cmp.Diff(s.cells(h), sheets[i].cells(again)); diff != "" {
				t.Fatal(diff)
			}
		}
	})
}

func unpacked(t *rapid.T, raw []byte) map[string]string {
	b, wrong := unzip(bytes.NewReader(raw), int64(len(raw)))
	if wrong != nil {
		t.Fatal(wrong)
	}
	out := map[string]string{}
	for name, content := range b {
		out[name] = string(content)
	}
	return out
}
