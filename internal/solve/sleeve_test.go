package solve_test

import (
	"testing"

	"creasefit/internal/measure"
)

func TestSleeveExamples(t *testing.T) { checkWorked(t, "sleeve") }

func TestRandomSleevesFoldUp(t *testing.T) {
	checkRandom(t, "sleeve", measure.Millimetres(60), 2000)
}

func BenchmarkSolveSleeve(b *testing.B) { benchmarkKind(b, "sleeve") }
