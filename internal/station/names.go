package station

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"garner/internal/table"
)

// otherNames are names that columns of daily records go by elsewhere, in small
// letters, each with ours. The unit has to be the same.
var otherNames = map[string]string{
	"t_min_c": columnTMin, "tmin": columnTMin,
	"t_max_c": columnTMax, "tmax": columnTMax,
	"rs_mj_m2": columnRadiation, "radiation_mj_m2": columnRadiation, "radiation_mj": columnRadiation,
	"sunshine_h": columnSun,
	"tdew_c":     columnDew, "dew_point_c": columnDew,
	"rhmean_pct": columnHumidity, "humidity_pct": columnHumidity,
	"rhmax_pct": columnHumidityMost, "rhmin_pct": columnHumidityLeast,
	"wind_m_s": columnWind, "u2_m_s": columnWind, "wind_2m_ms": columnWind,
}

// windName is a column of wind that tells the height of its cups [m].
var windName = regexp.MustCompile(`^wind_([0-9]+(?:\.[0-9]+)?)m_(?:ms|m_s)$`)

// rename gives the columns of a table our names and returns the height [m] at
// which its wind was measured, 0 where the table does not tell. A column that is
// there under our name stays the one that counts.
func rename(t *table.Table) (windHeightM float64) {
	for i, h := range t.Header {
		name := strings.ToLower(h)
		if ours, known := otherNames[name]; known && t.Column(ours) < 0 {
			t.Header[i] = ours
		}
		if found := windName.FindStringSubmatch(name); found != nil && !slices.Contains(t.Header, columnWind) {
			t.Header[i] = columnWind
			windHeightM, _ = strconv.ParseFloat(found[1], 64) // digits, by the pattern
		}
	}
	return windHeightM
}
