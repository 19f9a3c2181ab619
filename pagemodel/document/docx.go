package document

import (
	"io"
	"strconv"
)

// Names of Office Open XML (ECMA-376, part 1, transitional).
const (
	wordSpace     = "http://schemas.openxmlformats.org/wordprocessingml/2006/main"
	relationSpace = "http://schemas.openxmlformats.org/package/2006/relationships"
	relationTypes = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/"
	wordType      = "application/vnd.openxmlformats-officedocument.wordprocessingml."
)

// WriteDOCX writes the document as Office Open XML. What can't be written is left
// out: see [Document.Notices]. The error is the writer's.
func (d Document) WriteDOCX(w io.Writer) error {
	return writeArchive(w, false,
		file{"[Content_Types].xml", docxTypes()},
		file{"_rels/.rels", relations(
			relation{relationTypes + "officeDocument", "word/document.xml"},
			relation{"http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties", "docProps/core.xml"})},
		file{"word/_rels/document.xml.rels", relations(
			relation{relationTypes + "styles", "styles.xml"}, relation{relationTypes + "settings", "settings.xml"})},
		file{"word/document.xml", d.docxText()},
		file{"word/styles.xml", d.docxStyles()},
		file{"word/settings.xml", docxSettings()},
		file{"docProps/core.xml", d.docxCore()},
	)
}

func docxTypes() []byte {
	t := begin()
	t.start("Types", "xmlns", "http://schemas.openxmlformats.org/package/2006/content-types")
	t.lone("Default", "Extension", "rels", "ContentType", "application/vnd.openxmlformats-package.relationships+xml")
	t.lone("Default", "Extension", "xml", "ContentType", "application/xml")
	for _, part := range [][2]string{
		{"/word/document.xml", wordType + "document.main+xml"}, {"/word/styles.xml", wordType + "styles+xml"},
		{"/word/settings.xml", wordType + "settings+xml"},
		{"/docProps/core.xml", "application/vnd.openxmlformats-package.core-properties+xml"},
	} {
		t.lone("Override", "PartName", part[0], "ContentType", part[1])
	}
	t.end("Types")
	return t.Bytes()
}

// relation is a part of the document by what it is to another.
type relation struct{ kind, target string }

func relations(list ...relation) []byte {
	t := begin()
	t.start("Relationships", "xmlns", relationSpace)
	for i, r := range list {
		t.lone("Relationship", "Id", "rId"+strconv.Itoa(i+1), "Type", r.kind, "Target", r.target)
	}
	t.end("Relationships")
	return t.Bytes()
}

// docxSettings keep word processors from setting the text as older ones did.
func docxSettings() []byte {
	t := begin()
	t.start("w:settings", "xmlns:w", wordSpace)
	t.start("w:compat")
	t.lone("w:compatSetting", "w:name", "compatibilityMode", "w:uri", "http://schemas.microsoft.com/office/word", "w:val", "15")
	t.end("w:compat")
	t.end("w:settings")
	return t.Bytes()
}

// docxCore is what is known of the document besides its text (ECMA-376, part 2).
func (d Document) docxCore() []byte {
	t := begin()
	t.start("cp:coreProperties", "xmlns:cp", "http://schemas.openxmlformats.org/package/2006/metadata/core-properties",
		"xmlns:dc", "http://purl.org/dc/elements/1.1/")
	t.whole("dc:title", d.Title)
	t.whole("dc:creator", d.Author)
	t.whole("dc:language", d.tongue())
	t.end("cp:coreProperties")
	return t.Bytes()
}

// tongue is the document's language, which is always one.
func (d Document) tongue() string {
	if d.Language == "" {
		return usualTongue
	}
	return d.Language
}
