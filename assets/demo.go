package assets

import _ "embed"

//go:embed demo/collection.md
var demo []byte

// Demo returns the demo collection as a manuscript in Markdown. The bytes
// belong to this package and must not be written to.
func Demo() []byte { return demo }
