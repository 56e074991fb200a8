// Package season is the day loop: all plantings of one bed under one future
// step together, day by day, all rates before all states (the order of de Wit's
// school of crop models, as in WOFOST).
//
// It builds the bed's own weather (cover, shade, soil), shares light between
// plantings that stand under or between each other, applies the rules that a
// season has for a crop (too hot, too slow), and keeps what each planting gives.
package season
