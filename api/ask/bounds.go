package ask

import (
	"errors"
	"slices"

	"github.com/go-playground/validator/v10"
	"github.com/labstack/echo/v4"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Validator checks requests as echo asks for it: the validator checks the
// structs of values and bounds, the call's own rules what stands between them.
type Validator struct{}

// Validate checks what Binder has read. An error is the faults of the request.
func (Validator) Validate(asked any) error {
	a, ok := asked.(interface {
		Check() bool
		Faults() fault.Faults
	})
	if !ok {
		return echo.ErrInternalServerError
	}
	if !a.Check() {
		return a.Faults()
	}
	return nil
}

// bound is a value with the bounds of its name.
type bound struct {
	value               value
	field               field
	is, least, greatest float64 // of lengths in nanometres, which are whole numbers
	at                  int     // the faults that were found before it
}

// bounded is what the validator is given: the values of a request that have
// bounds.
type bounded struct{ Values []bound }

// structs is the validator with the rule for bounds, which are those of the
// names and no constants that a tag could hold.
var structs = func() *validator.Validate {
	v := validator.New(validator.WithRequiredStructEnabled())
	v.RegisterStructValidation(keepBounds, bounded{})
	return v
}()

// keepBounds reports the values below their least or above their greatest.
func keepBounds(level validator.StructLevel) {
	values := level.Current().Addr().Interface().(*bounded).Values
	for i := range values {
		switch b := &values[i]; {
		case b.is < b.least:
			level.ReportError(*b, b.field.name, "Values", "gte", number(b.least))
		case b.is > b.greatest:
			level.ReportError(*b, b.field.name, "Values", "lte", number(b.greatest))
		}
	}
}

// bound keeps a number to be checked.
func (r *Reading) bound(v value, f field, is, least, greatest float64) {
	r.bounds = append(r.bounds, bound{v, f, is, least, greatest, len(r.faults)})
}

// boundLength keeps a length to be checked.
func (r *Reading) boundLength(v value, f field, l measure.Length) {
	n := v.field().name()
	r.bound(v, f, float64(l.Nanometres()), float64(n.Least.Nanometres()), float64(n.Greatest.Nanometres()))
}

// checkBounds reports the values that are out of bounds, each among the other
// faults where its name stands among the other names.
func (r *Reading) checkBounds() {
	if len(r.bounds) == 0 {
		return
	}
	var refused validator.ValidationErrors
	if err := structs.Struct(&bounded{r.bounds}); !errors.As(err, &refused) {
		return
	}
	before, taken := slices.Clone(r.faults), 0
	r.faults = r.faults[:0]
	var last field
	for _, e := range refused {
		b := e.Value().(bound)
		r.faults, taken = append(r.faults, before[taken:b.at]...), b.at
		if b.value.kind() == SizeType && b.field == last {
			continue // its other side
		}
		last = b.field
		r.reportRange(&b, e.Tag() == "gte")
	}
	r.faults = append(r.faults, before[taken:]...)
	if more := len(r.faults) - MostReported; more > 0 {
		r.faults, r.hidden = r.faults[:MostReported], r.hidden+more
	}
}

// reportRange reports a value beyond a bound.
func (r *Reading) reportRange(b *bound, below bool) {
	nearer, detail := b.greatest, "the value is above the greatest that is taken"
	if below {
		nearer, detail = b.least, "the value is below the least that is taken"
	}
	n := b.value.field().name()
	correction := ""
	switch n.Type {
	case LengthType:
		correction = measure.Finest(r.unit).FormatURL(writable(measure.Nanometres(int64(nearer)), r.unit, below))
	case CountType, NumberType:
		correction = number(nearer)
	}
	r.Report(fault.Fault{Code: fault.OutOfRange, Field: b.field.name, Value: b.field.text, Detail: detail, Expected: n.expected(r.unit), Hint: correction}, correction)
}
