package api

import (
	"slices"

	"creasefit/internal/fault"
	"creasefit/internal/solve"
)

// portfolioRequest is a request for several enclosures round one another.
type portfolioRequest struct {
	layers []solve.Layer
	alone  []*reading // each layer as a request of its own
}

// layerRivals are the names that a layer takes from beside the layers, each
// with those that, named by the layer itself, stand in its place.
var layerRivals = map[int][]int{
	pStock: {pCaliper}, pCaliper: {pStock}, pGrammage: {pStock, pCaliper}, pSheet: nil, pGrain: {pSheet}, pStep: nil,
	pFit: {pClearanceMin, pClearanceMax}, pClearanceMin: {pFit}, pClearanceMax: {pFit},
}

// layerShared are the names that all layers have in common, and those of the
// contents, which only the innermost layer has.
var (
	layerShared   = []int{pUnit, pRuler, pBench, pCutTolerance, pScoreTolerance}
	layerContents = []int{pContents, pWidth, pHeight, pThickness, pContentsTolerance}
)

// layerOwn returns those of the common names that a layer may have itself.
func layerOwn(common []param) []param {
	own := make([]param, 0, len(layerRivals))
	for place := range common {
		if _, ok := layerRivals[place]; ok {
			own = append(own, common[place])
		}
	}
	return own
}

// portfolioRequest turns the values of a reading into layers.
func (r *reading) portfolioRequest(kinds map[string]kindItem) *portfolioRequest {
	q := &portfolioRequest{}
	if !r.has(pLayers) {
		r.missing(pLayers, "a portfolio needs its layers, the innermost first", "add layers=tray&layers=sleeve")
	}
	r.limitObjects(pLayers, solve.MostLayers)
	for i, text := range r.values[pLayers].texts {
		r.readLayer(q, text, entry("layers", i), kinds)
	}
	return q
}

// readLayer takes one layer.
func (r *reading) readLayer(q *portfolioRequest, text, place string, kinds map[string]kindItem) {
	name := text
	if isObject(text) {
		name = kindNamed(text)
	}
	known, ok := kinds[name]
	if !ok {
		r.report(noSuchItem(place+".kind", name), "")
		return
	}
	inner, ok := r.object(known.table, text, "kind")
	if !ok {
		r.adopt(inner, place)
		return
	}
	inner.refuseShared()
	taken := inner.takeFrom(r, len(q.layers) == 0)
	request := &solve.Request{Kind: known.kind}
	if len(q.layers) == 0 {
		inner.readContents(request)
		inner.requireSizes(request)
	}
	inner.readRest(request)
	own := pOwn + len(known.kind.Params)
	layer := solve.Layer{Request: request, Place: place, Turn: solve.Turn(max(0, slices.Index(turns, inner.values[own+layerTurned].text)))}
	q.layers = append(q.layers, layer)
	r.adoptFaults(inner, place, taken)
	clear(inner.values[own : own+2]) // a request for the layer alone has no such names
	q.alone = append(q.alone, inner)
}

// refuseShared reports names that stand beside the layers only.
func (r *reading) refuseShared() {
	for _, place := range slices.Concat(layerShared, layerContents) {
		if r.has(place) {
			r.report(fault.Fault{Code: fault.Conflict, Field: r.name(place), Value: r.values[place].text, Detail: "a layer has no " + r.name(place) + " of its own",
				Hint: "name it beside the layers; what a layer goes round is the layer before it"}, "")
		}
	}
}

// takeFrom fills in what a layer takes from beside the layers, and the contents
// if it is the innermost one; it returns the places that it has from there.
func (r *reading) takeFrom(outer *reading, innermost bool) map[string]bool {
	taken := map[string]bool{}
	take := func(place int) {
		r.values[place] = outer.values[place]
		taken[r.name(place)] = true
	}
	for _, place := range layerShared {
		take(place)
	}
	if innermost {
		for _, place := range layerContents {
			take(place)
		}
	}
	var own []int
	for place, rivals := range layerRivals {
		if !r.has(place) && !slices.ContainsFunc(rivals, r.has) && outer.has(place) {
			own = append(own, place)
		}
	}
	for _, place := range own { // after all, so that what is taken is no rival
		take(place)
	}
	return taken
}
