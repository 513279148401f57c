package edge

import (
	"errors"
	"fmt"
	"net/http"
	"net/netip"
	"slices"
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
	return slices.ContainsFunc(p, func(prefix netip.Prefix) bool { return prefix.Contains(a) })
}

// Address returns who sent a request: the peer or, behind trusted proxies, the
// last address that none of them has.
func (p Proxies) Address(r *http.Request) string {
	peer, known := peerOf(r.RemoteAddr)
	if !known {
		return r.RemoteAddr
	}
	if len(p) > 0 {
		peer = p.forwarded(peer, r.Header.Values("X-Forwarded-For"))
	}
	return nameOf(peer)
}

// Peer returns who calls from an address with a port; nobody that is known if it
// is a trusted proxy's.
func (p Proxies) Peer(remote string) string {
	peer, known := peerOf(remote)
	if !known || p.trusts(peer) {
		return ""
	}
	return nameOf(peer)
}

// peerOf reads an address, with a port or without.
func peerOf(remote string) (peer netip.Addr, known bool) {
	if with, err := netip.ParseAddrPort(remote); err == nil {
		return with.Addr().Unmap(), true
	}
	alone, err := netip.ParseAddr(remote)
	return alone.Unmap(), err == nil
}

// nameOf names a caller by address. Someone with IPv6 has 2^64 addresses and more,
// so these are taken by their first 64 bits.
func nameOf(address netip.Addr) string {
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
