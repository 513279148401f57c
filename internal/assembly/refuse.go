package assembly

import "creasefit/internal/fault"

// none says that no order of work was found.
func none() error {
	return fault.Fault{Code: fault.NoProof, Detail: "no order of work was found in which this can be folded, glued and closed by hand",
		Hint: "choose another size, thickness of the stock or option"}
}
