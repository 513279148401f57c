package own_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
)

// readFaults are what is wrong with a text before it is solved.
func readFaults(t *testing.T, design string) fault.Faults {
	t.Helper()
	_, err := own.Read([]byte(design))
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	return faults
}

// has reports whether a fault of that code is told at a place.
func has(faults fault.Faults, code fault.Code, place string) bool {
	for _, f := range faults {
		if f.Code == code && f.Field == place {
			return true
		}
	}
	return false
}

// TestADesignMayHaveSoMuch, and one more is refused where it stands.
func TestADesignMayHaveSoMuch(t *testing.T) {
	row := func(n int) string {
		all := []string{`{"panel":"p0"}`}
		for i := 1; i < n; i++ {
			all = append(all, fmt.Sprintf(`{"panel":"p%d","on":"p%d","edge":"right","reach":"20 mm"}`, i, i-1))
		}
		return strings.Join(all, ",")
	}
	pieces := func(n, panels int) string {
		all := make([]string, n)
		for i := range all {
			all[i] = fmt.Sprintf(`{"piece":"a%d","panels":[%s]}`, i, row(panels))
		}
		return `{"design":"x","pieces":[` + strings.Join(all, ",") + `]}`
	}
	joins := func(n int) string {
		return strings.Replace(pieces(1, 2), `]}]}`, `]}],"joins":[`+strings.TrimSuffix(strings.Repeat(`{"even":"p0","with":"p1"},`, n), ",")+`]}`, 1)
	}
	named := func(n int) string { return sleeveWith(`"panel":"left side"`, `"panel":"`+strings.Repeat("l", n)+`"`) }
	choosing := func(choice string) string {
		return strings.Replace(string(own.Simplest().Text), `"pieces":`, `"choices":[{"name":"foot",`+choice+`}],"pieces":`, 1)
	}
	word := func(n int) string { return choosing(`"of":["open","` + strings.Repeat("w", n) + `"]`) }
	count := func(n int) string { return choosing(fmt.Sprintf(`"count":["%d","%[1]d"],"usual":"%[1]d"`, n)) }
	for name, c := range map[string]struct {
		make  func(n int) string
		most  int
		code  fault.Code
		place string
	}{
		"panels of a piece": {func(n int) string { return pieces(1, n) }, 64, fault.TooMany, "design.pieces[0].panels"},
		"pieces":            {func(n int) string { return pieces(n, 1) }, 8, fault.TooMany, "design.pieces"},
		"joins":             {joins, 64, fault.TooMany, "design.joins"},
		"a word to choose":  {word, 40, fault.Unreadable, "design.choices[0].of[1]"},
		"a count":           {count, 64, fault.Unreadable, "design.choices[0]"},
		"a name":            {named, 40, fault.TooMany, "design.pieces[0].panels[1].panel"},
	} {
		assert.False(t, has(readFaults(t, c.make(c.most)), c.code, c.place), "%s: %d are taken", name, c.most)
		assert.True(t, has(readFaults(t, c.make(c.most+1)), c.code, c.place), "%s: %d are not: %+v", name, c.most+1, readFaults(t, c.make(c.most+1)))
	}
	assert.Len(t, readFaults(t, strings.ReplaceAll(pieces(1, 40), `"edge":"right"`, `"edge":"across"`)), 20, "so many faults are told")
}

// TestNamesThatNothingHas are told with the nearest that something has.
func TestNamesThatNothingHas(t *testing.T) {
	for name, c := range map[string]struct{ design, place, detail, hint string }{
		"a size":   {sleeveWith(`"reach":"lap"`, `"reach":"lapp"`), "design.pieces[0].panels", "the design has no size called lapp", "lap"},
		"a panel":  {sleeveWith(`"to":"front"`, `"to":"frnt"`), "design.joins[0]", "there is no panel called frnt", "front"},
		"a member": {sleeveWith(`"reach":"lap"`, `"reech":"lap"`), "design.pieces[0].panels", "", "reach"},
	} {
		faults := readFaults(t, c.design)
		require.NotEmpty(t, faults, name)
		found := false
		for _, f := range faults {
			if strings.HasPrefix(f.Field, c.place) && strings.Contains(f.Detail, c.detail) && strings.Contains(f.Hint, c.hint) {
				found = true
			}
		}
		assert.True(t, found, "%s: %+v", name, faults)
	}
}

// TestWhatContradictsItself is told where it stands, each with what would mend it or what is
// wanted.
func TestWhatContradictsItself(t *testing.T) {
	const glue = `{"glue":"lap","to":"front"}`
	second := func(member string) string {
		return sleeveWith(`]}],"joins"`, `]},{"piece":"b",`+member+`"panels":[{"panel":"base"}]}],"joins"`)
	}
	for name, c := range map[string]struct {
		design, place, detail string
	}{
		"two statements": {sleeveWith(glue, `{"glue":"lap","to":"front","even":"lap","with":"front"}`), "design.joins[0]", "a join states one thing"},
		"no statement":   {sleeveWith(glue, `{"to":"front"}`), "design.joins[0]", "a join states one thing"},
		"over and round": {second(`"over":"sleeve","round":"sleeve",`), "design.pieces[1].round", "a piece goes over another one or round one"},
		"a wrong face":   {sleeveWith(glue, `{"glue":"lap","to":"front","face":"upper"}`), "design.joins[0].face", ""},
		"a wrong fold":   {sleeveWith(`"edge":"left"},{"panel":"front"`, `"edge":"left","fold":"upwards"},{"panel":"front"`), "design.pieces[0].panels[1].fold", ""},
	} {
		faults := readFaults(t, c.design)
		found := false
		for _, f := range faults {
			if f.Field == c.place && strings.Contains(f.Detail, c.detail) {
				found = true
				assert.NotEmpty(t, f.Expected+f.Hint, name)
			}
		}
		assert.True(t, found, "%s: %+v", name, faults)
	}
}

// TestSharesAreSmallFractions: of numbers from 1 to 16, and nothing else.
func TestSharesAreSmallFractions(t *testing.T) {
	for share, taken := range map[string]bool{"1/2": true, "1/16": true, "16/1": true, "16/16": true, "0/2": false, "1/0": false, "17/2": false, "1/17": false, "1": false, "a/2": false, "1/b": false, "-1/2": false, "": false} {
		faults := readFaults(t, sleeveWith(`"reach":"lap"`, `"reach":{"share":"`+share+`","of":"back"}`))
		found := false
		for _, f := range faults {
			found = found || strings.HasSuffix(f.Field, ".share")
		}
		assert.Equal(t, !taken, found, "%q: %+v", share, faults)
	}
}
