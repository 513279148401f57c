// The kits on the shelf. What stands here is the only thing to change for
// another kit: how it was asked for ("made" and "paper", names of the sizing
// service), what was cut and scored ("printed", names of its check), what the
// visitor is asked for ("sizes", each for one or more names), and what to say
// when another size of the check is out of its limits.
const KITS = [
  {
    "id": "tin-sleeve",
    "title": "Tin sleeve",
    "about": "A sleeve of card that slides over a flat tea tin, open at both ends. Ten to a packet, scored and ready to glue along one edge.",
    "thing": "tin",
    "kind": "sleeve",
    "made": { "width": "4 1/2 in", "height": "3 in", "thickness": "1 1/4 in" },
    "paper": { "caliper": "0.012 in", "fit": "easy", "ruler": "1/8 in", "scores": "two", "bench": "plotter" },
    "printed": { "blank": ["12 1/2 x 3 in"], "marks": ["4 5/8 in", "6 in", "10 5/8 in", "12 in"] },
    "sizes": [
      { "label": "Wide", "hint": "across the lid", "names": ["width"] },
      { "label": "Long", "hint": "the way it slides in", "names": ["height"] },
      { "label": "Deep", "hint": "lying flat, lid on", "names": ["thickness"] }
    ],
    "limits": {
      "height": { "title": "It goes in, but the length does not match.", "less": "The tin stands out of the sleeve by {}.", "more": "The sleeve is {} longer than the tin." }
    }
  },
  {
    "id": "honey-box",
    "title": "Honey jar box",
    "about": "A box with a lid for one jar of honey, standing up. Five to a packet, tray and lid scored, corner tabs to glue.",
    "thing": "jar",
    "kind": "lidded-box",
    "made": { "width": "2 5/8 in", "height": "2 5/8 in", "thickness": "3 1/2 in" },
    "paper": { "caliper": "0.018 in", "fit": "easy", "ruler": "1/16 in", "lid_depth": "1 in", "bench": "plotter" },
    "printed": {
      "blank": ["10 x 10 in", "4 7/8 x 4 13/16 in"],
      "marks": ["3 5/8 in", "6 3/8 in", "1 in", "3 7/8 in"],
      "rises": ["3 5/8 in", "6 3/8 in", "1 in", "3 13/16 in"],
      "depths": ["1 in"]
    },
    "sizes": [
      { "label": "Across", "hint": "at the widest place", "names": ["width", "height"] },
      { "label": "Tall", "hint": "with its lid on", "names": ["thickness"] }
    ]
  },
  {
    "id": "card-band",
    "title": "Tasting card band",
    "about": "A belly band that keeps a set of tasting cards together. Twenty-five to a packet, scored, glued at the back.",
    "thing": "set of cards",
    "kind": "band",
    "made": { "width": "3 1/2 in", "thickness": "1/4 in" },
    "paper": { "caliper": "0.012 in", "fit": "snug", "ruler": "1/16 in", "scores": "two", "bench": "plotter" },
    "printed": { "blank": ["8 1/4 x 1 1/2 in"], "marks": ["2 in", "2 5/16 in", "5 7/8 in", "6 3/16 in"], "depths": ["1/2 in"] },
    "sizes": [
      { "label": "Wide", "hint": "the side that the band goes round", "names": ["width"] },
      { "label": "Thick", "hint": "the whole set, lightly pressed", "names": ["thickness"] }
    ]
  }
];
