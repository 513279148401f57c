package api

import (
	"crypto/sha256"
	"encoding/base64"
	"encoding/binary"
	"io"
	"os"
	"runtime/debug"
	"sync"

	"creasefit/api/ask"
	"creasefit/api/edge"
	"creasefit/api/tell"
	"creasefit/api/wire"
)

// Release is the version that people read; what tells two builds apart is the
// revision.
const Release = "0.1.0"

// requestKey identifies an answer before it is narrowed and encoded: two
// requests have the same one only if the same bytes answer both.
type requestKey [sha256.Size]byte

// keyOf returns the key of a request in a format, with the order of work or
// without. In it are the build, the call and what was asked.
func keyOf(r *ask.Reading, path string, f tell.Format, ordered bool) requestKey {
	b := ask.AppendParts(make([]byte, 0, 512), Revision(), path)
	b = binary.AppendUvarint(b, uint64(f))
	if ordered {
		b = ask.AppendParts(b, wire.MemberOrder)
	}
	return sha256.Sum256(r.AppendKey(b))
}

// entityTag returns the tag of an answer as it is sent: narrowed, in a format
// and an encoding.
func (k *requestKey) entityTag(o *options, coding string) string {
	b := ask.AppendParts(append(make([]byte, 0, 256), k[:]...), o.pick)
	b = binary.AppendUvarint(b, uint64(len(o.show)))
	b = ask.AppendParts(ask.AppendParts(b, o.show...), o.download)
	if o.page {
		b = ask.AppendParts(b, "page")
	}
	return edge.Tag(b, o.format.String(), coding)
}

// Revision identifies this build in every key and tag: the revision of the
// source where the program was built from a clean one, or else a hash of the
// program itself.
var Revision = sync.OnceValue(func() string {
	info, ok := debug.ReadBuildInfo()
	if ok {
		if revision := cleanRevision(info.Settings); revision != "" {
			return revision
		}
	}
	return programHash()
})

// cleanRevision returns the revision of the source, empty if it is not known or
// if the source was changed.
func cleanRevision(settings []debug.BuildSetting) string {
	known := map[string]string{}
	for _, s := range settings {
		known[s.Key] = s.Value
	}
	if known["vcs.modified"] != "false" {
		return ""
	}
	return known["vcs.revision"]
}

// programHash hashes the running program's file. Where that cannot be read the
// release must do.
func programHash() string {
	path, err := os.Executable()
	if err != nil {
		return Release
	}
	file, err := os.Open(path)
	if err != nil {
		return Release
	}
	defer file.Close()
	hash := sha256.New()
	if _, err := io.Copy(hash, file); err != nil {
		return Release
	}
	return base64.RawURLEncoding.EncodeToString(hash.Sum(nil)[:15])
}
