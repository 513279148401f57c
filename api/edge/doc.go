// Package edge is what stands between the network and the calls: whose pages
// may read, who calls and how often, which lane work runs in, what is kept and
// what is told of it. It knows HTTP but no call, and it writes no problems: it
// says what is so, and package api answers.
package edge
