package web

import (
	"net/http"
	"path"

	"garner/internal/place"
	"garner/internal/words"
)

// untoldSite is a site of which no weather is known, with the way to mend it.
type untoldSite struct{ Says, Path string }

// untoldBody is what a page of water shows where no site's weather is known.
type untoldBody struct {
	Title, Why string
	Ways       waterWays
}

// underWeather shows a page of water, with what it cannot tell. Where no site's weather is
// known it shows how to add one instead.
func underWeather(handle pageHandler) pageHandler {
	return hangsOnWeather(waterNav, handle, func(v *visit) untoldBody {
		return untoldBody{Title: v.say("web.water_title", nil), Why: v.say("web.untold_water", nil), Ways: v.waterWays("")}
	})
}

// hangsOnWeather is the same of any page.
func hangsOnWeather(nav string, handle pageHandler, instead func(*visit) untoldBody) pageHandler {
	return func(v *visit) error {
		sites, all, err := v.office.Weatherless()
		if err != nil {
			return err
		}
		v.untold = v.untoldSites(sites)
		if all {
			b := instead(v)
			if len(sites) == 0 {
				b.Why = v.say("web.untold_no_site", nil)
			}
			return v.show(page{Name: "water_untold", Nav: nav, Body: &b})
		}
		return handle(v)
	}
}

// showWeatherless answers in place of any page that cannot be worked out because a site
// has no weather: which, and where to add it. To what is read by no person, such as a
// calendar, it is a fault still, so that a phone keeps the jobs it has; a part of a page
// that was asked for makes the browser ask for the whole.
func (v *visit) showWeatherless() bool {
	if v.r.Header.Get("X-Fragment") != "" {
		return false
	}
	sites, _, err := v.office.Weatherless()
	if err != nil || len(sites) == 0 {
		return false
	}
	b := untoldBody{Title: v.say("web.untold_title", nil), Why: v.say("web.untold_any", nil), Ways: waterWays{Untold: v.untoldSites(sites)}}
	p := page{Name: "water_untold", Body: &b}
	if v.r.Method == http.MethodPost || path.Ext(v.r.URL.Path) != "" {
		p.Status = http.StatusUnprocessableEntity
	}
	return v.show(p) == nil
}

func (v *visit) untoldSites(sites []place.Site) []untoldSite {
	var out []untoldSite
	for _, s := range sites {
		out = append(out, untoldSite{v.say("desk.weather_untold", words.Args{"site": s.Name}), rowPath(&siteForm, s.ID) + "/edit#f-weather"})
	}
	return out
}
