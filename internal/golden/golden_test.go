package golden

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// told is a test that keeps what it is told.
type told struct {
	testing.TB
	text string
}

func (told) Helper() {}

func (t *told) Errorf(format string, _ ...any) { t.text = format }

// TestCheck: a file that differs is an error and stays as it is, until it is written anew.
func TestCheck(t *testing.T) {
	path := filepath.Join(t.TempDir(), "folder", "text")
	require.NoError(t, os.Mkdir(filepath.Dir(path), 0o755))
	require.NoError(t, os.WriteFile(path, []byte("one"), 0o644))
	for _, c := range []struct {
		got    string
		update bool
		wrong  bool
		kept   string
	}{{"one", false, false, "one"}, {"two", false, true, "one"}, {"two", true, false, "two"}, {"two", false, false, "two"}} {
		other := &told{TB: t}
		*update = c.update
		Check(other, path, []byte(c.got))
		*update = false
		assert.Equal(t, c.wrong, other.text != "", "%+v", c)
		kept, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, c.kept, string(kept), "%+v", c)
	}
}

func TestDifference(t *testing.T) {
	long := strings.Repeat("a", 1000)
	assert.Empty(t, Difference(long, long))
	assert.Equal(t, `: was ..."`+long[:120]+`b"..., is ..."`+long[:120]+`"...`, Difference(long+"b", long))
	assert.Equal(t, `: was ...""..., is ..."x"...`, Difference("", "x"))
}
