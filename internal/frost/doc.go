// Package frost answers what stands where in the nights to come, what kills it, how
// likely it is, and which of the household's covers would save it; what is meant to be
// set out before the last frost; what a frost does to the blossom of fruit; and what is
// too hot under which cover.
//
// A night is named by its evening. Its minimum is that of the next day's date, under the
// cover that lies over the bed in the evening. The open minimum is that of the futures,
// which miss a forecast as forecasts miss (package climate). What stands
// there comes out of package outlook, under each future by itself: how old it is and how
// far it is hardened. The temperature that kills half of it is the crop book's; the
// first plants are lost a degree above.
//
// A minimum that is told for tonight stands for all futures and all sites. In a future
// whose own night is warmer by more than a degree the sky is then taken to be clear,
// as it is in a frost, and what is laid on the crop keeps little.
//
// Left out: frost that lies in hollows and the few degrees by which the air at the
// ground is colder than at the height of a screen (the crop book's figures are for the
// air at that height); water freezing in the leaves of wet plants; wind-chill; watering
// against frost; two covers other than fleece under a cover that stands clear of the crop;
// seed and sets in frozen ground; the wood of perennials.
package frost
