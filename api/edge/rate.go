package edge

import (
	"context"
	"math"
	"strconv"
	"sync"
	"time"

	"golang.org/x/time/rate"
)

// mostCallers is how many callers the limiter remembers at once. One that is
// forgotten begins with a full burst again.
const mostCallers = 1 << 16

// mostRate is more calls a second than anybody sends: a bucket that is filled
// endlessly fast cannot say what is left in it.
const mostRate = 1_000_000

// Limiter bounds how often each caller calls.
type Limiter struct {
	rate       float64
	burst      int
	mutex      sync.Mutex
	young, old map[string]*rate.Limiter
}

// NewLimiter allows calls a second, and burst of them at once; none for 0.
func NewLimiter(perSecond float64, burst int) *Limiter {
	if perSecond <= 0 {
		return nil
	}
	return &Limiter{rate: perSecond, burst: max(1, burst), young: map[string]*rate.Limiter{}}
}

// Verdict is what the limiter says of one call.
type Verdict struct {
	Allowed   bool
	Remaining int           // calls left at once
	Reset     time.Duration // until there is one more, or one at all
	Policy    string        // RateLimit-Policy, and
	Limit     string        // RateLimit, of draft-ietf-httpapi-ratelimit-headers
}

// of returns the bucket of a caller.
func (l *Limiter) of(caller string, key Key) *rate.Limiter {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	bucket, ok := l.young[caller]
	if !ok {
		if bucket, ok = l.old[caller]; !ok {
			perSecond, burst := l.rate, l.burst
			if key.Rate > 0 {
				perSecond, burst = key.Rate, key.Burst
			}
			bucket = rate.NewLimiter(rate.Limit(perSecond), burst)
		}
		if len(l.young) >= mostCallers/2 {
			l.young, l.old = map[string]*rate.Limiter{}, l.young
		}
		l.young[caller] = bucket
	}
	return bucket
}

// Wait counts one call of a caller that was let in already, when there is room
// for it; an error means that the caller went away first.
func (l *Limiter) Wait(ctx context.Context, caller string, key Key) error {
	return l.of(caller, key).Wait(ctx)
}

// Take counts one call of a caller.
func (l *Limiter) Take(caller string, key Key) Verdict {
	bucket := l.of(caller, key)
	now := time.Now()
	v := Verdict{Allowed: bucket.AllowN(now, 1)}
	tokens := bucket.TokensAt(now)
	v.Remaining = max(0, int(math.Floor(tokens+1e-9)))
	missing := math.Floor(tokens) + 1 - tokens
	v.Reset = time.Duration(missing / float64(bucket.Limit()) * float64(time.Second))
	seconds := strconv.Itoa(v.RetrySeconds())
	window := max(1, int(math.Ceil(float64(bucket.Burst())/float64(bucket.Limit()))))
	v.Policy = `"calls";q=` + strconv.Itoa(bucket.Burst()) + ";w=" + strconv.Itoa(window)
	v.Limit = `"calls";r=` + strconv.Itoa(v.Remaining) + ";t=" + seconds
	return v
}

// RetrySeconds is how long to wait, in whole seconds and at least one.
func (v *Verdict) RetrySeconds() int { return max(1, int(math.Ceil(v.Reset.Seconds()))) }
