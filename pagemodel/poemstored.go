package pagemodel

import (
	"encoding/json"
	"fmt"
	"unicode/utf8"
)

// The bodies below are how a poem is written in a file. Their field names are
// part of the file's format.

type lineBody struct {
	ID       LineID `json:"id"`
	Text     string `json:"text"`
	Spans    []Span `json:"spans,omitempty"`
	Indent   Em     `json:"indent,omitempty"`
	Range    Range  `json:"range,omitempty"`
	Dropped  bool   `json:"dropped,omitempty"`
	Above    int    `json:"above,omitempty"`
	Gaps     []Gap  `json:"gaps,omitempty"`
	Breaks   []int  `json:"breaks,omitempty"`
	Turns    []int  `json:"turns,omitempty"`
	Kept     bool   `json:"kept,omitempty"`
	Turned   string `json:"turned,omitempty"`
	On       string `json:"on,omitempty"`
	Tied     bool   `json:"tied,omitempty"`
	Opens    bool   `json:"opens,omitempty"`
	Reason   string `json:"reason,omitempty"`
	Shown    bool   `json:"shown,omitempty"`
	From     *Seam  `json:"from,omitempty"`
	Absorbed []Seam `json:"absorbed,omitempty"`
}

func bodyOf(l Line) lineBody {
	d := &l.decision
	return lineBody{
		ID: l.id, Text: l.text, Spans: l.spans, Indent: l.indent, Range: l.rng, Dropped: l.dropped, Above: l.above,
		Gaps: l.gaps, Breaks: l.breaks, Turns: d.turns, Kept: d.kept, Turned: d.turned, On: d.on, Tied: l.tied, Opens: l.opens,
		Reason: d.reason, Shown: d.shown, From: l.from, Absorbed: l.absorbed,
	}
}

func (b *lineBody) line() Line {
	return Line{
		id: b.ID, text: b.Text, spans: b.Spans, indent: b.Indent, rng: b.Range, dropped: b.Dropped, above: b.Above,
		gaps: b.Gaps, breaks: b.Breaks, decision: decision{b.Kept, b.Turns, b.Turned, b.On, b.Reason, b.Shown},
		tied: b.Tied, opens: b.Opens, from: b.From, absorbed: b.Absorbed,
	}
}

type stanzaBody struct {
	Kind  StanzaKind `json:"kind,omitempty"`
	Lines []lineBody `json:"lines"`
}

type partBody struct {
	Heading string       `json:"heading,omitempty"`
	Stanzas []stanzaBody `json:"stanzas"`
}

type poemBody struct {
	ID    PoemID     `json:"id"`
	Head  PoemHead   `json:"head"`
	Parts []partBody `json:"parts"`
}

func encodePoem(p *Poem) []byte {
	body := poemBody{ID: p.id, Head: p.head, Parts: make([]partBody, len(p.parts))}
	for i, part := range p.parts {
		body.Parts[i] = partBody{part.heading, make([]stanzaBody, len(part.stanzas))}
		for j, s := range part.stanzas {
			lines := make([]lineBody, len(s.lines))
			for k, l := range s.lines {
				lines[k] = bodyOf(l)
			}
			body.Parts[i].Stanzas[j] = stanzaBody{s.kind, lines}
		}
	}
	return encode(body)
}

func decodePoem(b []byte) (*Poem, error) {
	var body poemBody
	if err := json.Unmarshal(b, &body); err != nil {
		return nil, err
	}
	parts := make([]Part, len(body.Parts))
	for i, part := range body.Parts {
		parts[i] = Part{part.Heading, make([]Stanza, len(part.Stanzas))}
		for j, s := range part.Stanzas {
			lines := make([]Line, len(s.Lines))
			for k, l := range s.Lines {
				lines[k] = l.line()
				if err := lines[k].check(); err != nil {
					return nil, err
				}
			}
			parts[i].stanzas[j] = Stanza{s.Kind, lines}
		}
	}
	if len(parts) == 0 {
		return nil, fmt.Errorf("poem %d has no parts", body.ID)
	}
	return NewPoem(body.ID, body.Head, parts), nil
}

// check says why the line can't be one, so that what reads it later may rely
// on offsets that lie on characters of the text.
func (l Line) check() error {
	bad := func(what string) error { return fmt.Errorf("line %d has %s outside its text", l.id, what) }
	for _, s := range l.spans {
		if s.Start < 0 || s.End > len(l.text) || s.Start >= s.End || !l.onRune(s.Start) || !l.onRune(s.End) {
			return bad("a style")
		}
	}
	for _, g := range l.gaps {
		if !l.onRune(g.At) {
			return bad("a gap")
		}
	}
	for _, o := range append(append([]int(nil), l.breaks...), l.decision.turns...) {
		if !l.onRune(o) {
			return bad("a break")
		}
	}
	return nil
}

// onRune says that the offset lies at the start of a character or at the end.
func (l Line) onRune(at int) bool {
	return at == len(l.text) || at >= 0 && at < len(l.text) && utf8.RuneStart(l.text[at])
}
