package api

// yieldSpec is what the specification says of the planning of orders.
func yieldSpec() CallSpec {
	return CallSpec{Path: "/v1/yield", Parameters: yieldTable().describe(), Media: mediaTypes(yieldFormats),
		Example: "unit=in&sheet=12x12&blank=8-1/4x1-3/4&name=band&ruler=1/16in",
		Body: `{"unit":"in","sheet":"12 x 12 in","sheet_grain":"height","margin":"0","kerf":"0","ruler":"1/16 in","trimmer_length":"12 in","minimize":"sheets","effort_ms":5000,` +
			`"items":[{"name":"band","blank":"8 1/4 x 1 3/4 in","count":6,"grain":"any"}]}`}
}
