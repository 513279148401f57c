package mail

import "creasefit/internal/measure"

const (
	dmm101    = "USPS Domestic Mail Manual 101 (updated 9 July 2023), "
	dmm2008   = "USPS Domestic Mail Manual 101 and 301 (2008, 2010), "
	notice59  = "USPS Notice 59 (January 1991)"
	cardRules = dmm101 + "6.2"
)

// us is domestic First-Class Mail. The length of letters and cards is the side
// parallel to the address as it is read (DMM 601.1.1.2).
var us = Post{
	Name: "us", Title: "United States (USPS, First-Class Mail within the country)", Unit: measure.Inch, ByAddress: true,
	Edition: "Domestic Mail Manual, letters and cards as updated on 9 July 2023, flats as of 2008 and 2010",
	Classes: []Class{
		{
			Name: "postcard", Title: "Postcard",
			Limits: join(within(cardRules, face(inch(5), inch(3.5), inch(6), inch(4.25))...),
				within(cardRules, least(OfThickness, inch(0.007)), most(OfThickness, inch(0.016)), most(OfMass, ounces(3.5)))),
			Rules: []Rule{
				{Lacks: SingleCard, Why: "is not said to be one unfolded card", Source: dmm101 + "6.2.4"},
				{Has: Uneven, Why: "is not equally thick all over", Source: dmm101 + "6.2.4"},
				{Has: Irregular, Why: "is not a rectangle", Source: cardRules},
			},
			Conditions: []string{"Not creased. Mailings at presort and automation prices may be up to 6 x 9 in (PostalPro, 13 August 2021)."},
		},
		{
			Name: "letter", Title: "Letter",
			Limits: join(within(dmm101+"1.1", face(inch(5), inch(3.5), inch(11.5), inch(6.125))...),
				within(dmm101+"1.1", least(OfThickness, inch(0.007)), most(OfThickness, inch(0.25)), most(OfMass, ounces(3.5)))),
			Rules:      []Rule{{Has: Irregular, Why: "is not a rectangle", Source: dmm101 + "1.1d"}},
			Surcharges: []Surcharge{nonmachinable()},
			Conditions: []string{"Square corners; those of card stock may be rounded by up to 1/8 in (DMM 101.1.1d)."},
		},
		{
			Name: "flat", Title: "Large envelope (flat)",
			Limits: join(within(dmm2008+"2.1", most(OfLongerSide, inch(15)), most(OfShorterSide, inch(12)), most(OfThickness, inch(0.75))),
				within(notice59, least(OfLength, inch(5)).unless(above(OfThickness, inch(0.25))),
					least(OfHeight, inch(3.5)).unless(above(OfThickness, inch(0.25))), least(OfThickness, inch(0.007))),
				within("from memory", most(OfMass, ounces(13)).hearsay())),
			Rules: []Rule{
				{Has: Box, Why: "is a box", Source: dmm2008 + "2.2"},
				{Has: Rigid, Why: "does not bend", Source: dmm2008 + "2.2a"},
				{Has: Irregular, Why: "is not a rectangle", Source: dmm2008 + "2.1"},
			},
			Conditions: []string{
				"Held over an edge by half and pressed 1 in from its own edge it must bend by at least 1 in (DMM 101.2.2a).",
				"Corners rounded by up to 1/8 in (DMM 301.1.1c). Equally thick; by how much the thickness may vary is not confirmed.",
			},
		},
	},
	NotConfirmed: []string{"The greatest mass of a flat, 13 oz.", "By how much the thickness of a flat may vary, 1/4 in.",
		"Parcels, which a piece is that no class takes: their limits are not in the table."},
}

// nonmachinable is the surcharge on letters that machines cannot sort.
func nonmachinable() Surcharge {
	return Surcharge{
		Name: "nonmachinable",
		Limits: within(dmm101+"1.1a and 1.2", least(OfRatio, ratio(1.3)), most(OfRatio, ratio(2.5)),
			least(OfThickness, inch(0.009)).unless(most(OfLength, inch(6)), most(OfHeight, inch(4.25)))),
		Rules: []Rule{
			{Has: Plastic, Why: "is not paper on the outside", Source: dmm101 + "1.2b"},
			{Has: Clasp, Why: "has a clasp, a string or a button", Source: dmm101 + "1.2c"},
			{Has: Uneven, Why: "is not equally thick all over", Source: dmm101 + "1.2d"},
			{Has: Rigid, Why: "does not bend", Source: dmm101 + "1.2"},
			{Has: addressAcross, Why: "has its address along the shorter side", Source: dmm101 + "1.2"},
		},
	}
}
