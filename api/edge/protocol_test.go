package edge

import (
	"context"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestLimitsAreToldAsTheDraftHasThem: quota and window in the policy, what is left and when
// there is more in the limit (draft-ietf-httpapi-ratelimit-headers).
func TestLimitsAreToldAsTheDraftHasThem(t *testing.T) {
	for _, c := range []struct {
		rate   float64
		burst  int
		policy string
		retry  int // seconds to wait once nothing is left
	}{
		{2, 5, `"calls";q=5;w=3`, 1}, {2, 4, `"calls";q=4;w=2`, 1}, {0.125, 1, `"calls";q=1;w=8`, 8}, {0.25, 3, `"calls";q=3;w=12`, 4}, {100, 0, `"calls";q=1;w=1`, 1},
	} {
		l := NewLimiter(c.rate, c.burst)
		quota := max(1, c.burst)
		for i := range quota {
			v := l.Take("one", Key{})
			assert.True(t, v.Allowed, "%v: call %d", c, i)
			assert.Equal(t, c.policy, v.Policy)
			assert.GreaterOrEqual(t, v.Remaining, quota-1-i, "%v", c)
			assert.True(t, strings.HasPrefix(v.Limit, `"calls";r=`+strconv.Itoa(v.Remaining)+";t="), v.Limit)
		}
		if c.rate < 1 { // so slow that nothing comes meanwhile
			v := l.Take("one", Key{})
			assert.False(t, v.Allowed)
			assert.Zero(t, v.Remaining)
			assert.Equal(t, c.retry, v.RetrySeconds())
			assert.Equal(t, `"calls";r=0;t=`+strconv.Itoa(c.retry), v.Limit)
			assert.True(t, l.Take("two", Key{}).Allowed, "each caller has its own")
		}
	}
	assert.Nil(t, NewLimiter(0, 10), "no limit")
	assert.Nil(t, NewLimiter(-1, 10))
	assert.Equal(t, []int{1, 1, 2, 61}, []int{(&Verdict{}).RetrySeconds(), (&Verdict{Reset: time.Second}).RetrySeconds(), (&Verdict{Reset: 1001 * time.Millisecond}).RetrySeconds(), (&Verdict{Reset: 60*time.Second + 1}).RetrySeconds()})
}

// TestAKeyHasARateOfItsOwn, as often as it has one; and who waits for a turn may go away.
func TestAKeyHasARateOfItsOwn(t *testing.T) {
	l := NewLimiter(0.125, 1)
	assert.Equal(t, `"calls";q=7;w=14`, l.Take("key tea", Key{Name: "tea", Rate: 0.5, Burst: 7}).Policy)
	assert.Equal(t, `"calls";q=1;w=8`, l.Take("key plain", Key{Name: "plain"}).Policy)
	ctx, leave := context.WithCancel(context.Background())
	leave()
	assert.Error(t, l.Wait(ctx, "key plain", Key{}), "nothing is left, and nobody waits")
	assert.NoError(t, l.Wait(context.Background(), "key other", Key{}))
}

// TestForgottenCallersBeginAnew, the oldest first, so that memory is bounded.
func TestForgottenCallersBeginAnew(t *testing.T) {
	l := NewLimiter(0.001, 1)
	assert.True(t, l.Take("first", Key{}).Allowed)
	for i := range mostCallers / 2 {
		l.Take(strconv.Itoa(i), Key{})
	}
	assert.False(t, l.Take("first", Key{}).Allowed, "it is still known")
	for i := range mostCallers {
		l.Take("again "+strconv.Itoa(i), Key{})
	}
	assert.LessOrEqual(t, len(l.young)+len(l.old), mostCallers)
	assert.True(t, l.Take("first", Key{}).Allowed, "it was forgotten")
}

// TestAnAddressThatIsToGo by the examples of RFC 9745, 2.1 and 4 (from memory): told on 30 June
// 2023, gone a year later.
func TestAnAddressThatIsToGo(t *testing.T) {
	told := time.Date(2023, 6, 30, 23, 59, 59, 0, time.UTC)
	h := http.Header{}
	Deprecated{told, told.AddDate(1, 0, 0).In(time.FixedZone("", 3600)), "/v1/sheets/sizes"}.Say(h)
	assert.Equal(t, http.Header{"Deprecation": {"@1688169599"}, "Sunset": {"Sun, 30 Jun 2024 23:59:59 GMT"}, "Link": {`</v1/sheets/sizes>; rel="successor-version"`}}, h)
}

// TestBrowsersWantPages: a GET or a HEAD whose first wish is HTML.
func TestBrowsersWantPages(t *testing.T) {
	const firefox = "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8"
	for accept, wants := range map[string]bool{firefox: true, "text/html": true, " text/html ;q=0.5": true, "*/*": false, "": false, "application/json, text/html": false, "text/htmlx": false} {
		for method, may := range map[string]bool{http.MethodGet: true, http.MethodHead: true, http.MethodPost: false} {
			assert.Equal(t, wants && may, WantsPage(method, accept), "%s %q", method, accept)
		}
	}
}

// scraped is what a collector reads.
func scraped(t *testing.T, m *Metrics) string {
	t.Helper()
	w := httptest.NewRecorder()
	m.Handler().ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/metrics", nil))
	require.Equal(t, http.StatusOK, w.Code)
	return w.Body.String()
}

// TestWhatIsCounted in the text format of Prometheus: answers by the class of their status,
// how long they took, whether they were remembered, and how lanes stand.
func TestWhatIsCounted(t *testing.T) {
	lane := NewLane("cheap", 3, 1, time.Minute)
	m := NewMetrics("1.2", "abc", lane)
	m.Count("solve", "band", http.StatusOK, 3*time.Millisecond)
	m.Count("solve", "band", http.StatusNoContent, 40*time.Millisecond)
	m.Count("solve", "", http.StatusUnprocessableEntity, 20*time.Second)
	m.Count("solve", "", http.StatusNotModified, time.Millisecond)
	m.Count("solve", "", http.StatusServiceUnavailable, time.Millisecond)
	m.Remembered(true)
	m.Remembered(false)
	m.Remembered(true)
	require.True(t, lane.Take())
	text := scraped(t, m)
	for _, line := range []string{
		`creasefit_answers_total{class="2xx",kind="band",route="solve"} 2`, `creasefit_answers_total{class="4xx",kind="",route="solve"} 1`,
		`creasefit_answers_total{class="3xx",kind="",route="solve"} 1`, `creasefit_answers_total{class="5xx",kind="",route="solve"} 1`,
		`creasefit_request_seconds_bucket{route="solve",le="0.0005"} 0`, `creasefit_request_seconds_bucket{route="solve",le="0.005"} 3`,
		`creasefit_request_seconds_bucket{route="solve",le="0.05"} 4`, `creasefit_request_seconds_bucket{route="solve",le="10"} 4`, `creasefit_request_seconds_count{route="solve"} 5`,
		`creasefit_recent_answers_total{remembered="yes"} 2`, `creasefit_recent_answers_total{remembered="no"} 1`,
		`creasefit_lane_free_places{lane="cheap"} 2`, `creasefit_lane_waiting{lane="cheap"} 0`, `creasefit_lane_shed_total{lane="cheap"} 0`,
	} {
		assert.Contains(t, text, line+"\n")
	}
	assert.Contains(t, text, `release="1.2",revision="abc"} 1`)
	m.Count("solve", "", 999, 0)
	assert.Contains(t, scraped(t, m), "creasefit_request_seconds_count{route=\"solve\"} 6\n", "no status is too odd to be counted")
}

// TestWhatCrawlersAreTold: pages may be found, calls may not (RFC 9309); whoever finds a
// weakness is told where to say so (RFC 9116 wants a contact and an end).
func TestWhatCrawlersAreTold(t *testing.T) {
	assert.Equal(t, []string{"User-agent: *", "Disallow: /v1/", "Allow: /", ""}, strings.Split(Robots, "\n"))
	fields := map[string]string{}
	for line := range strings.Lines(Security) {
		name, value, _ := strings.Cut(strings.TrimSpace(line), ": ")
		fields[name] = value
	}
	assert.True(t, strings.HasPrefix(fields["Contact"], "https://"))
	_, err := time.Parse(time.RFC3339, fields["Expires"])
	assert.NoError(t, err)
}
