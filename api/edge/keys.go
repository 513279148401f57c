package edge

import (
	"bufio"
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/hex"
	"fmt"
	"io"
	"net/http"
	"os"
	"strconv"
	"strings"
	"sync"
	"time"
)

// Key is what is known of an API key: never the key itself, only its hash. Keys
// are 26 random characters, so that a plain hash cannot be searched.
type Key struct {
	Name  string
	hash  [sha256.Size]byte
	Rate  float64 // calls a second; 0 for the service's own
	Burst int
}

// NewKey makes a key and the line for the file of keys.
func NewKey(name string) (key, line string) {
	key = "cf_" + rand.Text()
	hash := sha256.Sum256([]byte(key))
	return key, name + " " + hex.EncodeToString(hash[:])
}

// Keys are the keys in a file, read again when the file changes: a key is
// rotated by writing the new one beside the old, and taking that out later.
type Keys struct {
	path    string
	mutex   sync.Mutex
	looked  time.Time
	changed time.Time
	size    int64
	list    []Key
	report  func(error)
}

// OpenKeys reads the file of keys: lines of a name, the SHA-256 of the key in
// hexadecimal and, if wanted, a rate and a burst; # begins a remark. What is
// wrong with the file later is reported, and the keys stay as they were.
func OpenKeys(path string, report func(error)) (*Keys, error) {
	k := &Keys{path: path, report: report}
	return k, k.load()
}

func (k *Keys) load() error {
	file, err := os.Open(k.path)
	if err != nil {
		return err
	}
	defer file.Close()
	if info, err := file.Stat(); err == nil {
		k.changed, k.size = info.ModTime(), info.Size()
	}
	list, err := parseKeys(file)
	if err != nil {
		return fmt.Errorf("%s: %w", k.path, err)
	}
	k.list = list
	return nil
}

// parseKeys reads the lines of a file of keys.
func parseKeys(in io.Reader) ([]Key, error) {
	var list []Key
	lines := bufio.NewScanner(in)
	for number := 1; lines.Scan(); number++ {
		text, _, _ := strings.Cut(lines.Text(), "#")
		parts := strings.Fields(text)
		if len(parts) == 0 {
			continue
		}
		key, err := parseKey(parts)
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", number, err)
		}
		list = append(list, key)
	}
	return list, lines.Err()
}

// parseKey reads the parts of one line.
func parseKey(parts []string) (key Key, err error) {
	if len(parts) != 2 && len(parts) != 4 || !IsWord(parts[0]) {
		return key, fmt.Errorf("it is not a name, a hash and, if wanted, a rate and a burst")
	}
	hash, err := hex.DecodeString(parts[1])
	if err != nil || len(hash) != sha256.Size {
		return key, fmt.Errorf("the hash of %s is not the SHA-256 of a key in hexadecimal", parts[0])
	}
	key.Name, key.hash = parts[0], [sha256.Size]byte(hash)
	if len(parts) == 4 {
		key.Rate, err = strconv.ParseFloat(parts[2], 64)
		key.Burst, _ = strconv.Atoi(parts[3])
		if err != nil || !(key.Rate > 0 && key.Rate <= mostRate) || key.Burst < 1 { // not a number is neither
			return key, fmt.Errorf("the rate and the burst of %s are not above zero, or the rate is above %d", parts[0], mostRate)
		}
	}
	return key, nil
}

// Find returns the key that a request shows, as a bearer token (RFC 6750). All
// keys are compared, each in constant time.
func (k *Keys) Find(r *http.Request) (found Key, ok bool) {
	token, is := strings.CutPrefix(r.Header.Get("Authorization"), "Bearer ")
	if !is {
		return Key{}, false
	}
	hash := sha256.Sum256([]byte(strings.TrimSpace(token)))
	for _, key := range k.present() {
		if subtle.ConstantTimeCompare(hash[:], key.hash[:]) == 1 {
			found, ok = key, true
		}
	}
	return found, ok
}

// present returns the keys, read anew if the file has changed; it looks once a
// second.
func (k *Keys) present() []Key {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	if now := time.Now(); now.Sub(k.looked) >= time.Second {
		k.looked = now
		if info, err := os.Stat(k.path); err != nil {
			k.report(err)
		} else if !info.ModTime().Equal(k.changed) || info.Size() != k.size {
			if err := k.load(); err != nil {
				k.report(err)
			}
		}
	}
	return k.list
}
