package api

import (
	"context"
	"crypto/sha256"
	"strconv"

	"creasefit/api/ask"
	"creasefit/internal/assembly"
	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// reach refuses what no order of work leads to. The kinds of the catalogue and the designs
// that are kept here are tried beforehand. The order that leads to a caller's design round
// some thing mostly leads to it round any other one, which is seen far sooner than one is
// found.
type reach struct {
	orders generations[*assembly.Order] // by what is chosen: the order round a thing of usual sizes, nil for none
}

// About what an order takes, in bytes, and those of a design that are remembered.
const (
	orderSize  = 4 << 10
	mostOrders = 256 * orderSize
)

// newReach remembers no order yet.
func newReach() *reach { return &reach{newGenerations[*assembly.Order](mostOrders)} }

// of refuses a solution that no order leads to.
func (r *reach) of(ctx context.Context, s *solve.Solution) error {
	text := s.Request.Kind.Design
	if text == "" || own.Kept(text) {
		return nil
	}
	if o := r.sampled(ctx, s.Request); o != nil && o.Leads(&s.Pattern, s.Proof.Tolerance) {
		return nil
	}
	_, err := oneSolved{s}.order()
	if f, ok := err.(fault.Fault); ok {
		f.Field, f.Value, f.Hint = own.Place([]byte(text), f.Value), "", "let what lies over it end before it, or fold one of the two the other way"
		err = f
	}
	return err
}

// sampled is the order of the design of a request, as that is chosen to be: it hangs on
// nothing that was asked before.
func (r *reach) sampled(ctx context.Context, q *solve.Request) *assembly.Order {
	var words []byte
	chosen := map[string]enclosure.Value{}
	for i := range q.Kind.Params {
		p := &q.Kind.Params[i]
		if v, given := q.Options[p.Name]; given && p.Type != enclosure.LengthParam {
			chosen[p.Name] = v
			words = ask.AppendParts(words, p.Name, v.Choice, strconv.FormatInt(v.Count, 10))
		}
	}
	key := requestKey(sha256.Sum256(words))
	o, known := r.orders.find(key, func(*assembly.Order) int { return orderSize })
	if known {
		return o
	}
	if s, err := solve.Solve(ctx, sampleRequest(q.Kind, chosen)); err == nil {
		o, _ = assembly.Find(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
	}
	if ctx.Err() == nil {
		r.orders.keep(key, o, orderSize)
	}
	return o
}

// sampleRequest asks for a design round a thing of usual sizes.
func sampleRequest(k *enclosure.Kind, chosen map[string]enclosure.Value) *solve.Request {
	marks := measure.Marks(measure.Millimetre)
	return &solve.Request{Kind: k, Unit: measure.Millimetre, Ruler: marks[len(marks)-1], Options: chosen, Caliper: measure.Micrometres(300),
		Width: measure.Millimetres(100), Height: measure.Millimetres(150), Thickness: measure.Millimetres(20), FitName: enclosure.UsualFit, Fit: enclosure.FitNamed(enclosure.UsualFit, measure.Millimetre)}
}
