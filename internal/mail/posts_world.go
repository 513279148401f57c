package mail

import "creasefit/internal/measure"

const (
	canadaPage   = "Canada Post, Size requirements of Lettermail (archived copy, read November 2026)"
	auSizes      = "Australia Post, Regular letters and cards (2021)"
	auTips       = "Australia Post, Posting tips (archived copy, read November 2026)"
	auFlexible   = "Australia Post, Domestic letters (2025)"
	auRectangle  = "Australia Post, Compare letter services (2021)"
	upuLetters   = "Letter-post Regulations of the UPU, art. 203, as quoted by Korea Post and other posts (read November 2026)"
	upuStandards = "standardized items by the UPU, as quoted by Korea Post and the Cyprus post (read November 2026)"
)

// canada is Lettermail within the country.
var canada = Post{
	Name: "ca", Title: "Canada (Canada Post, Lettermail)", Unit: measure.Millimetre,
	Edition: "the post's own page on size requirements, archived copy read in November 2026",
	Classes: []Class{
		{Name: "standard", Title: "Standard Lettermail",
			Limits: canadaLimits(mm(245), mm(156), mm(5), grams(50), least(OfMass, grams(2)))},
		{Name: "other", Title: "Other Lettermail (Non-standard and Oversize)",
			Limits: canadaLimits(mm(380), mm(270), mm(20), grams(500),
				least(OfMass, grams(5)).graced(grams(3), "3 g for non-standard, 5 g for oversize pieces"))},
	},
	NotConfirmed: []string{"Which shapes are non-standard.", "Parcels: their limits are not in the table."},
}

// canadaLimits are the limits of one of its classes.
func canadaLimits(length, height, thickness, mass int64, leastMass Limit) []Limit {
	return join(within(canadaPage, face(mm(140), mm(90), length, height)...),
		within(canadaPage, least(OfThickness, mm(0.18)), most(OfThickness, thickness), leastMass, most(OfMass, mass)))
}

// australia is letters within the country.
var australia = Post{
	Name: "au", Title: "Australia (Australia Post)", Unit: measure.Millimetre,
	Edition: "the post's own pages of 2021 and 2025",
	Classes: []Class{
		{Name: "small-letter", Title: "Small letter or postcard", Rules: auRules(),
			Limits: join(within(auSizes, most(OfLength, mm(240)), most(OfHeight, mm(130)), most(OfThickness, mm(5))),
				within(auTips, below(OfMass, grams(250))))},
		{Name: "large-letter", Title: "Large letter", Rules: auRules(),
			Limits: join(within(auSizes, most(OfLength, mm(360)), most(OfHeight, mm(260)), most(OfThickness, mm(20))),
				within(auTips, most(OfMass, grams(500))))},
	},
	NotConfirmed: []string{"A least size.", "Parcels, which a piece is that no class takes: their limits are not in the table."},
}

func auRules() []Rule {
	return []Rule{
		{Has: Rigid, Why: "does not bend", Source: auFlexible},
		{Has: Irregular, Why: "is not a rectangle", Source: auRectangle},
	}
}

// upu is letters from one country to another.
var upu = Post{
	Name: "upu", Title: "International letters (Universal Postal Union)", Unit: measure.Millimetre,
	Edition: "the Letter-post Regulations as national posts quote them, read in November 2026",
	Classes: []Class{
		{
			Name: "standardized", Title: "Standardized letter",
			Limits: join(within(upuStandards, upuFace()...),
				within(upuStandards, most(OfLength, mm(235)), most(OfHeight, mm(120)).graced(mm(125), "120 mm by Korea Post, 125 mm by the Cyprus post"),
					most(OfThickness, mm(5)), most(OfMass, grams(20)), least(OfRatio, ratio(1.414214)).graced(ratio(1.4), "the square root of 2, for which the rules also write 1.4"))),
			Rules: []Rule{{Has: FoldedCard, Why: "is a folded card without an envelope", Source: upuStandards}},
		},
		{
			Name: "letter", Title: "Letter",
			Limits: join(within(upuLetters, upuFace()...),
				within(upuLetters, most(OfLength, mm(600)).graced(mm(602), upuAllows), most(OfSum, mm(900)).graced(mm(902), upuAllows), most(OfMass, grams(2000)))),
			Conditions: []string{"Rolls have limits of their own: length plus twice the diameter from 170 to 1040 mm, the length from 100 to 900 mm."},
		},
	},
	NotConfirmed: []string{"The numbers of the articles now in force, and the formats P, G and E.", "What a post takes beyond this: its own rules may be narrower."},
}

const upuAllows = "the rules allow for 2 mm"

// upuFace is the least size of any letter.
func upuFace() []Limit {
	return []Limit{least(OfLength, mm(140)).graced(mm(138), upuAllows), least(OfHeight, mm(90)).graced(mm(88), upuAllows)}
}
