package document

import "io"

const odtType = "application/vnd.oasis.opendocument.text"

// odtSpaces are the namespaces of OpenDocument (ODF 1.2, part 1, 1.4), as names and
// values of attributes in turn.
var odtSpaces = func() []string {
	const oasis = "urn:oasis:names:tc:opendocument:xmlns:"
	list := []string{"xmlns:fo", oasis + "xsl-fo-compatible:1.0", "xmlns:svg", oasis + "svg-compatible:1.0", "xmlns:dc", "http://purl.org/dc/elements/1.1/"}
	for _, name := range []string{"office", "style", "text", "table", "meta"} {
		list = append(list, "xmlns:"+name, oasis+name+":1.0")
	}
	return append(list, "office:version", "1.2")
}()

// WriteODT writes the document as OpenDocument text. What can't be written is left
// out: see [Document.Notices]. The error is the writer's.
func (d Document) WriteODT(w io.Writer) error {
	return writeArchive(w, true,
		file{"mimetype", []byte(odtType)},
		file{"META-INF/manifest.xml", odtManifest()},
		file{"meta.xml", d.odtMeta()},
		file{"styles.xml", d.odtStyles()},
		file{"content.xml", d.odtText()},
	)
}

func odtManifest() []byte {
	t := begin()
	t.start("manifest:manifest", "xmlns:manifest", "urn:oasis:names:tc:opendocument:xmlns:manifest:1.0", "manifest:version", "1.2")
	t.lone("manifest:file-entry", "manifest:full-path", "/", "manifest:version", "1.2", "manifest:media-type", odtType)
	for _, name := range []string{"meta.xml", "styles.xml", "content.xml"} {
		t.lone("manifest:file-entry", "manifest:full-path", name, "manifest:media-type", "text/xml")
	}
	t.end("manifest:manifest")
	return t.Bytes()
}

// odtMeta is what is known of the document besides its text.
func (d Document) odtMeta() []byte {
	t := begin()
	t.start("office:document-meta", odtSpaces...)
	t.start("office:meta")
	t.whole("dc:title", d.Title)
	t.whole("meta:initial-creator", d.Author)
	t.whole("dc:creator", d.Author)
	t.whole("dc:language", d.tongue())
	t.end("office:meta")
	t.end("office:document-meta")
	return t.Bytes()
}
