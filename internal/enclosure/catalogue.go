package enclosure

import "creasefit/internal/measure"

// kinds is the catalogue, in the order that it is listed in.
var kinds = []*Kind{
	slottedBand(),
	band(),
	sleeve(),
	envelope(),
	diagonalEnvelope(),
	pocket(),
	foldedCard(),
	slipcase(),
	matStack(),
	tuckCarton(),
	gussetBag(),
	pillowPack(),
	tray(),
	liddedBox(),
	prismBox(),
	drawerBox(),
	dividers(),
}

// Kinds returns the catalogue. The slice is shared and must not be changed.
func Kinds() []*Kind { return kinds }

// Lookup returns the kind of the given name.
func Lookup(name string) (*Kind, bool) {
	for _, k := range kinds {
		if k.Name == name {
			return k, true
		}
	}
	return nil, false
}

// describe writes a bound in the ruler's unit: up to the next mark.
func (in *Input) describe(l measure.Length) string {
	marks := measure.Marks(in.Unit)
	finest := marks[len(marks)-1]
	return finest.Format(finest.Up(l))
}
