// Package sheet says what a cutting order and a cut plan are: sheets, blanks
// wanted of them, and edge-to-edge cuts on a hand trimmer that give them, in the
// order in which a person makes them.
//
// It checks orders and writes the steps of a plan. Package search finds plans,
// package verify replays them.
//
// The package sees rectangles only. It does not know enclosures, presets or
// the wire, it does not choose a sheet's grain, and it draws nothing.
package sheet
