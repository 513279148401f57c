package sheet_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
)

// A plan that fails verification is an error that tells the log of the order.
func TestUnsoundPlansAreTold(t *testing.T) {
	u := &sheet.Unsound{Order: sheettest.TeaOrder(t), Wrong: errors.New("item 0: 24 are made, 25 wanted")}
	assert.ErrorContains(t, u, "24 are made")
	assert.ErrorIs(t, u, u.Wrong)
	assert.Contains(t, u.LogValue().String(), "sachet band")
}
