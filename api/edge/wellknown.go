package edge

// Robots keeps crawlers from calculating: pages may be found, calls are for
// people (RFC 9309).
const Robots = "User-agent: *\nDisallow: /v1/\nAllow: /\n"

// Security says where to tell of a weakness (RFC 9116). It ends, so that nobody
// relies on what is no longer looked after.
const Security = "Contact: https://creasefit.example/security\nExpires: 2027-11-30T00:00:00Z\nPreferred-Languages: en, de\n"
