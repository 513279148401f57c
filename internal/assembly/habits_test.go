package assembly_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The habits of the trade (common practice): lap before ends, dust flaps before
// lids, a lid with its tuck; a bag's top turned in, its lap, then its base; an
// envelope's sides, the bottom glued to them, the contents, the flap; the inner
// panel of a letter fold first; trays and drawers made before they go into one
// another.
func TestOrdersOfTheTrade(t *testing.T) {
	rows := []struct {
		kind    string
		options []string
		want    []string
	}{
		{"slotted-band", nil, []string{
			"fold: left side, right side, left tab, right tab", "put in: contents", "lock: left front, right front"}},
		{"band", nil, []string{"fold: left side, right side, inner half", "glue: outer half", "put in: contents"}},
		{"sleeve", nil, []string{"fold: left side, right side, lap", "glue: front", "put in: contents"}},
		{"envelope", []string{"thickness=2"}, []string{
			"fold: left flap, right flap", "glue: bottom panel", "put in: contents", "close: closing flap"}},
		{"diagonal-envelope", []string{"thickness=2"}, []string{
			"fold: right flap", "glue: bottom flap", "glue: left flap", "put in: contents", "close: top flap"}},
		{"folded-card", []string{"fold=letter"}, []string{"fold: inner panel", "fold: front"}},
		{"tuck-carton", nil, []string{
			"fold: left side, right side, lap", "glue: back",
			"fold: lower left dust flap, lower right dust flap", "fold: bottom lid, bottom tuck", "put in: contents",
			"close: upper left dust flap, upper right dust flap", "close: top lid, top tuck"}},
		{"gusset-bag", nil, []string{
			"glue: turn-over of the front, turn-over of the left front half, turn-over of the left back half, turn-over of the back, turn-over of the right front half, turn-over of the right back half",
			"fold: left front half, right front half, lap", "glue: back",
			"fold: flap of the front, flap of the left front half, flap of the left back half, flap of the right front half, flap of the right back half",
			"glue: base", "put in: contents"}},
		{"pillow-pack", nil, []string{
			"fold: lap", "glue: back", "fold: lower flap of the front, lower flap of the back", "put in: contents",
			"close: upper flap of the front, upper flap of the back"}},
		{"tray", nil, []string{
			"fold: bottom wall, top wall, lower left tab, lower right tab, upper left tab, upper right tab", "glue: left wall, right wall", "put in: contents"}},
		{"lidded-box", nil, []string{
			"fold: tray's bottom wall, tray's top wall, tray's lower left tab, tray's lower right tab, tray's upper left tab, tray's upper right tab",
			"glue: tray's left wall, tray's right wall",
			"fold: lid's bottom wall, lid's top wall, lid's lower left tab, lid's lower right tab, lid's upper left tab, lid's upper right tab",
			"glue: lid's left wall, lid's right wall", "put in: contents", "join: lid"}},
		{"drawer-box", nil, []string{
			"fold: tray's bottom wall, tray's top wall, tray's lower left tab, tray's lower right tab, tray's upper left tab, tray's upper right tab",
			"glue: tray's left wall, tray's right wall", "fold: sleeve's left side, sleeve's right side, sleeve's lap", "glue: sleeve's front",
			"put in: contents", "join: tray, contents"}},
		{"dividers", nil, []string{"lock: height strip, height strip"}},
		{"mat-stack", []string{"thickness=2"}, []string{"glue: layer 2"}},
	}
	for _, row := range rows {
		t.Run(row.kind, func(t *testing.T) {
			s, o := ordered(t, asked(t, row.kind, row.options...))
			assert.Equal(t, row.want, told(&s.Pattern, o))
		})
	}
}
