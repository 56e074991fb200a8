// Package risk tells from the weather when published rules for diseases and
// pests fire, and when frost or heat puts a crop at risk.
//
// A rule looks at hours (Weather) and gives a Reading for each day: a value, a
// running sum where it sums, and whether it fired. What a rule is made of lies in
// data: rules.csv (which rule, of which form, for which crops, from where),
// numbers.csv (its thresholds), severity.csv and schedule.csv (tables that it
// looks up), pests.csv (sums of warmth), advice.csv and measures.csv (what growers
// do about it, cultural measures first). Each number has unit, mark and source: seen
// was read, memory is recalled, computed follows from what was read, judgement is
// our own, practice is common practice. Rules share a few forms, which are the
// code: days with humid hours, humid spells, sums of severity values, and so on.
//
// Days are those of the record's own dates; one with fewer than 22 known hours does
// not count. Rules that look at days alone (step daily) are weaker, and so is every
// rule over hours that were made from daily extremes (FromDays).
//
// Left out: whether the spores are there, which no weather tells; the warmer and
// wetter air under covers; the sums of negative prognosis, whose coefficients could
// not be read; ring spot and pea moth, for which no rule over weather was found.
package risk
