package edge

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// niceness is how far back the thread stands that asks, from -20 to 19: the nineteenth
// field of its line, the second of which is a name in brackets (proc(5)).
func niceness(t *testing.T) int {
	t.Helper()
	text, err := os.ReadFile("/proc/thread-self/stat")
	require.NoError(t, err)
	fields := strings.Fields(string(text[strings.LastIndexByte(string(text), ')')+1:]))
	nice, err := strconv.Atoi(fields[16])
	require.NoError(t, err)
	return nice
}

// TestDearWorkStandsBack by five steps, on a thread that does nothing else: what comes after it stands
// where it stood. The system knows no step beyond 19.
func TestDearWorkStandsBack(t *testing.T) {
	before, within := niceness(t), 0
	apart(func() { within = niceness(t) })
	assert.Equal(t, min(before+5, 19), within)
	assert.Equal(t, before, niceness(t))
}
