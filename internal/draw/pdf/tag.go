package pdf

import "fmt"

// element is a part of the text that a reader that speaks can go to (ISO 32000-1,
// 14.8): a heading, a paragraph or a figure with its words. It may stand on several
// pages.
type element struct {
	tag, alt string
	kids     []kid
}

// kid is a marked part of a page.
type kid struct{ page, mark int }

// begin marks what follows on the page as part of an element, until end.
func (f *file) begin(e *element) {
	if len(e.kids) == 0 {
		f.elements = append(f.elements, e)
	}
	e.kids = append(e.kids, kid{f.now(), len(f.leaf.marked)})
	f.leaf.op(fmt.Sprintf("/%s <</MCID %d>> BDC", e.tag, len(f.leaf.marked)))
	f.leaf.marked = append(f.leaf.marked, e)
}

// enclose marks all that is on a page as part of an element.
func (f *file) enclose(page int, e *element) {
	f.turn(page)
	content := f.leaf.body
	f.leaf.body = nil
	f.begin(e)
	f.leaf.body = append(f.leaf.body, content...)
	f.end()
}

// artifact marks what follows as no part of the text, until end.
func (f *file) artifact() { f.leaf.op("/Artifact BMC") }

func (f *file) end() { f.leaf.op("EMC") }

// structure writes the elements as the objects from a number on: the root, the
// document, what stands on each page, and the elements. It is what a file without
// tags does not have.
func (f *file) structure(first int) {
	numbers := make(map[*element]int, len(f.elements))
	var kids []byte
	for i, e := range f.elements {
		numbers[e] = first + 3 + i
		kids = fmt.Appendf(kids, "%d 0 R ", numbers[e])
	}
	f.object(fmt.Sprintf("<</Type /StructTreeRoot /K [%d 0 R] /ParentTree %d 0 R /ParentTreeNextKey %d>>", first+1, first+2, len(f.leaves)))
	f.object(fmt.Sprintf("<</Type /StructElem /S /Document /P %d 0 R /K [%s]>>", first, kids))
	var pages []byte
	for i, l := range f.leaves {
		pages = fmt.Appendf(pages, "%d [", i)
		for _, e := range l.marked {
			pages = fmt.Appendf(pages, "%d 0 R ", numbers[e])
		}
		pages = append(pages, "] "...)
	}
	f.object(fmt.Sprintf("<</Nums [%s]>>", pages))
	for _, e := range f.elements {
		var parts []byte
		for _, k := range e.kids {
			parts = fmt.Appendf(parts, "<</Type /MCR /Pg %d 0 R /MCID %d>> ", firstPage+2*k.page, k.mark)
		}
		alt := ""
		if e.alt != "" {
			alt = " /Alt " + literal(e.alt)
		}
		f.object(fmt.Sprintf("<</Type /StructElem /S /%s /P %d 0 R%s /K [%s]>>", e.tag, first+1, alt, parts))
	}
}
