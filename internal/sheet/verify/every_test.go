package verify

import (
	"context"
	"fmt"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet/search"
	"creasefit/internal/sheet/sheettest"
)

// leaves calls each with every number, truth and length below a value, and the name of
// its field; undo puts it back.
func leaves(v reflect.Value, name string, each func(name string, change func() (undo func()))) {
	switch {
	case v.Type() == reflect.TypeFor[measure.Length]():
		each(name, func() func() {
			before := v.Interface().(measure.Length)
			v.Set(reflect.ValueOf(before.Add(measure.Sixtyfourths(4))))
			return func() { v.Set(reflect.ValueOf(before)) }
		})
	case v.Kind() == reflect.Pointer && !v.IsNil():
		leaves(v.Elem(), name, each)
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			leaves(v.Index(i), name, each)
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			leaves(v.Field(i), fmt.Sprint(v.Type().Name(), ".", v.Type().Field(i).Name), each)
		}
	case v.Kind() == reflect.Bool:
		each(name, func() func() {
			v.SetBool(!v.Bool())
			return func() { v.SetBool(!v.Bool()) }
		})
	case v.CanInt():
		each(name, func() func() { v.SetInt(v.Int() + 1); return func() { v.SetInt(v.Int() - 1) } })
	case v.CanUint():
		each(name, func() func() { v.SetUint(1 - v.Uint()); return func() { v.SetUint(1 - v.Uint()) } })
	case v.CanFloat():
		each(name, func() func() { before := v.Float(); v.SetFloat(before + 1); return func() { v.SetFloat(before) } })
	}
}

// unverified are the fields that may change unseen, and why.
var unverified = map[string]string{
	"Answer.Settled": "says what more time would do",
	"Node.At":        "of a leaf, which has no cut", "Node.Cut": "of a leaf, which has no cut",
	"Node.Item": "of a cut, which is no blank", "Node.Turned": "of a cut, which is no blank",
	"Step.Parts": "a part may have any number, here in all steps at once", "Step.Rest": "a part may have any number, here in all steps at once",
}

// Every number, truth and length of an answer is changed alone: the verifier sees all
// but those that are listed above, which it does not see somewhere.
func TestEveryFieldIsVerified(t *testing.T) {
	o := sheettest.TeaOrder(t)
	o.Margin, o.Kerf, o.Sheets[0].Price = sheettest.Inches(t, "1/4"), sheettest.Inches(t, "1/16"), 3
	a, err := search.Plan(context.Background(), o)
	require.NoError(t, err)
	changed, unseen := 0, map[string]bool{}
	leaves(reflect.ValueOf(&a).Elem(), "Answer", func(name string, change func() func()) {
		changed++
		undo := change()
		if Plan(o, a) == nil {
			unseen[name] = true
			assert.NotEmpty(t, unverified[name], "%s was changed and nobody saw it", name)
		}
		undo()
	})
	require.NoError(t, Plan(o, a), "all changes are undone")
	assert.Greater(t, changed, 500)
	assert.Len(t, unseen, len(unverified), "a field that is seen by now is off the list: %v", unseen)
}
