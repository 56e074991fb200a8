package cover

import "math"

// facts are the numbers of one cover. data/covers.csv holds each with its unit,
// source and mark; the tag is its name there.
type facts struct {
	lightShare float64 // radiation and light that pass
	skyShare   float64 // share of the warmth lost to the open sky that is still lost below

	nightOvercastC  float64 // lift of the minimum under cloud
	nightClearC     float64 // lift of the minimum under a clear sky with some wind
	nightStillC     float64 // added to it on a clear, windless night; not above 0
	nightDeepShare  float64 // added to the lift for each degree below the deep cold
	nightOpenAboveC float64 // opened at night above this; +Inf: never

	dayGainC      float64 // lift of the maximum that endless sun would add
	dayHalfMJ     float64 // radiation outside that adds half of it
	windFallSM    float64 // share of the lift lost per m/s of wind, falling off
	dayOpenAboveC float64 // opened by day above this; +Inf: never
	openShare     float64 // share of the lift that stays when it is wide open
	lateShare     float64 // share of the rest that stays because it is opened late

	rainShare         float64 // rain that reaches the soil
	windShare         float64 // wind that is left
	humidityTowardPct float64 // humidity is drawn toward this
	humidityShare     float64 // by this share of the difference
	soilLiftC         float64 // warmth of the soil beyond that of air and radiation
	meshMM            float64 // widest gap; +Inf: no barrier

	heldNightC      float64 // a room's night temperature; 0: no room
	heldDayC        float64 // a room's day temperature
	heldHighC       float64 // above it the room follows the air outside
	heldExcessShare float64 // by this share
}

// column is one name of data/covers.csv: its unit, the range a value may take
// and where it goes.
type column struct {
	name, unit string
	low, high  float64
	blank      bool // may be blank: never, or none
	thermal    bool // a lift or an opening; rooms have none
	room       bool // rooms only
	into       func(*facts) *float64
}

var columns = []column{
	{name: "light_share", unit: "1", high: 1, into: func(f *facts) *float64 { return &f.lightShare }},
	{name: "sky_share", unit: "1", high: 1, into: func(f *facts) *float64 { return &f.skyShare }},
	{name: "night_overcast_c", unit: "C", high: 8, thermal: true, into: func(f *facts) *float64 { return &f.nightOvercastC }},
	{name: "night_clear_c", unit: "C", low: -2, high: 8, thermal: true, into: func(f *facts) *float64 { return &f.nightClearC }},
	{name: "night_still_c", unit: "C", low: -3, thermal: true, into: func(f *facts) *float64 { return &f.nightStillC }},
	{name: "night_deep_share", unit: "1", high: 0.5, thermal: true, into: func(f *facts) *float64 { return &f.nightDeepShare }},
	{name: "night_open_above_c", unit: "C", high: 40, blank: true, thermal: true, into: func(f *facts) *float64 { return &f.nightOpenAboveC }},
	{name: "day_gain_c", unit: "C", high: 40, thermal: true, into: func(f *facts) *float64 { return &f.dayGainC }},
	{name: "day_half_mj", unit: "MJ/m2/day", low: 1, high: 60, thermal: true, into: func(f *facts) *float64 { return &f.dayHalfMJ }},
	{name: "wind_fall_s_m", unit: "s/m", high: 0.5, thermal: true, into: func(f *facts) *float64 { return &f.windFallSM }},
	{name: "day_open_above_c", unit: "C", high: 40, blank: true, thermal: true, into: func(f *facts) *float64 { return &f.dayOpenAboveC }},
	{name: "open_share", unit: "1", high: 1, thermal: true, into: func(f *facts) *float64 { return &f.openShare }},
	{name: "late_share", unit: "1", high: 1, thermal: true, into: func(f *facts) *float64 { return &f.lateShare }},
	{name: "rain_share", unit: "1", high: 1, into: func(f *facts) *float64 { return &f.rainShare }},
	{name: "wind_share", unit: "1", high: 1, into: func(f *facts) *float64 { return &f.windShare }},
	{name: "humidity_toward_pct", unit: "%", high: 100, into: func(f *facts) *float64 { return &f.humidityTowardPct }},
	{name: "humidity_share", unit: "1", high: 1, into: func(f *facts) *float64 { return &f.humidityShare }},
	{name: "soil_lift_c", unit: "C", low: -3, high: 5, into: func(f *facts) *float64 { return &f.soilLiftC }},
	{name: "mesh_mm", unit: "mm", high: 50, blank: true, into: func(f *facts) *float64 { return &f.meshMM }},
	{name: "held_night_c", unit: "C", low: 1, high: 30, room: true, into: func(f *facts) *float64 { return &f.heldNightC }},
	{name: "held_day_c", unit: "C", low: 1, high: 35, room: true, into: func(f *facts) *float64 { return &f.heldDayC }},
	{name: "held_high_c", unit: "C", low: 1, high: 40, room: true, into: func(f *facts) *float64 { return &f.heldHighC }},
	{name: "held_excess_share", unit: "1", high: 1, room: true, into: func(f *facts) *float64 { return &f.heldExcessShare }},
}

// never stands for a blank value: no temperature opens it, no gap is too small.
var never = math.Inf(1)
