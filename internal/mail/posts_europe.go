package mail

import "creasefit/internal/measure"

const (
	ofcom     = "Ofcom, help page on large letters (archived copy, read November 2026)"
	ukMass    = "price lists of United Kingdom mailing houses (read November 2026)"
	germanSay = "press reports on the letter formats (2024, 2025)"
	germanOwn = "Deutsche Post, help page on letters and postcards (archived copy, read November 2026)"
	ibpt      = "IBPT, What is a standardised item? (read November 2026)"
	bpost     = "bpost, Normalisatie (archived copy, read November 2026)"
)

// uk is Royal Mail within the country.
var uk = Post{
	Name: "uk", Title: "United Kingdom (Royal Mail)", Unit: measure.Millimetre,
	Edition: "the regulator's page for the sizes, mailing houses' price lists for the masses, read in November 2026",
	Classes: []Class{
		{Name: "letter", Title: "Letter", Limits: ukLimits(mm(240), mm(165), mm(5), grams(100))},
		{Name: "large-letter", Title: "Large Letter", Limits: ukLimits(mm(353), mm(250), mm(25), grams(750))},
	},
	NotConfirmed: []string{"The least size, 100 x 70 mm.", "Parcels: their limits were found on trade pages only."},
}

// ukLimits are the limits of one of its classes.
func ukLimits(length, height, thickness, mass int64) []Limit {
	return join(within(ofcom, most(OfLength, length), most(OfHeight, height), most(OfThickness, thickness)),
		within(ukMass, most(OfMass, mass)),
		within("from memory", least(OfLength, mm(100)).hearsay(), least(OfHeight, mm(70)).hearsay()))
}

// germany is Deutsche Post within the country.
var germany = Post{
	Name: "de", Title: "Germany (Deutsche Post)", Unit: measure.Millimetre,
	Edition: "the press on the formats of 2024 and 2025, and the post's own help page",
	Classes: []Class{
		{Name: "standardbrief", Title: "Standardbrief", Rules: germanRules(),
			Limits:     join(germanFace(mm(140), mm(90), mm(235), mm(125), mm(5), grams(20)), within(germanSay, least(OfRatio, ratio(1.4)))),
			Conditions: []string{"Must bend enough for belts and rollers (Deutsche Post)."}},
		{Name: "kompaktbrief", Title: "Kompaktbrief", Rules: germanRules(),
			Limits: join(germanFace(mm(100), mm(70), mm(235), mm(125), mm(10), grams(50)), within(germanSay, least(OfRatio, ratio(1.4))))},
		{Name: "grossbrief", Title: "Großbrief", Rules: germanRules(),
			Limits: germanFace(mm(100), mm(70), mm(353), mm(250), mm(20), grams(500))},
		{Name: "maxibrief", Title: "Maxibrief", Rules: germanRules(),
			Limits: join(within(germanOwn, face(mm(100), mm(70), mm(353), mm(250))...), within(germanOwn, most(OfThickness, mm(50))),
				within(germanSay, most(OfMass, grams(1000))))},
	},
	NotConfirmed: []string{"Larger pieces, which some classes take for a surcharge, and parcels: their limits are not in the table."},
}

// germanFace are the limits of one of its classes but that of the ratio.
func germanFace(leastLength, leastHeight, mostLength, mostHeight, thickness, mass int64) []Limit {
	return join(within(germanSay, face(leastLength, leastHeight, mostLength, mostHeight)...),
		within(germanSay, most(OfThickness, thickness), most(OfMass, mass)))
}

func germanRules() []Rule {
	return []Rule{{Has: Irregular, Why: "is neither a rectangle nor a square and needs an envelope", Source: germanOwn}}
}

// belgium is what the regulator and the post call standardised.
var belgium = Post{
	Name: "be", Title: "Belgium (rules of the regulator, IBPT)", Unit: measure.Millimetre,
	Edition: "the regulator's page as read in November 2026, and the post's own page for the tolerance",
	Classes: []Class{{
		Name: "standardised", Title: "Standardised item",
		Limits: within(ibpt, least(OfLength, mm(140)).graced(mm(138), bpostAllows), least(OfHeight, mm(90)).graced(mm(88), bpostAllows),
			most(OfLength, mm(235)).graced(mm(237), bpostAllows), most(OfHeight, mm(125)).graced(mm(127), bpostAllows),
			least(OfThickness, mm(0.15)), most(OfThickness, mm(5)), most(OfMass, grams(50))),
		Rules: []Rule{
			{Has: Irregular, Why: "is not a rectangle", Source: ibpt},
			{Has: Plastic, Why: "is wrapped in plastic", Source: bpost},
			{Has: FoldedCard, Why: "is a folded card without an envelope", Source: bpost},
		},
		Conditions: []string{"The address is written along the length; rules for where it and the stamps go are not checked."},
	}},
	NotConfirmed: []string{"Items that are not standardised: their limits are not in the table."},
}

const bpostAllows = "the post's own page allows for 2 mm, the regulator's does not"
