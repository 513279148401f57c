package api

import (
	"bytes"
	"io"

	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/fault"
)

// mostAnswer is how large one answer may become, in bytes.
const mostAnswer = 8 << 20

// meter passes on what an encoder writes until the answer is too large or
// nobody waits for it any more.
type meter struct {
	*bytes.Buffer
	x *answering
}

func (m *meter) Write(p []byte) (int, error) {
	if err := m.x.ctx.Err(); err != nil {
		return 0, err
	}
	if m.Len()+len(p) > mostAnswer {
		return 0, fault.Fault{Code: fault.OverBudget, Detail: "the answer is larger than one call may ask for",
			Expected: "at most " + wire.Count(mostAnswer, "byte", "bytes"), Hint: "ask for another format, or for less at once"}
	}
	return m.Buffer.Write(p)
}

// encoded appends what an encoder writes. Its error is kept, so that writers
// need not hand it on.
func (x *answering) encoded(dst []byte, encode func(io.Writer) error) []byte {
	m := meter{bytes.NewBuffer(dst), x}
	if err := encode(&m); err != nil {
		x.err = err
		return dst
	}
	return m.Bytes()
}

// mostPlaced is how many blanks a plan may list one by one: each takes 500 to
// 600 bytes of JSON.
const mostPlaced = 15_000

// price refuses a plan that lists more blanks than an answer has room for.
func (a *yieldAnswer) price(f tell.Format) error {
	if f == tell.CSV || f == tell.Text {
		return nil
	}
	placed := 0
	for i := range a.plan.Plans {
		placed += len(a.plan.Plans[i].Placed)
	}
	if placed <= mostPlaced {
		return nil
	}
	return fault.Fault{Code: fault.OverBudget, Field: "format", Value: f.String(), Detail: "the plan places " + wire.Count(placed, "blank", "blanks") + ", each of which would be listed",
		Expected: "at most " + wire.Count(mostPlaced, "blank", "blanks"), Hint: "format=csv lists the cuts alone"}
}
