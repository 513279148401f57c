package api

import (
	"crypto/sha256"
	"net/url"
	"strconv"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/internal/fault"
)

// mostInAddress is how many lines an address may have.
const mostInAddress = 16

// answerAddress answers the lines of an address at once, so that caches in between
// can keep the whole.
//
//	@Summary		Several calculations in one address
//	@Description	Like a batch that is sent, for up to 16 lines that fit into an address: each line is a JSON object in lines, and every other name holds for all lines that do not say it themselves. The answer is one JSON object a line. It may be kept as that of any calculation, unless a line has failed or its answer depends on the time that it was given.
//	@ID				batch-address
//	@Tags			batch
//	@Param			lines	query	[]string	true	"JSON objects, each with the path of its call, an id and names of the call" collectionFormat(multi)
//	@Param			call	query	string		false	"the call of lines that name none: a path, or its part before the kind"
//	@Param			kind	query	string		false	"the kind of lines that name none"
//	@Produce		application/x-ndjson
//	@Success		200	{string}	string
//	@Header			200	{string}	ETag	"strong"
//	@Router			/v1/batch [get]
func (s *batches) answerAddress(c echo.Context) error {
	raw := c.Request().URL.RawQuery
	out := &outcome{spelling: &spelling{options: options{format: tell.Lines}, path: "/v1/batch", key: sha256.Sum256(ask.AppendParts(nil, Revision(), "batch", raw))}, s: s.host, c: c}
	if out.encode(); out.unchanged() {
		return out.answerUnchanged()
	}
	if !out.remembered() {
		body, lasting, p := s.workAddress(c, raw)
		if p != nil {
			return s.answerProblem(c, p)
		}
		out.body, out.fresh, out.timed = body, true, !lasting
	}
	return out.answer()
}

// workAddress works on the lines of an address and says whether the answers last.
func (s *batches) workAddress(c echo.Context, raw string) (body []byte, lasting bool, p *problem) {
	values, err := url.ParseQuery(raw)
	texts := values["lines"]
	if err != nil || len(texts) == 0 {
		return nil, false, problemOf(fault.Faults{{Code: fault.Missing, Field: "lines", Detail: "the address has no lines",
			Hint: `add lines={"call":"/v1/ruler","length":"92.1 mm"}, or send the lines by POST`}})
	}
	if len(texts) > mostInAddress {
		return nil, false, problemOf(fault.Faults{{Code: fault.TooMany, Field: "lines", Detail: "the address has too many lines", Expected: "at most " + strconv.Itoa(mostInAddress), Hint: "send them by POST"}})
	}
	values.Del("lines")
	order, faults := s.readOrder(values.Encode())
	if len(faults) > 0 {
		return nil, false, problemOf(faults)
	}
	if p := order.withoutColumns(); p != nil {
		return nil, false, p
	}
	if !s.streams.Enter(c.Request().Context(), s.callerOf(c).id) {
		return nil, false, single(codeOverloaded, "too many batches are running", "")
	}
	defer s.streams.Leave()
	b := &batch{batches: s, c: c, output: lineOutput{}}
	lasting = true
	lines := make([]line, len(texts))
	for i, text := range texts {
		lines[i] = usualLine{s, &order}.read(i+1, []byte(text), len(text) > mostLine)
		call, ok := s.lines[lines[i].call]
		lasting = lasting && ok && call.lasting()
	}
	b.begin(lines)
	for len(lines) > 0 {
		lines = b.some(lines)
	}
	return b.output.end(b.buffer, b.count, b.failed, ""), lasting && b.failed == 0, nil
}
