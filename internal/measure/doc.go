// Package measure is exact lengths: reading what people write, arithmetic,
// the marks of a ruler, and writing readings back.
//
// A Length is a whole number of nanometres, so sums of readings never drift.
// What the package writes with a Step it reads back to the same length.
//
// It does not know paper, requests or HTTP, it has no default unit, and it
// never rounds unless the caller names the step.
package measure
