package pdf

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
	"time"
)

// producer is the program's name as readers show it.
const producer = "Headland"

// info writes the document information dictionary (ISO 14.3.3). The date is
// written in universal time.
func (f *file) info(d *Document) ref {
	var b strings.Builder
	if d.Title != "" {
		fmt.Fprintf(&b, "/Title %s ", textString(d.Title))
	}
	if d.Author != "" {
		fmt.Fprintf(&b, "/Author %s ", textString(d.Author))
	}
	if !d.Created.IsZero() {
		date := d.Created.UTC().Format("20060102150405")
		fmt.Fprintf(&b, "/CreationDate (D:%sZ) /ModDate (D:%sZ) ", date, date)
	}
	return f.add(fmt.Sprintf("<< %s/Producer (%s) >>", b.String(), producer))
}

// metadata writes the same once more as an XMP packet (ISO 14.3.2; ISO
// 16684-1), which catalogues read. It is not compressed, so that programs that
// know nothing of PDF find it.
func (f *file) metadata(d *Document) ref {
	var b strings.Builder
	b.WriteString("<?xpacket begin=\"\ufeff\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" + xmpHead)
	writeXMP(&b, d.Title, "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">%s</rdf:li></rdf:Alt></dc:title>\n")
	writeXMP(&b, d.Author, "<dc:creator><rdf:Seq><rdf:li>%s</rdf:li></rdf:Seq></dc:creator>\n")
	writeXMP(&b, d.Lang, "<dc:language><rdf:Bag><rdf:li>%s</rdf:li></rdf:Bag></dc:language>\n")
	if !d.Created.IsZero() {
		date := d.Created.UTC().Format(time.RFC3339)
		writeXMP(&b, date, "<xmp:CreateDate>%s</xmp:CreateDate>\n")
		writeXMP(&b, date, "<xmp:ModifyDate>%s</xmp:ModifyDate>\n")
	}
	writeXMP(&b, producer, "<pdf:Producer>%s</pdf:Producer>\n")
	b.WriteString(xmpFoot + "<?xpacket end=\"r\"?>")
	return f.addRaw("/Type /Metadata /Subtype /XML ", []byte(b.String()))
}

const xmpHead = `<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:format>application/pdf</dc:format>
`

const xmpFoot = `</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
`

// writeXMP writes a value into its element, or nothing if there is none.
func writeXMP(b *strings.Builder, value, element string) {
	if value == "" {
		return
	}
	var escaped bytes.Buffer
	_ = xml.EscapeText(&escaped, []byte(value)) // a bytes.Buffer takes everything
	fmt.Fprintf(b, element, escaped.String())
}
