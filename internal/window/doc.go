// Package window answers from when until when a crop may be sown or planted at
// a place: it runs the season of every sowing day over many years of weather and
// finds the stretches of the year in which the chance of a usable crop is high.
//
// A year is a success when the use is one to be started at that time of the
// year, the ground is warm enough round sowing, the crop comes ready within its
// time, and it lives its days past ready. Seasons are judged by their own best:
// where a season never reaches the wanted chance, the dates within 15 % of its
// best are given, with that chance, and "never" is answered with the best there
// is. The ends are smoothed over neighbouring sowing days, and the year is a
// circle.
package window
