package web

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// riskWeathers say what is on record, once where it is the same at all sites.
func (v *visit) riskWeathers(view *desk.RiskView) (out []string) {
	alike := true
	for i := range view.Weather {
		alike = alike && v.riskWeather(&view.Weather[i], false, view.Today) == v.riskWeather(&view.Weather[0], false, view.Today)
	}
	for i := range view.Weather {
		if i == 0 || !alike {
			out = append(out, v.riskWeather(&view.Weather[i], !alike, view.Today))
		}
	}
	return out
}

// riskWeather says what is on record of a site's season.
func (v *visit) riskWeather(w *desk.RiskWeather, several bool, today cal.Date) string {
	args := words.Args{"site": w.SiteName, "from": w.From, "hours": w.Hours, "made": w.Made, "guessed": w.Guessed, "last": w.Last, "behind": w.Behind, "missing": w.Missing}
	var out []string
	if several {
		out = append(out, v.say("web.risk_weather_site", args))
	}
	switch {
	case !w.Last.IsSet():
		out = append(out, v.say("web.risk_weather_none", args))
	case w.Made == 0:
		out = append(out, v.say("web.risk_weather_hours", args))
	case w.Hours == 0:
		out = append(out, v.say("web.risk_weather_days", args))
	default:
		out = append(out, v.say("web.risk_weather_mixed", args))
	}
	if len(w.Origins) > 0 {
		out = append(out, v.hourOrigins(w.Origins))
	}
	if w.Guessed > 0 {
		out = append(out, v.say("web.risk_weather_guessed", args))
	}
	if w.Last.IsSet() && w.Behind > 2 {
		out = append(out, v.sentence(sharpened(words.P("web.risk_weather_behind", args), today)))
	}
	return strings.Join(out, " ")
}

// hourOrigins says where the days by the hour come from.
func (v *visit) hourOrigins(from []desk.RiskOrigin) string {
	var parts []words.Phrase
	for _, o := range from {
		parts = append(parts, words.P("web.risk_hours_"+string(o.From), words.Args{"n": o.Days, "name": o.Name}))
	}
	return v.say("web.risk_hours_from", words.Args{"origins": parts})
}
