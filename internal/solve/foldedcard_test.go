package solve_test

import (
	"testing"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

func TestRandomFoldedCardsFoldUp(t *testing.T) {
	checkRandom(t, "folded-card", measure.Millimetres(60))
}

func BenchmarkSolveFoldedCard(b *testing.B) { benchmarkKind(b, "folded-card") }

func BenchmarkSolveAccordionOfTwelve(b *testing.B) {
	r := request(b, "folded-card", "7 in", "0.03 in", "0.008 in", 1)
	r.Height = measure.MustParse("5 in")
	r.Options["fold"], r.Options["panels"] = enclosure.Value{Choice: "accordion"}, enclosure.Value{Count: 12}
	benchmarkSolve(b, r)
}
