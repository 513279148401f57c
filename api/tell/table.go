package tell

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// Style is how tables and texts are written.
type Style struct {
	Bare      bool   // a table has no header row
	Comma     bool   // decimal commas
	Separator rune   // between cells; zero for a comma, or a semicolon beside decimal commas
	Lead      string // what every row begins with, separator and all
}

// separator is what stands between two cells.
func (s Style) separator() rune {
	switch {
	case s.Separator != 0:
		return s.Separator
	case s.Comma:
		return ';'
	default:
		return ','
	}
}

// table is an answer in rows and columns: a cell is a word, a number, or a
// reading.
type table struct {
	header []string
	rows   [][]any
}

// reading is what to set on the ruler, or another number as it was written.
type reading string

// appendCSV appends a table as RFC 4180 has it.
func appendCSV(dst []byte, s Style, t table) []byte {
	if !s.Bare {
		dst = s.AppendRow(dst, t.header...)
	}
	for _, row := range t.rows {
		dst = append(dst, s.Lead...)
		for i, cell := range row {
			if i > 0 {
				dst = utf8.AppendRune(dst, s.separator())
			}
			dst = s.appendText(dst, s.cell(cell))
		}
		dst = append(dst, "\r\n"...)
	}
	return dst
}

// AppendRow appends a row of texts with its end.
func (s Style) AppendRow(dst []byte, cells ...string) []byte {
	return append(s.AppendCells(append(dst, s.Lead...), cells...), "\r\n"...)
}

// AppendCells appends texts with separators between.
func (s Style) AppendCells(dst []byte, cells ...string) []byte {
	for i, cell := range cells {
		if i > 0 {
			dst = utf8.AppendRune(dst, s.separator())
		}
		dst = s.appendText(dst, cell)
	}
	return dst
}

// appendText appends a text as a cell, quoted where it must be. One that a
// spreadsheet would take for a formula gets an apostrophe.
func (s Style) appendText(dst []byte, cell string) []byte {
	if isFormula(cell) {
		cell = "'" + cell
	}
	if !strings.ContainsAny(cell, "\"\r\n\t") && !strings.ContainsRune(cell, s.separator()) && strings.Trim(cell, " ") == cell {
		return append(dst, cell...)
	}
	return append(append(append(dst, '"'), strings.ReplaceAll(cell, `"`, `""`)...), '"')
}

// isFormula reports whether a spreadsheet would compute a text.
func isFormula(cell string) bool {
	begun := strings.TrimLeft(cell, " \t\r\n")
	if begun == "" || !strings.ContainsRune("=+-@", rune(begun[0])) && cell[0] != '\t' {
		return false
	}
	_, err := strconv.ParseFloat(strings.Replace(cell, ",", ".", 1), 64)
	return err != nil
}

// cell writes one cell.
func (s Style) cell(cell any) string {
	switch c := cell.(type) {
	case int:
		return strconv.Itoa(c)
	case float64:
		return s.mark(number(c))
	case reading:
		return s.mark(string(c))
	case string:
		return c
	default:
		return "" // there is nothing to tell
	}
}

// mark writes a number with the wanted decimal mark.
func (s Style) mark(text string) string {
	if s.Comma {
		return strings.Replace(text, ".", ",", 1)
	}
	return text
}

// appendTableXML appends one element for each row, its cells as attributes, so
// that number(//row[1]/@mm) works in XPath 1.0.
func appendTableXML(dst []byte, t table) []byte {
	dst = append(dst, "<?xml version=\"1.0\" encoding=\"US-ASCII\"?>\n<table>\n"...)
	for _, row := range t.rows {
		dst = append(dst, "  <row"...)
		for i, cell := range row {
			if text := (Style{}).cell(cell); text != "" {
				dst = append(append(append(dst, ' '), strings.ReplaceAll(t.header[i], " ", "_")...), `="`...)
				dst = append(appendXMLText(dst, text), '"')
			}
		}
		dst = append(dst, "/>\n"...)
	}
	return append(dst, "</table>\n"...)
}

// appendTableText appends a line to read for each row: its first cell, and the
// others by their names.
func appendTableText(dst []byte, s Style, t table) []byte {
	for _, row := range t.rows {
		dst = append(dst, s.cell(row[0])...)
		for i, cell := range row[1:] {
			joint := ", "
			if i == 0 {
				joint = ": "
			}
			if text := s.cell(cell); text != "" && len(row) > 2 {
				dst = append(append(append(dst, joint...), t.header[i+1]+" "...), text...)
			} else if text != "" {
				dst = append(append(dst, joint...), text...)
			}
		}
		dst = append(dst, '\n')
	}
	return dst
}
