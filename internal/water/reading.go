package water

// Reading is what was read of a soil's moisture: by a probe in per cent of the volume,
// by a tensiometer in centibars (kPa), or by a finger as dry, moist or wet.
type Reading struct {
	Way   string // probe, tensiometer, finger
	Value float64
	Felt  string
	Sure  string // well, fair, hardly; empty: fair
}

// sureness is by how much the error of a reading is taken to be less or more than
// usual. judgement: several places halve it, one place of a bed doubles it.
var sureness = map[string]float64{"well": 0.5, "fair": 1, "": 1, "hardly": 2}

// In tells what a reading means in a soil; one that cannot be is refused.
func (r *Reading) In(texture string) (left Left, err error) {
	switch r.Way {
	case "probe":
		left, err = LeftOfVolume(texture, r.Value)
	case "tensiometer":
		left, err = LeftOfTension(texture, r.Value)
	default:
		left, err = LeftOfFeel(r.Felt)
	}
	if factor, known := sureness[r.Sure]; known {
		left.Error *= factor
	}
	return left, err
}

// TextureOf is the soil of a bed whose texture may not be told: of one that holds its
// own soil a potting mix.
func TextureOf(texture string, ownSoil bool) string {
	if ownSoil && texture == "" {
		return PottingMix
	}
	return texture
}
