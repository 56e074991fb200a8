package desk

import (
	"math"

	"garner/internal/words"
)

// lead tells first what fell, then the frost, then what is ahead.
func (v *WeatherView) lead() []words.Phrase {
	s := &v.Spans[0]
	var out []words.Phrase
	switch {
	case s.Warm == 0 && s.Wet == 0 && v.LastKnown == nil:
		out = append(out, words.P("desk.weather_none", words.Args{"site": v.SiteName}))
	case s.Warm == 0 && s.Wet == 0:
		out = append(out, words.P("desk.weather_since", words.Args{"site": v.SiteName, "date": *v.LastKnown}))
	default:
		if s.Wet > 0 {
			key := "desk.weather_rain"
			if v.Normals {
				key = "desk.weather_rain_usual"
			}
			out = append(out, words.P(key, words.Args{"mm": math.Round(s.RainMM), "usual": math.Round(s.UsualRainMM), "n": s.Wet}))
		}
		if s.Warm > 0 {
			out = append(out, v.warmth(s))
		}
		if s.Frosts > 0 {
			out = append(out, words.P("desk.weather_frosts", words.Args{"n": s.Frosts, "c": s.LowestC}))
		}
	}
	return append(out, v.aheadSays())
}

// alike is how near to the usual a mean must be to be called so [C].
const alike = 0.5

func (v *WeatherView) warmth(s *WeatherSpan) words.Phrase {
	mean, usual := (s.MinC+s.MaxC)/2, (s.UsualMinC+s.UsualMaxC)/2
	args := words.Args{"c": mean, "by": math.Abs(mean - usual), "n": s.Warm}
	switch {
	case !v.Normals:
		return words.P("desk.weather_mean", args)
	case mean-usual > alike:
		return words.P("desk.weather_warmer", args)
	case usual-mean > alike:
		return words.P("desk.weather_colder", args)
	}
	return words.P("desk.weather_as_usual", args)
}

// aheadSays tells the forecast in a sentence.
func (v *WeatherView) aheadSays() words.Phrase {
	if len(v.Ahead) == 0 {
		return words.P("desk.weather_no_forecast", nil)
	}
	low, high, rain := math.Inf(1), math.Inf(-1), 0.0
	lowest := v.Ahead[0].Date
	for i := range v.Ahead {
		d := &v.Ahead[i]
		if d.TMinC != nil && *d.TMinC < low {
			low, lowest = *d.TMinC, d.Date
		}
		if d.TMaxC != nil {
			high = max(high, *d.TMaxC)
		}
		if d.RainMM != nil {
			rain += *d.RainMM
		}
	}
	key := "desk.weather_ahead"
	if low < 0 {
		key = "desk.weather_ahead_frost"
	}
	return words.P(key, words.Args{"n": len(v.Ahead), "low": low, "high": high, "mm": math.Round(rain), "lowest": lowest, "last": v.Ahead[len(v.Ahead)-1].Date})
}
