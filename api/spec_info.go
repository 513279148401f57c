package api

// The general part of the specification. Paths, parameters and bodies come
// from the handlers and from the tables that requests are read with.
//
//	@title						Creasefit
//	@version					0.1.0
//	@description				The maths of hand-made paper enclosures: send the size of a thing and the thickness of a paper, get readings that can be cut, scored and slotted with a real ruler.
//	@description				Lengths are exact and have a unit. Unknown names are errors. GET and POST of the same names give the same answer, and HEAD is answered wherever GET is.
//	@description				Answers may get further members at any time, so a caller leaves alone those it does not know; members that are listed as required stay, with their type and meaning. A name of a request that is not known is refused, never left alone.
//	@description				The types of this document hold for whole answers in JSON. The names format, pick, show, header and errors, an extension of the path such as .csv, and an Accept header ask for another: a table, a text, one value, or some members.
//	@description				In JSON a number may also be written as a text and a length as a number of the request's unit, and a single value stands for a list of one. /openapi-text.json is the same document with one form of each value, lengths as texts, and answers in JSON alone, for generators that want one type. /openapi/{kind}.json is what concerns one kind.
//	@servers.url				/
//	@tag.name					enclosures
//	@tag.description			Kinds of enclosures and their measurements.
//	@tag.name					lengths
//	@tag.description			Any length on every ruler.
//	@tag.name					paper
//	@tag.description			Caliper, grammage and basis weight.
//	@tag.name					mail
//	@tag.description			What posts make of a finished piece.
//	@tag.name					batch
//	@tag.description			Many calculations in one call.
//	@tag.name					presets
//	@tag.description			Contents, papers, sheet sizes and benches by name, each with its source.
//	@tag.name					service
//	@tag.description			For operators and tools.
