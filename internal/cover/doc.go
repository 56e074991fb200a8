// Package cover changes a day's weather into the day under a cover: mesh,
// fleece, cloche, low tunnel, cold frame, tunnel, glasshouse, indoors. Crops
// know nothing of covers; they see the weather they grow in.
//
// At night a cover adds a little warmth under cloud and less, or none, under a
// clear sky; on a clear and still night a thin one may be colder than the open
// ground. In deep cold a closed cover gains from the ground, which stays near
// freezing: a layer is then worth a hardiness zone. By day the lift of the
// maximum rises with the sun toward a limit, as in an unheated house whose loss
// grows with its warmth, and falls with wind. Above a set temperature the cover
// is opened: what is left is the lift of an open cover, and a share of the rest
// because nobody opens in time. A cover with open sides and a closed top sheds
// the rain and lets the light through as ever, and keeps a part of the rest
// (data/sides.csv). How clear the sky is comes from the day's
// radiation against that above the air; the night is taken to be as clear as its
// day. A cover within another gets the weather under the outer one.
//
// All numbers stand in data/covers.csv with source and mark: seen, computed
// from what was seen, memory, judgement. Left out: the hours of the day, the
// size and orientation of a house, snow, wet film, shading paint and heating.
package cover
