// Package draw turns the desk's views into drawings: SVG as text, to be set into
// a page as it is.
//
// A drawing holds no words of its own, no script and no style attributes. Words
// come from the caller, among them the label that says in text what the drawing
// shows. Kinds of food are classes; what a class looks like, in light, in dark
// and on paper, is the stylesheet's.
//
// Ribbons are woven of ten threads. A thread carries a threshold, and it is drawn
// where the share of futures that reach its height is at least that: counting
// threads gives the odds.
package draw
