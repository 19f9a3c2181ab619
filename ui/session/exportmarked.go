package session

import (
	"fmt"

	"headland/pagemodel"
	"headland/typeset/marks"
	"headland/typeset/marks/overlay"
	"headland/typeset/pdf"
)

// MarkedProof is the pages as they went out in a round, with the correction marks
// on them and white paper round them for what stands in the margin. It is made
// where the session is used, and may be written on another goroutine.
type MarkedProof struct {
	export   *Export
	overlays map[int]overlay.Overlay
}

// MarkedProof marks up a round's pages. It is refused where the face of its design
// is not here, as the pages would not be those that went out.
func (s *Session) MarkedProof(id pagemodel.RoundID) (*MarkedProof, error) {
	sent, err := s.Sent(id)
	if err != nil {
		return nil, err
	}
	list, err := s.proven(id)
	if err != nil {
		return nil, err
	}
	x, err := s.exportOf(sent.Setting)
	if err != nil {
		return nil, err
	}
	p := &MarkedProof{x, map[int]overlay.Overlay{}}
	for n := 1; n <= sent.Setting.Extent(); n++ {
		if o := marks.OnProof(sent.Setting, n, list, s.setter, marks.ProofRoom); !o.Empty() {
			p.overlays[n-1] = o
		}
	}
	x.about.Title = fmt.Sprintf("%s: corrections to %s", x.about.Title, sent.Round.Name)
	return p, nil
}

// PDF writes the proof to path: see [Export.PDF].
func (p *MarkedProof) PDF(path string, progress func(done, of int) bool) error {
	d := p.export.document(PDFOptions{})
	d.Sheet, d.Overlays = pdf.Sheet{Proof: marks.ProofRoom}, p.overlays
	return p.export.writePDF(path, d, progress)
}

// ExportMarkedProof writes the marked proof of a round to path: see
// [MarkedProof.PDF].
func (s *Session) ExportMarkedProof(path string, id pagemodel.RoundID, progress func(done, of int) bool) error {
	p, err := s.MarkedProof(id)
	if err != nil {
		return err
	}
	return p.PDF(path, progress)
}
