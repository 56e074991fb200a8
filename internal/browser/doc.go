// Package browser drives the pages in a real browser, as people meet them: on a
// phone and at a desk, in light and dark, by mouse, finger and keyboard alone,
// with and without script, and on paper.
//
// It holds tests only. They run the built program, so that what is looked at is
// what is shipped: the command line, the server, the store, the bundled script
// and the stylesheet together. What a page says in detail is tested where it is
// made, in package web; here it is tested that a person can get there.
//
// Left out: other families of browsers, and real fingers on real glass.
package browser
