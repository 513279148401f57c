package edge

import (
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestCallersAreTheirAddresses: what a caller writes is not believed unless a
// trusted proxy passed it on, and one with IPv6 cannot have 2^64 buckets.
func TestCallersAreTheirAddresses(t *testing.T) {
	trusted, err := ParseProxies([]string{"10.0.0.0/8", " 2001:db8:1::/48", "192.0.2.7"})
	require.NoError(t, err)
	for _, c := range []struct {
		proxies         Proxies
		peer, forwarded string
		want            string
	}{
		{nil, "198.51.100.9:4711", "203.0.113.5", "198.51.100.9"},
		{nil, "10.1.2.3:80", "203.0.113.5", "10.1.2.3"},
		{trusted, "198.51.100.9:4711", "203.0.113.5", "198.51.100.9"},
		{trusted, "10.1.2.3:80", "203.0.113.5", "203.0.113.5"},
		{trusted, "10.1.2.3:80", "203.0.113.5, 198.51.100.1", "198.51.100.1"},
		{trusted, "10.1.2.3:80", "203.0.113.5, 10.9.9.9, 192.0.2.7", "203.0.113.5"},
		{trusted, "10.1.2.3:80", "nonsense", "10.1.2.3"},
		{trusted, "10.1.2.3:80", "", "10.1.2.3"},
		{trusted, "[2001:db8:1::5]:443", "2001:db8:ffff:1:2:3:4:5", "2001:db8:ffff:1::/64"},
		{nil, "[2001:db8:7:8:1:2:3:4]:443", "", "2001:db8:7:8::/64"},
		{nil, "[::ffff:198.51.100.9]:443", "", "198.51.100.9"},
		{nil, "[fe80::1%eth0]:443", "", "fe80::/64"},
		{nil, "@", "", "@"},
	} {
		r := httptest.NewRequest(http.MethodGet, "/", nil)
		r.RemoteAddr = c.peer
		if c.forwarded != "" {
			r.Header.Set("X-Forwarded-For", c.forwarded)
		}
		assert.Equal(t, c.want, c.proxies.Address(r), "%+v", c)
	}
	_, err = ParseProxies([]string{"10.0.0.0/8", "proxy.example", "10.0.0.0/40"})
	assert.ErrorContains(t, err, `"proxy.example"`)
	assert.ErrorContains(t, err, `"10.0.0.0/40"`)
}

// TestKeysAreRotatedWhileItRuns writes the next key beside the old one, and then
// takes the old one out; a file that cannot be read changes nothing.
func TestKeysAreRotatedWhileItRuns(t *testing.T) {
	old, oldLine := NewKey("stall")
	next, nextLine := NewKey("stall")
	assert.NotContains(t, oldLine, strings.TrimPrefix(old, "cf_"))
	path := filepath.Join(t.TempDir(), "keys")
	require.NoError(t, os.WriteFile(path, []byte("# keys of the stall\n"+oldLine+" 5 10\n"), 0o600))
	var wrong []error
	keys, err := OpenKeys(path, func(err error) { wrong = append(wrong, err) })
	require.NoError(t, err)
	find := func(key string) bool {
		r := httptest.NewRequest(http.MethodGet, "/", nil)
		r.Header.Set("Authorization", "Bearer "+key)
		keys.looked = time.Time{}
		found, ok := keys.Find(r)
		assert.Equal(t, ok, found.Name == "stall")
		return ok
	}
	assert.True(t, find(old))
	assert.False(t, find(next))
	assert.False(t, find(""))
	require.NoError(t, os.WriteFile(path, []byte(oldLine+"\n"+nextLine+"\n"), 0o600))
	assert.True(t, find(old))
	assert.True(t, find(next))
	require.NoError(t, os.WriteFile(path, []byte("stall nonsense\n"), 0o600))
	assert.True(t, find(next))
	require.Len(t, wrong, 1)
	assert.ErrorContains(t, wrong[0], "line 1: the hash of stall")
	require.NoError(t, os.WriteFile(path, []byte(nextLine+"\n"), 0o600))
	assert.False(t, find(old))
	assert.True(t, find(next))
	_, err = OpenKeys(filepath.Join(t.TempDir(), "nothing"), nil)
	assert.Error(t, err)
}

// TestAFileOfKeysIsReadAgain when its time or its size is another, whichever, and not more often
// than once a second; who shows no key has none.
func TestAFileOfKeysIsReadAgain(t *testing.T) {
	_, one := NewKey("one")
	other, line := NewKey("two")
	path := filepath.Join(t.TempDir(), "keys")
	noon := time.Date(2026, 1, 1, 12, 0, 0, 0, time.UTC)
	write := func(text string, at time.Time) {
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
		require.NoError(t, os.Chtimes(path, at, at))
	}
	write(one+"\n", noon)
	keys, err := OpenKeys(path, func(err error) { assert.NoError(t, err) })
	require.NoError(t, err)
	asks := func(authorization string) bool {
		r := httptest.NewRequest(http.MethodGet, "/", nil)
		r.Header.Set("Authorization", authorization)
		_, ok := keys.Find(r)
		return ok
	}
	found := func() bool { keys.looked = time.Time{}; return asks("Bearer " + other) }
	write(line+"\n", noon)
	assert.False(t, found(), "of the time and the size that it was opened with")
	write(line+"\n", noon.Add(time.Hour))
	assert.True(t, found(), "as large, but of another time")
	write(one+" 5 10\n", noon.Add(time.Hour))
	assert.False(t, found(), "of the same time, but larger")
	keys.looked = time.Now().Add(time.Hour)
	write(line+"\n", noon)
	assert.False(t, asks("Bearer "+other), "it was looked at just now")
	assert.True(t, found())
	for _, none := range []string{"", "Basic " + other, other, "bearer " + other, "Bearer"} {
		assert.False(t, asks(none), none)
	}
}

// TestLimiterCountsEachCaller and says what is left.
func TestLimiterCountsEachCaller(t *testing.T) {
	assert.Nil(t, NewLimiter(0, 50))
	l := NewLimiter(0.001, 3)
	for left := 2; left >= 0; left-- {
		v := l.Take("one", Key{})
		assert.True(t, v.Allowed)
		assert.Equal(t, left, v.Remaining)
	}
	v := l.Take("one", Key{})
	assert.False(t, v.Allowed)
	assert.Equal(t, `"calls";q=3;w=3000`, v.Policy)
	assert.Regexp(t, `^"calls";r=0;t=[0-9]+$`, v.Limit)
	assert.Positive(t, v.RetrySeconds())
	assert.True(t, l.Take("two", Key{}).Allowed)
	assert.Equal(t, 6, l.Take("keyed", Key{Name: "keyed", Rate: 1, Burst: 7}).Remaining)
	for i := range mostCallers {
		l.Take(string(rune(i))+"x", Key{})
	}
	assert.LessOrEqual(t, len(l.young)+len(l.old), mostCallers)
}
