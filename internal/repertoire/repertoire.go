// Package repertoire lists the kinds that the service has by name, in the order that they
// are listed in everywhere: those that are made in Go and those that are given as designs.
package repertoire

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
)

var kinds = []*enclosure.Kind{
	own.Standing("slotted-band"),
	own.Standing("band"),
	enclosure.Sleeve(),
	enclosure.Envelope(),
	enclosure.DiagonalEnvelope(),
	enclosure.Pocket(),
	own.Standing("folded-card"),
	enclosure.Slipcase(),
	enclosure.MatStack(),
	enclosure.TuckCarton(),
	enclosure.GussetBag(),
	enclosure.PillowPack(),
	enclosure.Tray(),
	enclosure.LiddedBox(),
	enclosure.PrismBox(),
	enclosure.DrawerBox(),
	enclosure.Dividers(),
}

// Kinds returns all of them. The slice is shared and must not be changed.
func Kinds() []*enclosure.Kind { return kinds }

// Lookup returns the kind of the given name.
func Lookup(name string) (*enclosure.Kind, bool) {
	i := slices.IndexFunc(kinds, func(k *enclosure.Kind) bool { return k.Name == name })
	if i < 0 {
		return nil, false
	}
	return kinds[i], true
}
