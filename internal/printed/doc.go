// Package printed holds planting dates as advisory services print them, and the
// windows of the engine against them: how many days each date lies from the
// nearest window, and what the gardeners' rule of weeks from the frosts makes of
// the same dates.
package printed
