package pdf

import "fmt"

// An outliner writes bookmarks. Its pages say which object a page of the book
// is on; in spreads two of them share one.
type outliner struct {
	file  *file
	pages []ref
}

// outline writes the outline (ISO 12.3.3) and gives its root, or 0 where there
// are no bookmarks.
func (o outliner) outline(marks []Bookmark) (ref, error) {
	if len(marks) == 0 {
		return 0, nil
	}
	root := o.file.reserve()
	first, last, count, err := o.level(marks, root)
	o.file.put(root, fmt.Sprintf("<< /Type /Outlines /First %v /Last %v /Count %d >>", first, last, count))
	return root, err
}

// level writes bookmarks that stand beside each other under parent, and counts
// them with all that is under them: the outline is shown open.
func (o outliner) level(marks []Bookmark, parent ref) (first, last ref, count int, err error) {
	refs := make([]ref, len(marks))
	for i := range refs {
		refs[i] = o.file.reserve()
	}
	for i, m := range marks {
		if m.Page < 0 || m.Page >= len(o.pages) {
			return 0, 0, 0, fmt.Errorf("the contents send %q to page %d of %d; set the pages again", m.Title, m.Page+1, len(o.pages))
		}
		under, n, err := o.under(m.Under, refs[i])
		if err != nil {
			return 0, 0, 0, err
		}
		count += 1 + n
		o.file.put(refs[i], fmt.Sprintf("<< /Title %s /Parent %v /Dest [%v /Fit]%s%s >>",
			textString(m.Title), parent, o.pages[m.Page], beside(refs, i), under))
	}
	return refs[0], refs[len(refs)-1], count, nil
}

// under writes the bookmarks below one, and the entries that lead to them.
func (o outliner) under(marks []Bookmark, parent ref) (entries string, count int, err error) {
	if len(marks) == 0 {
		return "", 0, nil
	}
	first, last, count, err := o.level(marks, parent)
	return fmt.Sprintf(" /First %v /Last %v /Count %d", first, last, count), count, err
}

// beside is the entries that lead to the bookmarks before and after number i.
func beside(refs []ref, i int) string {
	var s string
	if i > 0 {
		s += fmt.Sprintf(" /Prev %v", refs[i-1])
	}
	if i+1 < len(refs) {
		s += fmt.Sprintf(" /Next %v", refs[i+1])
	}
	return s
}
