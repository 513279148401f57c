package search

import (
	"bufio"
	"context"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// published returns the path of a file of the published cutting sets, or
// skips the test where they are not.
func published(t testing.TB, name string) string {
	t.Helper()
	root := os.Getenv("CREASEFIT_CUTTING_SETS")
	if root == "" {
		root = filepath.Join("..", "..", "..", "..", "shared", "benchmarks")
	}
	path := filepath.Join(root, name)
	if _, err := os.Stat(path); err != nil {
		t.Skipf("the published cutting sets are not here: set CREASEFIT_CUTTING_SETS to the folder that holds %s", name)
	}
	return path
}

// numbers reads all whole numbers of a file.
func numbers(t testing.TB, path string) []int {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return wholeNumbers(string(text))
}

// wholeNumbers reads the fields of a text that are whole numbers.
func wholeNumbers(text string) []int {
	var all []int
	for _, field := range strings.Fields(text) {
		if n, err := strconv.Atoi(field); err == nil {
			all = append(all, n)
		}
	}
	return all
}

// rows reads a comma-separated table without its heading.
func rows(t testing.TB, path string) [][]string {
	t.Helper()
	file, err := os.Open(path)
	require.NoError(t, err)
	defer file.Close()
	var all [][]string
	for scan := bufio.NewScanner(file); scan.Scan(); {
		all = append(all, strings.Split(scan.Text(), ","))
	}
	return all[1:]
}

// plainBoard is a board without kerf or trimmer for kinds of the given sizes.
func plainBoard(w, h int, sizes [][2]int, turning bool) *board {
	b := &board{w: int32(w), h: int32(h), limit: int32(max(w, h)), cost: 1}
	for k, s := range sizes {
		b.addFace(int32(k), s[0], s[1], false)
		if turning && s[0] != s[1] {
			b.addFace(int32(k), s[1], s[0], true)
		}
	}
	return b
}

// addFace adds one way to lie if it fits.
func (b *board) addFace(k int32, w, h int, turned bool) {
	if int32(w) <= b.w && int32(h) <= b.h {
		b.faces = append(b.faces, face{int32(w), int32(h), k, turned})
	}
}

// endless is effort without an end.
func endless() *effort { return newEffort(context.Background(), time.Time{}) }
