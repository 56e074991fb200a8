package web

import (
	"net/url"
	"strconv"
	"strings"

	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/fault"
	"garner/internal/place"
	"garner/internal/words"
)

// lightBody is the page of the light on a site.
type lightBody struct {
	Title     string
	Site      place.Site
	Sites     []wayLink
	Months    []wayLink
	Month     string
	Sentences []string
	Map       string // drawings
	MapPhone  string
	Curves    []curveBody
	Short     []string // the months' short names
	Beds      []desk.ShadedBed
	Asked     *askedBody // nil where the weather does not tell
	Undrawn   []place.Bed
	Drawn     bool // the site has a plan
	Told      bool // there is light to tell of: a plan, or a bed on it
}

// curveBody is one bed's light through the year.
type curveBody struct{ Name, Path, Draw string }

// Sizes of the drawings of light [px].
const (
	lightWidth      = 860.0
	lightWidthPhone = 358.0
	curveWidth      = 210.0
	curveHeight     = 96.0
)

// lightPage shows the light on a site in a month and on its beds through the
// year.
func lightPage(v *visit) error {
	month := 0
	if given := v.query("month"); given != "" {
		var err error
		if month, err = strconv.Atoi(given); err != nil || month < 1 {
			return fault.New(fault.OutOfRange, "desk.shade_month", words.Args{"given": given})
		}
	}
	view, err := v.office.ShadeView(v.query("site"), month)
	if err != nil {
		return err
	}
	return v.showPart(page{Name: "light", Nav: "ground", Body: v.lightBody(view)})
}

func (v *visit) lightBody(view *desk.ShadeView) *lightBody {
	f := v.words.Format()
	b := &lightBody{Title: v.say("web.light_title", words.Args{"site": view.Site.Name}), Site: view.Site, Month: f.Month(view.Month),
		Beds: view.Beds, Undrawn: view.Undrawn, Drawn: len(view.Map.Light) > 0}
	b.Told = b.Drawn || len(b.Beds) > 0
	for _, s := range view.Sites {
		b.Sites = append(b.Sites, wayLink{s.Name, lightPath(s.ID, view.Month), s.ID == view.Site.ID})
	}
	for m := 1; m <= 12; m++ {
		b.Months = append(b.Months, wayLink{f.Month(m), lightPath(view.Site.ID, m), m == view.Month})
		b.Short = append(b.Short, f.ShortMonth(m))
	}
	b.Sentences = v.lightWords(view)
	b.Map, b.MapPhone = v.lightMap(view, lightWidth), v.lightMap(view, lightWidthPhone)
	for i := range view.Beds {
		b.Curves = append(b.Curves, v.lightCurve(view, &view.Beds[i]))
	}
	b.Asked = v.askedBody(view)
	return b
}

// lightPath is the address of the light on a site in a month.
func lightPath(site string, month int) string {
	return "/ground/light?" + url.Values{"site": {site}, "month": {strconv.Itoa(month)}}.Encode()
}

func (v *visit) lightMap(view *desk.ShadeView, width float64) string {
	f := v.words.Format()
	return draw.LightMap(view, draw.LightMapOptions{WidthPX: width,
		Label:   v.say("web.light_map_label", words.Args{"site": view.Site.Name, "month": f.Month(view.Month), "text": plainText(strings.Join(v.lightWords(view), " "))}),
		Percent: f.Percent, Metres: v.metresTold, North: v.say("web.light_north", nil),
		Bed: func(bed *desk.ShadedBed) []string {
			light := f.Percent(bed.Light[view.Month-1])
			return []string{v.say("web.light_bed", words.Args{"bed": bed.Name, "light": light}), bed.Name + "\n" + light, light}
		},
		Feature: v.featureNames})
}

// metresTold tells a length without a nought after the point: 2 m.
func (v *visit) metresTold(m float64) string {
	return v.say("web.light_metres", words.Args{"m": v.words.Format().Plain(m)})
}

// featureNames name a thing beside the beds, the longest first.
func (v *visit) featureNames(feature *desk.ShadeFeature) []string {
	names := []string{feature.Name}
	if feature.HeightM > 0 {
		args := words.Args{"name": feature.Name, "height": v.metresTold(feature.HeightM)}
		key := "web.light_feature"
		if feature.Bare {
			key = "web.light_feature_bare"
		}
		names = append([]string{v.say(key, args)}, names...)
	}
	return names
}

func (v *visit) lightCurve(view *desk.ShadeView, bed *desk.ShadedBed) curveBody {
	f := v.words.Format()
	o := draw.LightCurveOptions{WidthPX: curveWidth, HeightPX: curveHeight, Month: view.Month, Percent: f.Percent}
	texts := make([]string, 12)
	for m := range o.Months {
		o.Months[m] = string([]rune(f.ShortMonth(m + 1))[:1])
		texts[m] = v.say("web.light_of_month", words.Args{"month": f.Month(m + 1), "light": f.Percent(bed.Light[m])})
	}
	o.Label = v.say("web.light_curve_label", words.Args{"bed": bed.Name, "text": strings.Join(texts, ", ")})
	return curveBody{bed.Name, bedPath(bed.ID), draw.LightCurve(bed.Light, o)}
}
