package api

import (
	"fmt"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/api/ask"
)

// What is as much as a limit allows is taken, one more is refused: a limit that
// /v1/limits tells is no other by one.
func TestLimitsHoldToTheLast(t *testing.T) {
	s := shared()
	for name, c := range map[string]struct {
		most    int
		refused int // status of one more
		ask     func(n int) answer
	}{
		"bytes of an address": {s.config.MostURL, http.StatusRequestURITooLong, func(n int) answer {
			const target = "/v1/ruler?length=92.1mm&"
			return get(t, target+strings.Repeat("&", n-len(target)))
		}},
		"bytes of a body": {int(s.config.MostBody), http.StatusRequestEntityTooLarge, func(n int) answer {
			const body = `{"length":"92.1 mm"}`
			return postJSON(t, "/v1/ruler", body+strings.Repeat(" ", n-len(body)))
		}},
		"columns of a table": {mostColumns, http.StatusBadRequest, func(n int) answer {
			return call(t, s, http.MethodPost, "/v1/batch?call=ruler", "length"+strings.Repeat(",a", n-1)+"\n1 in\n", "Content-Type", mediaCSV)
		}},
		"pointers of a table": {mostColumns, http.StatusBadRequest, func(n int) answer {
			return call(t, s, http.MethodPost, "/v1/batch?call=ruler&columns=/unit"+strings.Repeat(",/unit", n-1), "length\n1 in\n", "Content-Type", mediaCSV)
		}},
		"requests of an array": {mostArray, http.StatusBadRequest, func(n int) answer {
			return postBatch(t, "application/json", "[{}"+strings.Repeat(",{}", n-1)+"]")
		}},
		"lines of an address": {mostInAddress, http.StatusBadRequest, func(n int) answer {
			lines := make([]string, n)
			for i := range lines {
				lines[i] = `{}`
			}
			return get(t, inAddress("call=ruler&length=1in", lines...))
		}},
		"lengths of a call": {ask.MostLengths, http.StatusBadRequest, func(n int) answer {
			return get(t, "/v1/ruler?length=1mm"+strings.Repeat("&length=1mm", n-1))
		}},
		"names of a request": {ask.MostNames, http.StatusBadRequest, func(n int) answer { // those that are ignored count as well
			return postJSON(t, "/v1/ruler", `{"length":"1mm"`+strings.Repeat(`,"_":1`, n-1)+"}")
		}},
	} {
		c.ask(c.most).ok()
		more := c.ask(c.most + 1)
		assert.Equal(t, c.refused, more.Code, "%s: %s", name, more.Body)
		assert.Contains(t, more.Body.String(), fmt.Sprint(c.most), name)
	}
}
