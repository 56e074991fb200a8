// Package outlook computes the table a year ahead: every bed under every
// future, then every group of vegetables that share stores under every future,
// then the weeks.
//
// Results are kept under the hash of what they depend on: a bed's outcomes under
// its plantings, its own light and covers, its soil, the weather and the seed; a
// larder group's courses under the outcomes that feed it, its wants, stores and
// batches. So an edit computes only what depends on it, and the table after an
// edit is bit for bit the one of a cold run. Futures are shared out to workers;
// each writes only its own place, so that the number of workers changes nothing.
package outlook
