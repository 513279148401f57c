package edge

import (
	"errors"
	"fmt"
	"net"
	"net/http"
	"net/netip"
	"strings"
)

// Proxies are the addresses whose X-Forwarded-For is believed. None are unless
// they are named: a caller writes that header as easily as a proxy does.
type Proxies []netip.Prefix

// ParseProxies reads addresses and prefixes such as 10.0.0.0/8, and names every
// one that is neither.
func ParseProxies(list []string) (Proxies, error) {
	var proxies Proxies
	var wrong error
	for _, entry := range list {
		entry = strings.TrimSpace(entry)
		prefix, err := netip.ParsePrefix(entry)
		if address, other := netip.ParseAddr(entry); other == nil {
			prefix, err = netip.PrefixFrom(address, address.BitLen()), nil
		}
		if err != nil {
			wrong = errors.Join(wrong, fmt.Errorf("%q is neither an address nor a prefix: write one such as 10.0.0.0/8", entry))
			continue
		}
		proxies = append(proxies, prefix.Masked())
	}
	return proxies, wrong
}

// trusts reports whether an address is a trusted proxy's.
func (p Proxies) trusts(a netip.Addr) bool {
	for _, prefix := range p {
		if prefix.Contains(a) {
			return true
		}
	}
	return false
}

// Address returns who sent a request: the peer or, behind trusted proxies, the
// last address that none of them has. Someone with IPv6 has 2^64 addresses and
// more, so these are taken by their first 64 bits.
func (p Proxies) Address(r *http.Request) string {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		host = r.RemoteAddr
	}
	address, err := netip.ParseAddr(host)
	if err != nil {
		return host
	}
	address = address.Unmap()
	if len(p) > 0 {
		address = p.forwarded(address, r.Header.Values("X-Forwarded-For"))
	}
	if address.Is6() {
		prefix, _ := address.WithZone("").Prefix(64) // it has 128 bits
		return prefix.String()
	}
	return address.String()
}

// forwarded follows the header from its end as long as trusted proxies wrote it.
func (p Proxies) forwarded(peer netip.Addr, headers []string) netip.Addr {
	list := strings.Split(strings.Join(headers, ","), ",")
	for i := len(list) - 1; i >= 0 && p.trusts(peer); i-- {
		next, err := netip.ParseAddr(strings.TrimSpace(list[i]))
		if err != nil {
			break
		}
		peer = next.Unmap()
	}
	return peer
}
