package pagemodel

import (
	"crypto/sha256"
	"encoding/binary"
)

// keyBytes gathers what a poem's setting depends on, each piece with its
// length before it so that no two poems can run together into one key.
type keyBytes []byte

func (k keyBytes) number(n int64) keyBytes { return binary.AppendVarint(k, n) }

func (k keyBytes) words(s string) keyBytes { return append(k.number(int64(len(s))), s...) }

func (k keyBytes) yes(b bool) keyBytes {
	if b {
		return append(k, 1)
	}
	return append(k, 0)
}

func (k keyBytes) offsets(list []int) keyBytes {
	k = k.number(int64(len(list)))
	for _, o := range list {
		k = k.number(int64(o))
	}
	return k
}

func (p *Poem) contentKey() [sha256.Size]byte {
	k := make(keyBytes, 0, 64*p.lines+256)
	k = k.number(int64(p.id)).head(p.head).number(int64(len(p.parts)))
	for _, part := range p.parts {
		k = k.words(part.heading).number(int64(len(part.stanzas)))
		for _, s := range part.stanzas {
			k = k.number(int64(s.kind)).number(int64(len(s.lines)))
			for _, l := range s.lines {
				k = k.line(l)
			}
		}
	}
	return sha256.Sum256(k)
}

func (k keyBytes) head(h PoemHead) keyBytes {
	k = k.words(h.Title).words(h.Short).words(h.Subtitle).words(h.Dedication).number(int64(len(h.Epigraph)))
	for _, line := range h.Epigraph {
		k = k.words(line)
	}
	k = k.words(h.Place).words(string(h.Form)).number(int64(h.Start)).yes(h.Blank).number(int64(h.Run))
	return k.number(int64(h.Size)).number(int64(h.Edge)).number(int64(h.Lie))
}

func (k keyBytes) line(l Line) keyBytes {
	k = k.number(int64(l.id)).words(l.text).number(int64(l.indent)).number(int64(l.rng)).yes(l.dropped).number(int64(l.above)).yes(l.decision.kept).words(l.decision.turned).yes(l.tied).yes(l.opens)
	k = k.number(int64(len(l.spans)))
	for _, s := range l.spans {
		k = k.number(int64(s.Start)).number(int64(s.End)).number(int64(s.Style))
	}
	k = k.number(int64(len(l.gaps)))
	for _, g := range l.gaps {
		k = k.number(int64(g.At)).number(int64(g.Width)).yes(g.Tab)
	}
	return k.offsets(l.breaks).offsets(l.decision.turns)
}
