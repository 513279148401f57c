package tell

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"creasefit/api/ask"
	"creasefit/api/wire"
)

// flatTable is a JSON document as a table, for answers that no table of their
// own was made for: a list has a row an item, an object that holds lists of
// objects the rows of those, and any other object a row a member, named by its
// JSON Pointer (RFC 6901).
func flatTable(document []byte) table {
	s := ask.Scanner{Text: document}
	switch s.Peek() {
	case '[':
		return rowsTable(itemsOf(document))
	case '{':
		if rows := listedRows(document); len(rows) > 0 {
			return rowsTable(rows)
		}
		return memberTable(document)
	default:
		return table{header: []string{"value"}, rows: [][]any{{leaf(document)}}}
	}
}

// memberTable has a row for every member of an object, named by its pointer.
func memberTable(object []byte) table {
	t := table{header: MemberColumns}
	eachLeaf(object, "", "/", func(name string, value []byte) { t.rows = append(t.rows, []any{name, leaf(value)}) })
	return t
}

// listedRows are the items of the lists of objects that an object holds.
func listedRows(object []byte) [][]byte {
	var rows [][]byte
	for _, value := range ask.Members(object) {
		if items := itemsOf(value); len(items) > 0 && items[0][0] == '{' {
			rows = append(rows, items...)
		}
	}
	return rows
}

// rowsTable has a row an item and a column for every member that any of them
// has, those of a member within a member joined by an underscore.
func rowsTable(items [][]byte) table {
	var t table
	at := map[string]int{}
	for _, item := range items {
		row := make([]any, len(t.header))
		eachLeaf(item, "", "_", func(name string, value []byte) {
			i, known := at[name]
			if !known {
				i = len(t.header)
				at[name], t.header, row = i, append(t.header, name), append(row, nil)
			}
			row[i] = leaf(value)
		})
		t.rows = append(t.rows, row)
	}
	for i, row := range t.rows {
		t.rows[i] = append(row, make([]any, len(t.header)-len(row))...)
	}
	return t
}

// eachLeaf calls use for every value within a value that is told in one cell:
// texts, numbers, true and false, and lists of those.
func eachLeaf(value []byte, name, joint string, use func(name string, value []byte)) {
	within := func(member string) string {
		if name == "" && joint != "/" {
			return member
		}
		return name + joint + member
	}
	items := itemsOf(value)
	switch {
	case value[0] == '{':
		for member, inner := range ask.Members(value) {
			eachLeaf(inner, within(member), joint, use)
		}
	case slices.ContainsFunc(items, func(item []byte) bool { return item[0] == '{' || item[0] == '[' }):
		for i, item := range items {
			eachLeaf(item, within(strconv.Itoa(i)), joint, use)
		}
	case name == "":
		use("value", value)
	default:
		use(name, value)
	}
}

// itemsOf lists the items of a list; none of anything else.
func itemsOf(list []byte) [][]byte { return slices.Collect(ask.Items(list)) }

// leaf is a value as a cell: a list of plain values is joined by semicolons.
func leaf(value []byte) any {
	switch value[0] {
	case '"':
		return ask.Unquote(value)
	case '[':
		return strings.Join(wire.Each(itemsOf(value), func(item []byte) string { return fmt.Sprint(leaf(item)) }), "; ")
	case 't', 'f', '{': // an object of a list alone, which flatTable has no row for
		return string(value)
	default:
		return reading(bytes.Clone(value)) // a number as it was written
	}
}

// AppendCell appends a value of a JSON answer as a cell of a table with these
// separators: a number with the wanted decimal mark, a text without its quotes,
// a list of plain values joined by semicolons, anything else as JSON.
func AppendCell(dst, value []byte, s Style) []byte {
	if value[0] == '[' && slices.ContainsFunc(itemsOf(value), func(item []byte) bool { return item[0] == '{' || item[0] == '[' }) {
		return s.appendText(dst, string(value))
	}
	return s.appendText(dst, s.cell(leaf(value)))
}

// AppendPicked appends one value of a JSON answer as a table in a format.
func AppendPicked(dst []byte, f Format, value []byte, s Style) []byte {
	t := flatTable(value)
	if f == XML {
		return appendTableXML(dst, t)
	}
	return appendCSV(dst, s, t)
}
