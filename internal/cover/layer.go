package cover

import "garner/internal/climate"

// stillWindMS is the daily mean wind at 2 m [m/s] from which a clear night no
// longer chills a cover below the air. // judgement: radiation frosts come with
// winds under about 2.5 m/s.
const stillWindMS = 2.0

// fitWindMS is the wind [m/s] to which the lifts in the data belong: the
// standard of FAO-56 for an unknown wind.
const fitWindMS = 2.0

// under gives the weather under one layer, with the share of the sky that is
// clear, 0-1. It writes field by field: copies of whole days cost more than the
// sums.
func (f *facts) under(in, out *climate.Day, sunny float64) {
	f.warm(in, out, sunny)
	if in.TMaxC < in.TMinC { // by rounding only
		in.TMaxC = in.TMinC
	}
	in.RainMM = out.RainMM * f.rainShare
	in.RadiationMJ = out.RadiationMJ * f.lightShare
	in.HumidityPct = out.HumidityPct + f.humidityShare*(f.humidityTowardPct-out.HumidityPct)
	in.WindMS = out.WindMS * f.windShare
}

// warm gives the night minimum and the day maximum under one layer.
func (f *facts) warm(in, out *climate.Day, sunny float64) {
	if f.heldNightC > 0 {
		in.TMinC = f.held(out.TMinC, f.heldNightC)
		in.TMaxC = f.held(out.TMaxC, f.heldDayC)
		return
	}
	wind := (1 + fitWindMS*f.windFallSM) / (1 + out.WindMS*f.windFallSM)
	in.TMinC = f.opened(out.TMinC, f.nightLift(sunny, out.WindMS, wind)+f.deepLift(out.TMinC), f.nightOpenAboveC)
	in.TMaxC = f.opened(out.TMaxC, f.dayLift(out.RadiationMJ, wind)+f.deepLift(out.TMaxC), f.dayOpenAboveC)
}

// nightLift returns the lift of the minimum [C] under a closed cover, from the
// share of clear sky, the wind [m/s] and what it leaves of a lift. It never
// rises with clearness.
func (f *facts) nightLift(sunny, windMS, wind float64) float64 {
	lift := wind * (f.nightOvercastC + sunny*(f.nightClearC-f.nightOvercastC))
	if windMS < stillWindMS {
		lift += sunny * f.nightStillC * (1 - windMS*(1/stillWindMS))
	}
	return lift
}

// deepColdC is the air outside [C] below which a closed cover gains from the
// ground, which stays near freezing while the air falls away from it. The
// measured lifts lie above it. // judgement
const deepColdC = -5.0

// deepLift returns what the warmth of the ground adds to the lift of the
// minimum, and of a maximum as cold [C].
func (f *facts) deepLift(outC float64) float64 {
	return f.nightDeepShare * max(0, deepColdC-outC)
}

// dayLift returns the lift of the maximum [C] under a closed cover, from the
// radiation outside [MJ/m2/day] and what the wind leaves of a lift. Without sun
// it is that of an overcast night; it rises with the sun toward a limit.
func (f *facts) dayLift(radiationMJ, wind float64) float64 {
	return wind * (f.nightOvercastC + f.dayGainC*radiationMJ/(radiationMJ+f.dayHalfMJ))
}

// opened returns the temperature inside [C] when a cover with a lift [C] over
// the air outside [C] is opened above a temperature [C]: it is held there as
// far as an open cover can, and misses it by the share opened late. Rises with
// each of the three.
func (f *facts) opened(outC, liftC, aboveC float64) float64 {
	closed := outC + liftC
	if closed <= aboveC || liftC <= 0 {
		return closed
	}
	target := max(aboveC, outC+f.openShare*liftC)
	return target + f.lateShare*(closed-target)
}

// held returns a room's temperature [C], heated to low [C], from the air
// outside [C]; above the room's high it follows the air by a share.
func (f *facts) held(outC, lowC float64) float64 {
	if outC > f.heldHighC {
		return f.heldHighC + f.heldExcessShare*(outC-f.heldHighC)
	}
	return max(lowC, outC)
}
