package wire

// Limits is the answer of /v1/limits.
type Limits struct {
	URL            int   `json:"url_bytes" validate:"required" example:"8000"`
	Names          int   `json:"names" validate:"required" example:"64"`
	Value          int   `json:"value_characters" validate:"required" example:"64"`
	Body           int64 `json:"body_bytes" validate:"required" example:"65536"`
	YieldBody      int64 `json:"yield_body_bytes" validate:"required" example:"1048576"`
	Items          int   `json:"yield_items" validate:"required" example:"200"`
	Pieces         int   `json:"yield_pieces" validate:"required" example:"100000"`
	EffortMillis   int64 `json:"yield_effort_ms" validate:"required" example:"10000"`
	Planning       int   `json:"planning" validate:"required" example:"3"`               // orders, PDFs and PNGs worked on at once
	Streams        int   `json:"streams" validate:"required" example:"64"`               // batches at once
	AnswerBytes    int   `json:"answer_bytes" validate:"required" example:"8388608"`     // of one answer
	Pages          int   `json:"pdf_pages" validate:"required" example:"500"`            // of one drawing
	Listed         int   `json:"yield_listed" validate:"required" example:"6000"`        // blanks of one sheet in an order without counts
	Placed         int   `json:"yield_placed" validate:"required" example:"15000"`       // blanks that a plan lists one by one
	BatchLine      int   `json:"batch_line_bytes" validate:"required" example:"65536"`   // of one line or row of a batch, of which there may be any number
	BatchArray     int   `json:"batch_array_requests" validate:"required" example:"500"` // in a JSON array
	BatchSample    int   `json:"batch_sample_bytes" validate:"required" example:"65536"` // of a table that its separator, encoding and decimal mark are found out from
	BatchColumns   int   `json:"batch_columns" validate:"required" example:"256"`        // of a table, and of pointers in columns
	Depth          int   `json:"json_depth" validate:"required" example:"16"`
	Lengths        int   `json:"ruler_lengths" validate:"required" example:"50"`
	SolveMillis    int64 `json:"solve_ms" validate:"required" example:"250"`
	RequestMillis  int64 `json:"request_ms" validate:"required" example:"10000"`
	Running        int   `json:"running" validate:"required" example:"64"`
	Waiting        int   `json:"waiting" validate:"required" example:"256"`
	ReportedAtOnce int   `json:"errors_at_once" validate:"required" example:"20"`
}
