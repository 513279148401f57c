package api

// The general part of the specification. Paths, parameters and bodies come
// from the handlers and from the tables that requests are read with.
//
//	@title						Creasefit
//	@version					0.1.0
//	@description				The maths of hand-made paper enclosures: send the size of a thing and the thickness of a paper, get readings that can be cut, scored and slotted with a real ruler.
//	@description				Lengths are exact and have a unit. Unknown names are errors. GET and POST of the same names give the same answer.
//	@servers.url				/
//	@tag.name					enclosures
//	@tag.description			Kinds of enclosures and their measurements.
//	@tag.name					lengths
//	@tag.description			Any length on every ruler.
//	@tag.name					paper
//	@tag.description			Caliper, grammage and basis weight.
//	@tag.name					presets
//	@tag.description			Contents, papers, sheet sizes and benches by name, each with its source.
//	@tag.name					service
//	@tag.description			For operators and tools.
