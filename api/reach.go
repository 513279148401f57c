package api

import (
	"context"
	"crypto/sha256"
	"sync"

	"creasefit/internal/assembly"
	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// reachable refuses a caller's design that no order of work leads to; the kinds of the
// catalogue are tried beforehand. The order that leads to a design round some thing mostly
// leads to it round any other one, which is seen far sooner than one is found.
func reachable(s *solve.Solution) error {
	text := s.Request.Kind.Design
	if text == "" {
		return nil
	}
	if o := sampled(s.Request); o != nil && o.Leads(&s.Pattern, s.Proof.Tolerance) {
		return nil
	}
	_, err := oneSolved{s}.order()
	if f, ok := err.(fault.Fault); ok {
		f.Field, f.Value, f.Hint = own.Place([]byte(text), f.Value), "", "let what lies over it end before it, or fold one of the two the other way"
		err = f
	}
	return err
}

// mostSamples bounds how many orders of designs are remembered.
const mostSamples = 128

// samples are the orders that lead to designs round a thing of their own, nil for none: they
// hang on nothing that was asked before.
var samples = struct {
	sync.Mutex
	known map[requestKey]*assembly.Order
}{known: map[requestKey]*assembly.Order{}}

// sampled is the order of the design of a request, as that is chosen to be.
func sampled(q *solve.Request) *assembly.Order {
	w := keyWriter{}
	w.text(q.Kind.Design)
	chosen := map[string]enclosure.Value{}
	for i := range q.Kind.Params {
		if p := &q.Kind.Params[i]; p.Type == enclosure.ChoiceParam {
			chosen[p.Name] = q.Options[p.Name]
			w.text(q.Options[p.Name].Choice)
		}
	}
	id := requestKey(sha256.Sum256(w.b))
	samples.Lock()
	o, ok := samples.known[id]
	samples.Unlock()
	if ok {
		return o
	}
	o = sample(q.Kind, chosen)
	samples.Lock()
	defer samples.Unlock()
	if len(samples.known) >= mostSamples {
		clear(samples.known)
	}
	samples.known[id] = o
	return o
}

// sample finds the order of a design round a thing of usual sizes.
func sample(k *enclosure.Kind, chosen map[string]enclosure.Value) *assembly.Order {
	s, err := solve.Solve(context.Background(), sampleRequest(k, chosen))
	if err != nil {
		return nil
	}
	o, err := assembly.Find(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
	if err != nil {
		return nil
	}
	return o
}

// sampleRequest asks for a design round a thing of usual sizes.
func sampleRequest(k *enclosure.Kind, chosen map[string]enclosure.Value) *solve.Request {
	marks := measure.Marks(measure.Millimetre)
	return &solve.Request{Kind: k, Unit: measure.Millimetre, Ruler: marks[len(marks)-1], Options: chosen, Caliper: measure.Micrometres(300),
		Width: measure.Millimetres(100), Height: measure.Millimetres(150), Thickness: measure.Millimetres(20), FitName: enclosure.UsualFit, Fit: enclosure.FitNamed(enclosure.UsualFit, measure.Millimetre)}
}
