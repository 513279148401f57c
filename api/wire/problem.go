package wire

// Problem is an answer that is none (RFC 9457).
type Problem struct {
	Type      string    `json:"type" validate:"required" example:"/problems/unreadable"`
	Title     string    `json:"title" validate:"required"`
	Status    int       `json:"status" validate:"required" example:"400"`
	Detail    string    `json:"detail" validate:"required"`
	Errors    []Invalid `json:"errors" validate:"required,max=20"`
	NotListed int       `json:"not_listed,omitempty"` // further errors
	Try       string    `json:"try,omitempty"`        // a corrected address, if one can be guessed
}

// Invalid is one thing that is wrong with a request.
type Invalid struct {
	Code     string `json:"code" validate:"required" example:"unreadable"`
	Name     string `json:"name,omitempty" example:"width"`
	Value    string `json:"value,omitempty" example:"3 5/7 in"` // as given, cut at 64 characters
	Detail   string `json:"detail,omitempty"`
	Expected string `json:"expected,omitempty"`
	Hint     string `json:"hint,omitempty"`
}
