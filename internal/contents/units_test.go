package contents_test

import (
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/peer"
)

// GNU units knows sheets and envelopes by their area; with one published size
// for each name that is enough to find a misprint.
func TestGNUUnitsAgreesOnAreas(t *testing.T) {
	units := peer.Path(t, "units", "apt-get install -y units")
	for ours, theirs := range map[string]string{
		"sheet-a4": "A4paper", "sheet-a5": "A5paper", "sheet-a6": "A6paper", "sheet-a7": "A7paper",
		"envelope-c4": "C4paper", "envelope-c5": "C5paper", "envelope-c6": "C6paper", "envelope-c7": "C7paper",
		"envelope-b4": "B4paper", "envelope-b5": "B5paper", "envelope-b6": "B6paper",
		"envelope-us-a1": "envelopeA1size", "envelope-us-a2": "envelopeA2size", "envelope-us-a6": "envelopeA6size",
		"envelope-us-a7": "envelopeA7size", "envelope-us-a8": "envelopeA8size", "envelope-us-a9": "envelopeA9size",
		"envelope-us-a10": "envelopeA10size", "envelope-us-6-1-4": "envelope6_25size", "envelope-us-6-3-4": "envelope6_75size",
		"envelope-us-7": "envelope7size", "envelope-us-monarch": "envelope7_75size", "envelope-us-8-5-8": "envelope8_625size",
		"envelope-us-9": "envelope9size", "envelope-us-10": "envelope10size", "envelope-us-11": "envelope11size",
		"envelope-us-12": "envelope12size", "envelope-us-14": "envelope14size", "envelope-us-16": "envelope16size",
		"envelope-us-coin-1": "envelope1coin", "envelope-us-coin-3": "envelope3coin", "envelope-us-coin-4": "envelope4coin",
		"envelope-us-coin-5": "envelope5coin", "envelope-us-coin-6": "envelope6coin", "envelope-us-coin-7": "envelope7coin",
	} {
		out, err := exec.Command(units, "-t", "-o", "%.12g", theirs, "mm^2").Output()
		require.NoError(t, err, theirs)
		want, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
		require.NoError(t, err)
		item := lookup(t, ours)
		assert.InEpsilon(t, want, item.Width.Millimetres()*item.Height.Millimetres(), 1e-11, ours)
	}
}
