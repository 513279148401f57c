package edge

import (
	"net/http"
	"net/http/httptest"
	"reflect"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// leastOf is the least value of each setting that is a number, as the environment
// writes it, and the next one below.
var leastOf = map[string][2]string{
	"MOST_URL": {"1", "0"}, "MOST_BODY": {"1", "0"}, "MOST_YIELD_BODY": {"1", "0"}, "MOST_IN_FLIGHT": {"1", "0"},
	"SOLVE_TIMEOUT": {"1ns", "0s"}, "READ_TIMEOUT": {"1ns", "0s"}, "WRITE_TIMEOUT": {"1ns", "0s"}, "IDLE_TIMEOUT": {"1ns", "0s"},
	"DRAIN_TIMEOUT": {"1ns", "0s"}, "QUEUE_TIMEOUT": {"1ns", "0s"}, "DEAR_QUEUE_TIMEOUT": {"1ns", "0s"}, "DRAIN_DELAY": {"0s", "-1ns"},
	"MOST_RUNNING": {"0", "-1"}, "MOST_DEAR": {"0", "-1"}, "MOST_STREAMS": {"0", "-1"}, "MOST_WAITING": {"0", "-1"}, "RECENT_BYTES": {"0", "-1"},
	"RATE_LIMIT": {"0", "-0.001"}, "RATE_BURST": {"0", "-1"}, "TRACE_SHARE": {"0", "-0.001"},
}

// TestEverySettingKeepsItsLeast: a number that the service cannot work with is said by
// its name, and by no other; every setting that is a number has such a bound.
func TestEverySettingKeepsItsLeast(t *testing.T) {
	for name, values := range leastOf {
		_, err := ReadConfig([]string{Prefix + name + "=" + values[0]})
		assert.NoError(t, err, "%s=%s", name, values[0])
		_, err = ReadConfig([]string{Prefix + name + "=" + values[1]})
		require.ErrorContains(t, err, Prefix+name+" must ", "%s=%s", name, values[1])
		assert.Equal(t, 1, strings.Count(err.Error(), Prefix), err)
	}
	for i := range reflect.TypeFor[Config]().NumField() {
		field := reflect.TypeFor[Config]().Field(i)
		switch field.Type.Kind() {
		case reflect.Int, reflect.Int64, reflect.Float64:
			assert.Contains(t, leastOf, field.Tag.Get("env"))
		}
	}
}

// TestPlacesFollowTheProcessors: cheap work has them all, dear work all but one unless
// there is only one, and streams wait more than they work.
func TestPlacesFollowTheProcessors(t *testing.T) {
	before := runtime.GOMAXPROCS(0)
	defer runtime.GOMAXPROCS(before)
	for processors, want := range map[int][3]int{1: {1, 1, 16}, 2: {2, 1, 32}, 4: {4, 3, 64}} {
		runtime.GOMAXPROCS(processors)
		cheap, dear, streams := DefaultConfig().Places()
		assert.Equal(t, want, [3]int{cheap, dear, streams}, "%d processors", processors)
	}
}

// TestEverythingWrongIsSaidAtOnce: settings that cannot be read hide none that nobody
// knows, and all that would not work are listed.
func TestEverythingWrongIsSaidAtOnce(t *testing.T) {
	_, err := ReadConfig([]string{"CREASEFIT_MOST_BODDY=1", "CREASEFIT_MOST_URL=many", "CREASEFIT_IDLE_TIMEOUT=x", "OTHER=1"})
	for _, said := range []string{"CREASEFIT_MOST_BODDY is no setting; did you mean CREASEFIT_MOST_BODY?", "many", "IdleTimeout"} {
		assert.ErrorContains(t, err, said)
	}
	_, err = ReadConfig([]string{"CREASEFIT_MOST_URL=0", "CREASEFIT_TRUSTED_PROXIES=10.0.0.0/8,here,10.0.0.0/99", "CREASEFIT_ALLOWED_ORIGINS=*,tidewater", "CREASEFIT_RATE_LIMIT=1000001"})
	for _, said := range []string{"MOST_URL must be above zero", `"here" is neither`, `"10.0.0.0/99" is neither`, "* stands alone", `"tidewater" is no origin`, "RATE_LIMIT: it must not be above 1000000"} {
		assert.ErrorContains(t, err, said)
	}
	for _, number := range []string{"NaN", "+Inf"} {
		for _, name := range []string{"RATE_LIMIT", "TRACE_SHARE"} {
			_, err = ReadConfig([]string{Prefix + name + "=" + number})
			assert.ErrorContains(t, err, Prefix+name, number)
		}
	}
}

// TestLinesOfKeys: a name and a hash, a rate and a burst if they are wanted; what is
// wrong is said with the number of its line.
func TestLinesOfKeys(t *testing.T) {
	hash := strings.Repeat("0f", 32)
	list, err := parseKeys(strings.NewReader("\n# all\nstall " + hash + " # open\nshop " + hash + " 0.5 1\nfast " + hash + " 1000000 3\n"))
	require.NoError(t, err)
	require.Len(t, list, 3)
	assert.Equal(t, []any{"stall", 0.0, 0}, []any{list[0].Name, list[0].Rate, list[0].Burst})
	assert.Equal(t, []any{"shop", 0.5, 1}, []any{list[1].Name, list[1].Rate, list[1].Burst})
	for line, said := range map[string]string{
		"stall": "it is not a name", "stall " + hash + " 5": "it is not a name", "stall " + hash + " 5 1 2": "it is not a name", "st.all " + hash: "it is not a name",
		"stall 0f": "is not the SHA-256", "stall " + strings.Repeat("0g", 32): "is not the SHA-256", "stall " + hash + "00": "is not the SHA-256",
		"stall " + hash + " 0 1": "not above zero", "stall " + hash + " x 1": "not above zero", "stall " + hash + " 1 0": "not above zero", "stall " + hash + " 1 x": "not above zero",
		"stall " + hash + " NaN 1": "not above zero", "stall " + hash + " +Inf 1": "above 1000000", "stall " + hash + " 1000001 1": "above 1000000",
	} {
		_, err := parseKeys(strings.NewReader("# one\n" + line))
		assert.ErrorContains(t, err, "line 2: ", line)
		assert.ErrorContains(t, err, said, line)
	}
}

// TestWhoseAnswersMayBeRead: everybody's page, or those of a list alone, and caches are
// told what the answer depends on.
func TestWhoseAnswersMayBeRead(t *testing.T) {
	from := func(origin string) http.Header { return http.Header{"Origin": {origin}} }
	all := NewOrigins([]string{" * "})
	assert.Equal(t, []string{"*"}, all.Allow(from("https://tidewater.example")))
	assert.Equal(t, []string{"*"}, all.Allow(http.Header{}))
	assert.Equal(t, []string{"Accept-Encoding"}, all.Vary)
	assert.Equal(t, []string{"Accept-Encoding, Accept"}, all.VaryAccept)
	some := NewOrigins([]string{"https://tidewater.example", " https://tea.example:8443"})
	assert.Equal(t, []string{"https://tea.example:8443"}, some.Allow(from("https://tea.example:8443")))
	assert.Nil(t, some.Allow(from("https://tea.example")))
	assert.Nil(t, some.Allow(http.Header{}))
	assert.Equal(t, []string{"Accept-Encoding, Origin"}, some.Vary)
	assert.Equal(t, []string{"Accept-Encoding, Accept, Origin"}, some.VaryAccept)
	assert.ErrorContains(t, CheckOrigins(nil), "names no origin")
}

// TestWhoIsBehindAProxy: only as many addresses are believed as trusted proxies wrote
// them, from the nearest on.
func TestWhoIsBehindAProxy(t *testing.T) {
	proxies, err := ParseProxies([]string{"10.0.0.0/8", " 192.0.2.7 "})
	require.NoError(t, err)
	for _, c := range []struct {
		peer, forwarded, want string
	}{
		{"10.1.2.3:80", "", "10.1.2.3"},
		{"10.1.2.3:80", "203.0.113.9", "203.0.113.9"},
		{"10.1.2.3:80", "198.51.100.1, 203.0.113.9", "203.0.113.9"},
		{"10.1.2.3:80", "198.51.100.1, 192.0.2.7", "198.51.100.1"},
		{"10.1.2.3:80", "198.51.100.1, nonsense", "10.1.2.3"},
		{"192.0.2.8:80", "198.51.100.1", "192.0.2.8"},
		{"[::ffff:10.1.2.3]:80", "203.0.113.9", "203.0.113.9"},
		{"10.1.2.3:80", "2001:db8:1:2:3:4:5:6", "2001:db8:1:2::/64"},
		{"[fe80::1%eth0]:80", "", "fe80::/64"},
		{"@", "198.51.100.1", "@"},
	} {
		r := httptest.NewRequest(http.MethodGet, "/", nil)
		r.RemoteAddr = c.peer
		if c.forwarded != "" {
			r.Header.Set("X-Forwarded-For", c.forwarded)
		}
		assert.Equal(t, c.want, proxies.Address(r), "%s %s", c.peer, c.forwarded)
	}
}
