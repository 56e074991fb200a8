package exchange

import (
	"strings"
	"testing"

	"garner/internal/fault"
	"garner/internal/words"
)

// one is a single fault planted in the hand-made holding.
type one struct {
	file, old, new string
	key            string
	row            int
	column         string
}

var faultsOfCells = []one{
	{"holding.csv", "Elm Row, back gardens", "", "exchange.blank", 2, "name"},
	{"holding.csv", "Europe/London", "London time", "exchange.zone_unknown", 2, "zone"},
	{"holding.csv", "Europe/London", "Local", "exchange.zone_unknown", 2, "zone"},
	{"holding.csv", "3.5", "three", "exchange.not_a_number", 2, "eaters"},
	{"holding.csv", ",main", ",mian", "exchange.unknown_near", 2, "plan"},
	{"holding.csv", "2027-03-01", "2027-02-29", "exchange.not_a_date", 2, "today"},
	{"sites.csv", "51.4,", "-67,", "exchange.out_of_range", 2, "latitude_deg"},
	{"sites.csv", "-2.75,", "-182.75,", "exchange.out_of_range", 3, "longitude_deg"},
	{"sites.csv", "118,valley", "118,hill", "exchange.unknown", 3, "weather"},
	{"beds.csv", "h1,home,", "h1,hme,", "exchange.unknown_near", 2, "site"},
	{"beds.csv", ",butt,\n", ",but,\n", "exchange.unknown_near", 5, "water"},
	{"beds.csv", ",butt,\n", ",tap,\n", "exchange.water_elsewhere", 5, "water"},
	{"holding.csv", ",5,60\n", ",900,60\n", "exchange.out_of_range", 2, "feed_ml_l"},
	{"holding.csv", ",5,60\n", ",5,6000\n", "exchange.out_of_range", 2, "feed_g_m2"},
	{"water_sources.csv", "tap,home", "tap,hme", "exchange.unknown_near", 3, "site"},
	{"water_sources.csv", "butt,300", "butt,", "exchange.butt_holds", 2, "holds_l"},
	{"water_sources.csv", "tap,,,,", "tap,,8,,", "exchange.roof_of_no_butt", 3, "roof_m2"},
	{"water_sources.csv", "12.5,metal", ",metal", "exchange.covering_of_no_roof", 2, "roof_m2"},
	{"water_sources.csv", "metal", "mettal", "exchange.not_allowed_near", 2, "covering"},
	{"water_sources.csv", "11-15,03-10", "11-15,", "exchange.half_given", 3, "shut_to"},
	{"moisture_readings.csv", "h1,probe", "h9,probe", "exchange.unknown_near", 2, "bed"},
	{"moisture_readings.csv", "2027-02-26", "2029-02-26", "exchange.after_today", 2, "date"},
	{"moisture_readings.csv", "probe,22.5", "probe,", "exchange.reading_value", 2, "value"},
	{"moisture_readings.csv", "probe,22.5", "probe,72", "water.over_saturation", 2, "value"},
	{"moisture_readings.csv", "probe,22.5", "probe,2", "water.under_wilting", 2, "value"},
	{"moisture_readings.csv", "tensiometer,18", "tensiometer,950", "water.tension_range", 4, "value"},
	{"moisture_readings.csv", "tensiometer,18,", "tensiometer,18,dry", "exchange.felt_spare", 4, "felt"},
	{"moisture_readings.csv", "finger,,moist", "finger,,", "exchange.finger_felt", 3, "felt"},
	{"moisture_readings.csv", "finger,,moist", "finger,,soggy", "exchange.not_allowed", 3, "felt"},
	{"moisture_readings.csv", "finger,,moist", "finger,12,moist", "exchange.finger_value", 3, "value"},
	{"beds.csv", "h2,home,", "h1,home,", "exchange.same_id", 3, "id"},
	{"beds.csv", "h2,home,", "h/2,home,", "exchange.not_an_id", 3, "id"},
	{"beds.csv", ",border,4.5", ",boarder,4.5", "exchange.not_allowed_near", 3, "kind"},
	{"beds.csv", "0.85", "85", "exchange.out_of_range", 2, "light_share"},
	{"beds.csv", "12,1.2", "12,-1.2", "exchange.out_of_range", 5, "width_m"},
	{"beds.csv", "poor,11", "poor,1.5", "exchange.not_whole", 5, "order"},
	{"beds.csv", "poor,11", "poor,11,,,,,,,,,,,7", "table.too_many_cells", 5, ""},
	{"beds.csv", "poor,11,,,,,,", "poor,11,outline,2,1,,0 0; 3 1; 3 0; 0 1,", "exchange.outline_crosses", 5, "outline"},
	{"beds.csv", "poor,11,,,,,,", "poor,11,outline,2,1,,0 0; 3 0; 6 0,", "exchange.outline_no_area", 5, "outline"},
	{"beds.csv", "poor,11,,,,,,", "poor,11,outline,2,1,,0 0; 3 0,", "exchange.outline_unreadable", 5, "outline"},
	{"beds.csv", "poor,11,,,,,,", "poor,11,outline,2,1,,0 0; 3 0; 3 9,", "exchange.outline_beyond", 5, "outline"},
	{"beds.csv", "poor,11,,,,,,", "poor,11,outline,2,1,,0 0; 3 0; 3 1; 0 1; 0 0,", "exchange.outline_twice", 5, "outline"},
	{"beds.csv", "poor,11,,", "poor,11,,2", "exchange.half_given", 5, "y_m"},
	{"beds.csv", "poor,11,,,", "poor,11,,0,4", "exchange.out_of_range", 5, "x_m"},
	{"beds.csv", "poor,11,,,,,,,,,,", "poor,11,,,,,,,,,0,", "exchange.out_of_range", 5, "turn_round_d"},
	{"beds.csv", ",butt,\n", ",butt,0.01\n", "exchange.out_of_range", 5, "volume_l"},
	{"sites.csv", "118,valley,", "118,valley,12", "exchange.half_given", 3, "plan_depth_m"},
	{"sites.csv", "118,valley,,", "118,valley,0,9", "exchange.out_of_range", 3, "plan_width_m"},
	{"covers.csv", "2027-03-01,2027-05-10", "2027-05-10,2027-03-01", "exchange.off_before_on", 3, "off"},
	{"covers.csv", "c2,h1", "c2,t1", "exchange.covers_overlap_open", 3, "on"},
	{"covers.csv", "2027-05-10,2027-10-01", "2027-05-09,2027-10-01", "exchange.covers_overlap", 4, "on"},
	{"covers.csv", "fleece", "flece", "exchange.not_allowed_near", 3, "kind"},
	{"crops.csv", "days_seed", "days_sed", "crop.parameter_unknown", 2, "parameter"},
	{"crops.csv", "84", "8400", "crop.out_of_range", 2, "value"},
	{"crops.csv", ",d,", ",weeks,", "crop.unit_differs", 2, "unit"},
	{"crops.csv", "o1,carrot", "o1,Carrots", "exchange.crop_by_id", 2, "crop"},
	{"varieties.csv", "0.9,0,1,0.85", "0,0,1,0.85", "exchange.out_of_range", 2, "yield_factor"},
	{"varieties.csv", "carrot,storage", "carrot,forage", "crop.use_unknown", 3, "use"},
	{"plans.csv", "more,More for winter,main", "more,More for winter,more", "exchange.base_itself", 3, "base"},
	{"plantings.csv", "p1,main", "p1,other", "exchange.unknown", 2, "plan"},
	{"plantings.csv", "carrot,early,red-lane,seed", "karrot,early,red-lane,seed", "crop.unknown", 2, "crop"},
	{"plantings.csv", "table,,seed", "tables,red-line,seed", "exchange.unknown_near", 3, "variety"},
	{"plantings.csv", "table,,seed", "table,old-keeper,seed", "exchange.variety_of_other_crop", 3, "variety"},
	{"plantings.csv", "table,,seed", "table,,sow", "exchange.not_allowed", 3, "method"},
	{"plantings.csv", "table,,seed", "table,,set", "exchange.method_not_for_crop", 3, "method"},
	{"plantings.csv", "2027-04-12", "2227-04-12", "exchange.out_of_range", 3, "date"},
	{"plantings.csv", "1.5,,,2027-07-20", "1.5,,,2027-03-05", "exchange.clear_before_date", 2, "clear_by"},
	{"plantings.csv", "7.2", "14.5", "exchange.area_too_large", 4, "area_m2"},
	{"plantings.csv", "after,p1", "after,p2", "exchange.to_itself", 3, "to"},
	{"plantings.csv", "between,p5", "under,p4", "exchange.to_itself", 5, "to"},
	{"plantings.csv", "2,,,,,,,,,,,", "2,,,,,,,,0,,,", "exchange.out_of_range", 6, "in_row_m"},
	{"plantings.csv", "2,,,,,,,,,,,", "2,,,,,,,,,,2027-07-01,", "exchange.half_given", 6, "strip_share"},
	{"plantings.csv", "2,,,,,,,,,,,", "2,under,p4,,,,,,,,,", "exchange.to_ring", 5, "to"},
	{"plantings.csv", "between,p5", "under,p1", "exchange.to_other_bed", 5, "to"},
	{"plantings.csv", "after,p1", "moved,p3", "exchange.moved_before", 3, "date"},
	{"plantings.csv", "carrot,table,,seed,2027-04-12,2.25,after,p1", "beetroot,table,,seed,2027-04-12,2.25,moved,p1", "exchange.moved_other_crop", 3, "crop"},
	{"plantings.csv", "after,p1", "after,p77", "exchange.unknown", 3, "to"},
	{"plantings.csv", "after,p1", "after,", "exchange.half_given", 3, "to"},
	{"plantings.csv", "7.2,,,,sand", "7.2,,,,cellar", "exchange.unknown", 4, "store"},
	{"changes.csv", "area_m2,10.8", "area,10.8", "plan.field_unknown_near", 2, "field"},
	{"changes.csv", "area_m2,10.8", "area_m2,108", "exchange.area_too_large", 2, "value"},
	{"changes.csv", "area_m2,10.8", "area_m2,much", "plan.value_number", 2, "value"},
	{"changes.csv", "area_m2,10.8", "bed,h2", "exchange.area_too_large", 2, "value"},
	{"changes.csv", "bed=f1", "bed=f9", "exchange.unknown_near", 3, "value"},
	{"changes.csv", "crop=carrot", "crop=carot", "crop.unknown", 3, "value"},
	{"changes.csv", "more,1,set", "more,2,set", "exchange.same_order", 3, "order"},
	{"changes.csv", "more,3,remove", "main,3,remove", "exchange.not_a_draft", 4, "plan"},
	{"changes.csv", "remove,p4", "remove,p44", "plan.planting_unknown", 4, "planting"},
	{"changes.csv", "area_m2,10.8", "strip_share,0.4", "exchange.half_given", 2, "value"},
	{"changes.csv", "remove,p4,,", "set,p5,bed,h1", "exchange.to_other_bed", 4, "value"},
	{"changes.csv", "p6,date,2027-06-10", "p6,relation,moved", "exchange.half_given", 5, "value"},
	{"wishes.csv", "pin,p4", "pin,p44", "exchange.unknown_near", 2, "planting"},
	{"wishes.csv", "pin,p4", "pin,", "exchange.wish_needs", 2, "planting"},
	{"wishes.csv", "pin,p4,", "pin,p4,carrot", "exchange.wish_spare", 2, "crop"},
	{"wishes.csv", "pin,p4,,,", "forbid,,carrot,f1,", "exchange.wish_twice", 3, "crop"},
	{"wishes.csv", "pin,p4,,,", "hours,,,,7", "exchange.wish_twice", 4, "hours"},
	{"wishes.csv", "pin,p4", "keep,p4", "exchange.not_allowed", 2, "kind"},
	{"wishes.csv", ",carrot,", ",carot,", "crop.unknown", 3, "crop"},
	{"wishes.csv", ",carrot,", ",,", "exchange.wish_needs", 3, "crop"},
	{"wishes.csv", "carrot,f1", "carrot,f9", "exchange.unknown_near", 3, "bed"},
	{"wishes.csv", ",,,,0", ",,,,", "exchange.wish_needs", 4, "hours"},
	{"wishes.csv", ",,,,0", ",,,,169", "exchange.out_of_range", 4, "hours"},
	{"sites.csv", "118,valley,,,,", "118,valley,,,,hoses; wells", "exchange.site_rule", 3, "not_allowed"},
	{"own_jobs.csv", "j1,Oil the gate", "j1,", "exchange.blank", 2, "name"},
	{"own_jobs.csv", ",14,2027-06-01", ",0,2027-06-01", "exchange.out_of_range", 3, "every_d"},
	{"own_jobs.csv", ",14,2027-06-01", ",14,2027-02-01", "exchange.job_ends_first", 3, "until"},
	{"own_jobs.csv", ",14,2027-06-01", ",,2027-06-01", "exchange.job_once", 3, "until"},
	{"own_jobs.csv", "20,child", "20,nobody", "exchange.not_allowed", 2, "who"},
	{"own_jobs.csv", ",,p4,", ",,p44,", "exchange.unknown_near", 3, "planting"},
	{"job_answers.csv", "put off,2027-03-10", "put off,", "exchange.put_off_until", 3, "until"},
	{"job_answers.csv", "put off,2027-03-10", "put off,2027-01-10", "exchange.put_off_back", 3, "until"},
	{"job_answers.csv", "done,,", "done,2027-03-02,", "exchange.until_spare", 2, "until"},
	{"job_answers.csv", "2027-02-27,hoe", "2029-02-27,hoe", "exchange.after_today", 2, "date"},
	{"job_answers.csv", "hoe:f1:2027:1", "hoe f1", "exchange.not_an_id", 2, "job"},
	{"wishes.csv", ",,,,0", ",,,,-1", "exchange.out_of_range", 4, "hours"},
	{"wants.csv", "w1,carrot", "w1,carrots", "exchange.vegetable_unknown_near", 2, "vegetable"},
	{"wants.csv", "w1,carrot", "w1,quartz", "exchange.vegetable_unknown", 2, "vegetable"},
	{"wants.csv", "w1,carrot", "w1,green manure", "exchange.vegetable_unknown", 2, "vegetable"},
	{"wants.csv", "06-01,09-30", "06-01,", "exchange.half_given", 2, "to"},
	{"wants.csv", "06-01,09-30", "06-01,31-09", "exchange.not_a_day", 2, "to"},
	{"wants.csv", "0.9", "-0.9", "exchange.out_of_range", 2, "kg_per_week"},
	{"wants.csv", "0.9,", "10001,", "exchange.out_of_range", 2, "kg_per_week"},
	{"holding.csv", "3.5,main", "0,main", "exchange.out_of_range", 2, "eaters"},
	{"holding.csv", "3.5,main", "-2,main", "exchange.out_of_range", 2, "eaters"},
	{"holding.csv", "3.5,main", "1001,main", "exchange.out_of_range", 2, "eaters"},
	{"wants.csv", "06-01,09-30", ",09-30", "exchange.half_given", 2, "from"},
	{"wants.csv", "06-01,09-30", "02-30,09-30", "exchange.not_a_day", 2, "from"},
	{"wants.csv", "0.9,", ",", "exchange.one_of", 2, "kg_per_week"},
	{"wants.csv", "09-30,,", "09-30,3,", "exchange.both_of", 2, "portions_per_eater"},
	{"wants.csv", "09-30,,,", "09-30,,flor,", "exchange.not_allowed_near", 2, "importance"},
	{"wants.csv", "09-30,,,", "09-30,,,0", "exchange.out_of_range", 2, "buy_kg_per_week"},
	{"wants.csv", "05-31,,,,", "05-31,,,,greens", "exchange.both_of", 3, "group"},
	{"wants.csv", "w2,carrot,", "w2,,", "exchange.one_of", 3, "vegetable"},
	{"wants.csv", "carrot,1.4,10-01,05-31,,,,", ",1.4,10-01,05-31,,,,green", "exchange.unknown_near", 3, "group"},
	{"wants.csv", "carrot,1.4,10-01,05-31,,,,", ",1.4,10-01,05-31,,,,bare", "exchange.group_empty", 3, "group"},
	{"groups.csv", "winter greens", "kale", "exchange.group_as_vegetable", 2, "name"},
	{"groups.csv", "nothing yet", "winter greens", "exchange.group_name_twice", 3, "name"},
	{"members.csv", "greens,leek", "greens,kale", "exchange.member_twice", 3, "vegetable"},
	{"members.csv", "greens,leek", "greens,leak", "exchange.vegetable_unknown_near", 2, "vegetable"},
	{"members.csv", "leek,2", "leek,0", "exchange.out_of_range", 2, "preference"},
	{"visits.csv", "2027-07-24", "2027-07-04", "exchange.to_before_from", 2, "to"},
	{"visits.csv", ",-2,", ",-4,", "exchange.fewer_than_none", 2, "eaters"},
	{"visits.csv", ",3,", ",three,", "exchange.not_a_number", 3, "eaters"},
	{"gaps_left.csv", "carrot,2027", "carot,2027", "exchange.vegetable_unknown_near", 2, "vegetable"},
	{"purchases.csv", "carrot,2026", "carot,2026", "exchange.vegetable_unknown_near", 2, "vegetable"},
	{"purchases.csv", "2026-06-30", "2026-06-01", "exchange.to_before_from", 2, "to"},
	{"gaps_left.csv", "2027-06-10", "2027-04-10", "exchange.to_before_from", 2, "to"},
	{"stores.csv", "3.5,14", "14,3.5", "exchange.summer_colder", 2, "summer_c"},
	{"stores.csv", "14,80,", "14,,", "exchange.capacity_untold", 2, "capacity_kg"},
	{"stores.csv", "14,80,", "14,0,", "exchange.out_of_range", 2, "capacity_kg"},
	{"stores.csv", "14,80,,", "14,80,,40", "exchange.capacity_twice", 2, "jars"},
	{"stores.csv", "14,80,,,,", "14,80,,,,moist", "exchange.not_allowed", 2, "humidity"},
	{"batches.csv", "sand,carrot", "sand,carot", "crop.unknown", 2, "crop"},
	{"batches.csv", "carrot,storage", "lettuce,leaf", "exchange.batch_does_not_keep", 2, "store"},
	{"batches.csv", "2026-10-28", "2027-10-28", "exchange.after_today", 2, "stored"},
	{"records.csv", "planted,p4", "planted,p8", "exchange.unknown_near", 2, "planting"},
	{"records.csv", "planted,p4", "picked,", "exchange.about_what", 2, "planting"},
	{"records.csv", "0,kg", ",kg", "exchange.half_given", 3, "value"},
	{"records.csv", "planted,p4,t1,,,,", "died,p4,t1,,,3,kg", "exchange.lost_unit", 2, "unit"},
	{"records.csv", "counted,,,sand,", "counted,,,,", "exchange.about_stored", 3, "store"},
	{"records.csv", "sand,,0,kg", ",b2,0,kg", "exchange.unknown_near", 3, "batch"},
	{"records.csv", "watered,,t1,,,", "watered,,t1,,b1,", "exchange.batch_not_counted", 4, "batch"},
	{"records.csv", "2027-02-27,counted,,,sand,", "2026-02-27,counted,,,sand,b1", "exchange.count_before_batch", 3, "date"},
	{"records.csv", "20,L", "20,share", "exchange.share_above_one", 4, "value"},
	{"records.csv", "watered,,t1", "watered,,", "exchange.about_either", 4, "planting"},
	{"weather.csv", "weather/days.csv", "weather/day.csv", "exchange.weather_file_missing", 2, "record"},
	{"weather.csv", "weather/days.csv", "../days.csv", "exchange.bad_file_name", 2, "record"},
	{"weather.csv", "weather/days.csv", "beds.csv", "exchange.file_is_table", 2, "record"},
	{"weather/days.csv", "2027-02-25", "2027-02-24", "station.date_twice", 3, "date"},
	{"weather/normals.csv", "1,1.9", "1,9.9", "station.minimum_above_maximum", 2, "tmin_c"},
	{"weather/normals.csv", "58,6.8", "58,19", "climate.normal_sun", 8, "sun_h"},
	{"beds.csv", "id,site,name", "id,site,title", "exchange.column_missing", 1, "name"},
	{"beds.csv", "id,site,name", "bed,site,name", "exchange.column_missing", 1, "id"},
	{"beds.csv", "id,site,name", "id,site,kind", "table.column_twice", 1, "kind"},
	{"holding.csv", "3.5,main,,,5,60\n", "3.5,main,,,5,60\ntwo,Second,Europe/London,,2,main,,,,\n", "exchange.one_row", 0, ""},
}

func TestEachFaultIsToldOnceAtItsPlace(t *testing.T) {
	book := testBook(t)
	for _, c := range faultsOfCells {
		t.Run(c.key+" in "+c.file, func(t *testing.T) {
			files := hand(t)
			change(t, files, c.file, c.old, c.new)
			h, report := CheckFolder(inFolder(files), book)
			if h != nil {
				t.Error("a faulty holding was returned")
			}
			if got := report.Faults; len(got) != 1 || got[0].Phrase.Key != c.key || got[0].At != (fault.Place{File: c.file, Row: c.row, Column: c.column}) {
				t.Errorf("got\n%v\nwant %s in row %d column %s", got, c.key, c.row, c.column)
			}
			for _, f := range report.Faults {
				checkWords(t, f)
			}
		})
	}
}

// checkWords holds a fault to a text that uses only values it has.
func checkWords(t *testing.T, f *fault.Error) {
	t.Helper()
	if !words.English().Has(f.Phrase.Key) {
		t.Errorf("%s has no text", f.Phrase.Key)
	}
	if text := words.English().Text(f.Phrase); strings.ContainsAny(text, "{}") || strings.Contains(text, "  ") {
		t.Errorf("%s reads %q", f.Phrase.Key, text)
	}
}

func TestMissingTables(t *testing.T) {
	for _, name := range []string{"holding.csv", "sites.csv", "beds.csv"} {
		files := hand(t)
		delete(files, name)
		_, report := CheckFolder(inFolder(files), testBook(t))
		if got := report.Faults; len(got) != 1 || got[0].Phrase.Key != "exchange.table_missing" || got[0].At.File != name {
			t.Errorf("%s: %v", name, got)
		}
	}
}

// Rows are named as the spreadsheet numbers them, blank rows counted.
func TestRowsAreThoseOfTheFile(t *testing.T) {
	files := hand(t)
	change(t, files, "plantings.csv", "p3,main", ",,\n\np3,main")
	change(t, files, "plantings.csv", "7.2", "14.5")
	_, report := CheckFolder(inFolder(files), testBook(t))
	if len(report.Faults) != 1 || report.Faults[0].At.Row != 6 {
		t.Error(report.Faults)
	}
}

func TestAWrongFileIsNotToldRowByRow(t *testing.T) {
	files := hand(t)
	files["beds.csv"] += strings.Repeat("x,y,z,q,a,b,c,d,e\n", 1000)
	_, report := ReadFolder(inFolder(files))
	last := report.Faults[len(report.Faults)-1]
	if len(report.Faults) != most+1 || last.Phrase.Key != "exchange.and_more" {
		t.Errorf("%d faults, the last %v", len(report.Faults), last)
	}
}

func TestRingOfDraftsIsTold(t *testing.T) {
	files := hand(t)
	change(t, files, "plans.csv", "main,As sown,", "main,As sown,most")
	_, report := CheckFolder(inFolder(files), testBook(t))
	if len(report.Faults) != 3 {
		t.Fatal(report.Faults)
	}
	for i, f := range report.Faults {
		if f.Phrase.Key != "exchange.base_ring" || f.At.Row != i+2 {
			t.Error(f)
		}
	}
}
