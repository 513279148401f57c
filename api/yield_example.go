package api

// yieldExample is the same order as a query and, with more said, as a body.
func yieldExample() (query, body string) {
	return "unit=in&sheet=12x12&blank=8-1/4x1-3/4&name=band&ruler=1/16in",
		`{"unit":"in","sheet":"12 x 12 in","sheet_grain":"height","margin":"0","kerf":"0","ruler":"1/16 in","trimmer_length":"12 in","minimize":"sheets","effort_ms":5000,` +
			`"items":[{"name":"band","blank":"8 1/4 x 1 3/4 in","count":6,"grain":"any"}]}`
}
