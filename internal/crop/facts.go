package crop

// Use is one use of a crop with every parameter resolved: what the engine
// computes with. The book's files hold each number with unit, source and mark;
// data/parameters.csv says what each name means and the range it may take.
// The tag is the parameter's name in the files.
type Use struct {
	Crop      string // id of the crop, e.g. "carrot"
	Name      string // id of the use, e.g. "table"
	Label     string // what it is in words, e.g. "carrots for the table"
	Vegetable string // the name under which the table counts it, e.g. "carrot"
	Family    string // botanical family
	Class     string // hardiness class: hardy, half-hardy, tender, very tender
	Group     string // group of the window model: heads, leaves, roots, onions, legumes, fruit, potatoes, perennials, green manures
	Pattern   Pattern
	Methods   []string // methods allowed, commonest first (seed, plant, set, crown, cutting)

	// Emergence, in soil temperature at sowing depth.
	EmergeBaseC     float64 `fact:"emerge_base_c"`
	EmergeOptimumC  float64 `fact:"emerge_optimum_c"`  // rate no longer rises above it
	EmergeCeilingC  float64 `fact:"emerge_ceiling_c"`  // none above it
	EmergeThermalCd float64 `fact:"emerge_thermal_cd"` // thermal time above base to 50 % emergence [C d]
	SoilMinimumC    float64 `fact:"soil_minimum_c"`    // least mean soil temperature in the ten days round sowing
	EmergeLimitDays float64 `fact:"emerge_limit_days"` // seed is lost when it takes longer

	// Raising under cover, for method plant and cutting.
	RaiseDays float64 `fact:"raise_days"` // from sowing to planting out
	RaiseC    float64 `fact:"raise_c"`    // mean temperature of the raising place
	CellMl    float64 `fact:"cell_ml"`    // room for the roots of one plant [ml]

	// Development from emergence to first use.
	BaseC      float64 `fact:"base_c"`
	OptimumC   float64 `fact:"optimum_c"`
	CeilingC   float64 `fact:"ceiling_c"`
	DaysSeed   float64 `fact:"days_seed"`    // published days to maturity from sowing
	DaysPlant  float64 `fact:"days_plant"`   // from planting out (plant, cutting)
	DaysSet    float64 `fact:"days_set"`     // from set, clove, tuber or crown
	DaysFactor float64 `fact:"days_factor"`  // m: published days times this are the days at optimum warmth and light
	SlowFactor float64 `fact:"slow_factor"`  // s: over this many times the published days it has failed; 0: no limit (stands the winter)
	ReadyStage float64 `fact:"ready_stage"`  // stage from which a piece of usable size can be picked; 1: when mature
	GateStage  float64 `fact:"gate_stage"`   // development stops here until the gates below open; 0: no gate
	GateLongH  float64 `fact:"gate_long_h"`  // daylength that must be reached (bulbing); 0: none
	GateShortH float64 `fact:"gate_short_h"` // daylength that must be fallen below; 0: none
	GateChill  float64 `fact:"gate_chill_d"` // chill days that must be gathered (curd, bud, bulb); 0: none

	// Chill, and running to seed.
	ChillLowC     float64 `fact:"chill_low_c"`     // chill counts fully between low and high,
	ChillHighC    float64 `fact:"chill_high_c"`    // falling to nothing 5 C beyond either
	BoltChill     float64 `fact:"bolt_chill_d"`    // chill days before it can bolt; 0: needs none
	BoltJuvenile  float64 `fact:"bolt_juvenile"`   // stage before which chill does not count
	BoltLongH     float64 `fact:"bolt_long_h"`     // daylength needed to bolt; 0: any
	BoltThermalCd float64 `fact:"bolt_thermal_cd"` // thermal time above base_c, after chill and in long days, to a spoiled crop; 0: never bolts

	// Light and growth.
	RadiationUse    float64 `fact:"radiation_use"`  // g dry matter per MJ intercepted PAR
	Extinction      float64 `fact:"extinction"`     // k, per unit leaf area index
	LeafStartCM2    float64 `fact:"leaf_start_cm2"` // leaf area of a plant at emergence [cm2]
	LeafPlantCM2    float64 `fact:"leaf_plant_cm2"` // leaf area of a raised plant at planting out [cm2]
	LeafGrowth      float64 `fact:"leaf_growth"`    // greatest relative growth of leaf area, per day at optimum
	LeafPerGram     float64 `fact:"leaf_per_gram"`  // specific leaf area [m2/g]
	LeafMax         float64 `fact:"leaf_max"`       // greatest leaf area index
	HeightM         float64 `fact:"height_m"`       // full height
	RootDepthM      float64 `fact:"root_depth_m"`
	CropCoefficient float64 `fact:"crop_coefficient"` // basal Kcb at full cover (FAO-56)
	OrganStart      float64 `fact:"organ_start"`      // stage at which the picked organ begins to grow
	OrganShare      float64 `fact:"organ_share"`      // greatest share of new dry matter that goes to it
	DryMatter       float64 `fact:"dry_matter"`       // dry share of fresh weight
	YieldScale      float64 `fact:"yield_scale"`      // fitted: brings the reference planting to its published yield

	// The stand and its pieces.
	InRowM        float64 `fact:"in_row_m"`
	BetweenRowM   float64 `fact:"between_row_m"`
	Sparse        float64 // share of the plants of the book's full stand that it lacks, 0-1; the book's own uses lack none
	SowDepthM     float64 `fact:"sow_depth_m"` // of seed, set, clove or tuber; 0: not told or on the surface
	SowPerM       float64 `fact:"sow_per_m"`   // seeds sown in a metre of row
	SetG          float64 `fact:"set_g"`       // weight of a set, clove or tuber that is planted [g]
	PieceG        float64 `fact:"piece_g"`     // full size of one plant's harvest (one piece where one is pulled)
	UsableG       float64 `fact:"usable_g"`    // least usable size of it
	TableG        float64 `fact:"table_g"`     // usual size of it at the table; 0: none, as of dry seed
	YieldKgM2     float64 `fact:"yield_kg_m2"` // published typical yield of the reference planting
	YieldLowKgM2  float64 `fact:"yield_low_kg_m2"`
	YieldHighKgM2 float64 `fact:"yield_high_kg_m2"`
	SeedsPerGram  float64 `fact:"seeds_per_gram"`
	SeedLifeYears float64 `fact:"seed_life_years"`
	RotationYears float64 `fact:"rotation_years"` // before the family should come back

	// Cold and heat.
	KillYoungC           float64 `fact:"kill_young_c"`         // kills plants in their first 25 days
	KillC                float64 `fact:"kill_c"`               // kills grown plants that are not hardened
	KillHardenedC        float64 `fact:"kill_hardened_c"`      // kills hardened plants
	HeatStartC           float64 `fact:"heat_start_c"`         // mean air of the first fortnight must stay under
	HeatEndC             float64 `fact:"heat_end_c"`           // mean air from 15 days before ready to 5 after must stay under
	KeepDays             float64 `fact:"keep_days"`            // days it must live past ready for the crop to count
	FairShare            float64 `fact:"fair_share"`           // share of yield_kg_m2 below which it was not worth sowing
	DueAfterSolsticeDays float64 `fact:"due_after_solstice_d"` // days after midsummer by which a crop for winter or spring must be ready; 0: none

	// StartAfterSolsticeDays are the days after midsummer before which a crop that
	// stands the winter is not sown; what is planted or set follows raise_days
	// later. 0: it may be sown at any time of the year.
	StartAfterSolsticeDays float64 `fact:"start_after_solstice_d"`

	// Harvest.
	StandDays float64 `fact:"stand_days"`  // days at optimum warmth it stands usable after ready
	PickDays  float64 `fact:"pick_days"`   // length of picking at optimum warmth
	FlushDays float64 `fact:"flush_days"`  // days from one flush of fruit to the next; 0: even
	CutDays   float64 `fact:"cut_days"`    // days at optimum warmth from one cut to the next
	Cuts      float64 `fact:"cuts"`        // number of cuts
	HoldDays  float64 `fact:"hold_days"`   // days a ripe fruit or a grown cut stays good on the plant
	LeafShare float64 `fact:"leaf_share"`  // leaf-then-head: share of the yield taken as leaf first
	LiftAtEnd float64 `fact:"lift_at_end"` // 1: what still stands at the end is lifted for store

	// Perennials.
	SeasonThermalCd        float64    `fact:"season_thermal_cd"`      // thermal time above base_c after midwinter to first pick
	SeasonDays             float64    `fact:"season_days"`            // days of picking
	CloseAfterSolsticeDays float64    `fact:"close_after_solstice_d"` // last pick, days after midsummer; may be negative
	RenewYears             float64    `fact:"renew_years"`            // years in the ground after which new plants take over
	AgeYield               [6]float64 // share of full yield in years 0-5 and after (age_yield_0 .. age_yield_5)

	// Food, and spread that is not weather.
	EdibleShare  float64 `fact:"edible_share"`
	PortionG     float64 `fact:"portion_g"`

	StoreHumidity float64 `fact:"store_humidity"` // relative humidity in which it keeps best, 0-1

	StandLoss    float64 `fact:"stand_loss"`    // mean share of plants lost
	WeightSpread float64 `fact:"weight_spread"` // coefficient of variation of weight that is not weather
	DateSpread   float64 `fact:"date_spread_d"` // standard deviation of dates that is not weather [d]

	// The reference planting to which yields are fitted.
	ReferenceMethod string // one of Methods
	ReferenceDate   string // MM-DD in the north
	ReferenceCover  string // a cover kind

	Storage  []Storage
	Cautions []string // keys of the cautions to be shown

	resolved *resolved // where the numbers come from
	variety  string    // name of the variety that moved them
}

// Pattern is how a crop is harvested. The list is closed and documented.
type Pattern string

// The harvest patterns.
const (
	Pull         Pattern = "pull"           // one pull, keeps for a while in the ground
	Picking      Pattern = "picking"        // repeated picking of fruit, with flushes where the crop has them
	Cut          Pattern = "cut"            // cut and come again
	LeafThenHead Pattern = "leaf then head" // leaves first, head later
	Perennial    Pattern = "perennial"      // the same plants year after year
	GroundCover  Pattern = "ground cover"   // covers its ground and feeds nobody: green manure
)

// Storage is one way a crop keeps.
type Storage struct {
	Method    string
	BestC     float64 // temperature at which LifeDays holds [C]
	LifeDays  float64 // life at BestC for sound produce, home figures where there are any
	Q10       float64 // the life is divided by this for each 10 C above BestC; 1: dormancy decides
	FloorC    float64 // below it, chilling shortens the life again
	LossShare float64 // share lost on preparing and trimming
	LossMonth float64 // share of the rest lost a month
	Humidity  float64 // relative humidity in which the crop keeps best, 0-1; 0: not told

	Source, Where, Mark, Note string // where the numbers come from
}

// Override is one number of the grower's own in place of the book's.
type Override struct {
	ID, Crop, Use, Parameter string
	Value                    string
	Unit                     string
	Source                   string
}

// Variety is a variety of the holding, as offsets on a use of a crop.
type Variety struct {
	ID, Name    string
	Crop, Use   string
	DaysOffset  float64 // days later (+) or earlier (-) to maturity
	YieldFactor float64 // 1: as the crop
	KillShiftC  float64 // hardier when negative
	BoltFactor  float64 // thermal time to bolting times this; 1: as the crop
	SizeFactor  float64 // piece size times this; 1: as the crop
}
