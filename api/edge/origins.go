package edge

import (
	"cmp"
	"errors"
	"fmt"
	"net/http"
	"net/netip"
	"net/url"
	"regexp"
	"strconv"
	"strings"
)

// AnyOrigin is the setting that lets the pages of every origin read answers.
const AnyOrigin = "*"

// Origins is whose pages may read answers, by the CORS protocol of the
// Fetch standard (WHATWG). The middleware that comes with echo varies by
// Origin even where everybody may read; caches would keep an answer for each
// page that asks.
type Origins struct {
	anybody []string            // Access-Control-Allow-Origin for all; nil with a list
	allowed map[string][]string // and for each origin of a list
	// Vary is the header of an answer, VaryAccept where the address alone does
	// not say which format is wanted. They are never changed.
	Vary, VaryAccept []string
}

// NewOrigins returns the rules for a list of origins that was checked.
func NewOrigins(origins []string) Origins {
	if len(origins) == 1 && strings.TrimSpace(origins[0]) == AnyOrigin {
		return Origins{anybody: []string{AnyOrigin}, Vary: []string{"Accept-Encoding"}, VaryAccept: []string{"Accept-Encoding, Accept"}}
	}
	x := Origins{allowed: map[string][]string{}, Vary: []string{"Accept-Encoding, Origin"}, VaryAccept: []string{"Accept-Encoding, Accept, Origin"}}
	for _, entry := range origins {
		origin := strings.TrimSpace(entry)
		x.allowed[origin] = []string{origin}
	}
	return x
}

// Allow returns the value of Access-Control-Allow-Origin for a request, nil if
// its page may not read the answer. An origin is compared byte by byte, as
// browsers do.
func (x *Origins) Allow(request http.Header) []string {
	if x.anybody != nil {
		return x.anybody
	}
	return x.allowed[request.Get("Origin")]
}

// CheckOrigins says what is wrong with a list of origins, naming each entry.
func CheckOrigins(origins []string) error {
	if len(origins) == 0 {
		return errors.New("it names no origin; " + AnyOrigin + " lets every page read answers")
	}
	var err error
	for _, entry := range origins {
		origin := strings.TrimSpace(entry)
		switch wanted := wantedOrigin(origin); {
		case origin == AnyOrigin && len(origins) > 1:
			err = errors.Join(err, errors.New(AnyOrigin+" stands alone: it lets every page read answers"))
		case origin == AnyOrigin:
		case wanted == "":
			err = errors.Join(err, fmt.Errorf("%q is no origin: write one such as https://tidewater.example", origin))
		case wanted != origin:
			err = errors.Join(err, fmt.Errorf("%q is not how browsers write an origin: write %s", origin, wanted))
		}
	}
	return err
}

// hostName is a host as browsers send it, but for IPv6 addresses.
var hostName = regexp.MustCompile(`^[a-z0-9._-]+$`)

// wantedOrigin returns the origin of an address as browsers send it (RFC 6454,
// 6.2): scheme and host in lower case, the port unless it is the scheme's own.
// It is empty for what has no such origin.
func wantedOrigin(address string) string {
	u, err := url.Parse(address)
	if err != nil {
		return ""
	}
	usual := map[string]string{"http": "80", "https": "443"}[u.Scheme]
	host, port := strings.ToLower(u.Hostname()), u.Port()
	if ip, err := netip.ParseAddr(host); err == nil && ip.Is6() {
		host = "[" + ip.String() + "]"
	} else if !hostName.MatchString(host) {
		return ""
	}
	number, err := strconv.ParseUint(cmp.Or(port, usual), 10, 16)
	switch origin := u.Scheme + "://" + host; {
	case usual == "" || err != nil || number == 0:
		return ""
	case port == "" || port == usual:
		return origin
	default:
		return origin + ":" + strconv.FormatUint(number, 10)
	}
}
