package tell

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/api/wire"
)

// Values that come again, and such as differ in one member alone, are written as
// encoding/json writes them.
func TestWhatComesAgainIsWrittenAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Custom(func(t *rapid.T) wire.Length {
			number := rapid.SampledFrom([]float64{0, 1, -2.5, 92.075, 0.000001, -0.25})
			return wire.Length{Reading: rapid.SampledFrom([]string{"", "3 5/8 in", "92 mm"}).Draw(t, "reading"), In: number.Draw(t, "in"), MM: number.Draw(t, "mm"),
				ExactMM: number.Draw(t, "exact"), OffMM: number.Draw(t, "off"), Papers: rapid.IntRange(-1, 1).Draw(t, "papers")}
		})
		lengths := rapid.SliceOfN(length, 1, 4).Draw(t, "different")
		list := rapid.SliceOfN(rapid.SampledFrom(lengths), 0, 200).Draw(t, "list")
		want, err := json.Marshal(append([]wire.Length{}, list...))
		require.NoError(t, err)
		require.Equal(t, string(want), string(AppendJSON(nil, list)))
	})
}
