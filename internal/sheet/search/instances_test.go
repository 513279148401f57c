package search

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// instance is one typed-in published instance with its optima.
type instance struct {
	limited
	name          string
	fixed, turned int64
}

// instances reads testdata/sheet/instances.txt.
func instances(t *testing.T) []instance {
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "sheet", "instances.txt"))
	require.NoError(t, err)
	var all []instance
	for _, line := range strings.Split(string(text), "\n") {
		if strings.HasPrefix(line, "#") {
			continue
		}
		what, rest, _ := strings.Cut(line, " ")
		n := wholeNumbers(rest)
		switch what {
		case "instance":
			all = append(all, instance{name: rest})
		case "sheet":
			all[len(all)-1].w, all[len(all)-1].h = n[0], n[1]
		case "blank":
			all[len(all)-1].add(n[0], n[1], n[2], n[3])
		case "optimum":
			all[len(all)-1].fixed, all[len(all)-1].turned = int64(n[0]), int64(n[1])
		}
	}
	return all
}

func TestTypedInInstances(t *testing.T) {
	list := instances(t)
	require.Len(t, list, 4)
	for _, in := range list {
		for _, turning := range []bool{false, true} {
			want := in.fixed
			if turning {
				want = in.turned
			}
			if want == 0 {
				continue
			}
			t.Run(fmt.Sprintf("%s/turning=%t", in.name, turning), func(t *testing.T) {
				if in.copies[0] > 0 {
					assert.Equal(t, want, in.solve(t, turning))
					return
				}
				got, ok := newTable(plainBoard(in.w, in.h, in.sizes, turning)).solve(endless(), in.values)
				require.True(t, ok)
				assert.Equal(t, want, got)
			})
		}
	}
}
