package typeset

import "headland/pagemodel"

// Before an overlong line turns, its word spaces may be narrowed, just as much
// as is needed and no more than the design's limit; where that is not enough,
// they stay as they are and the line turns. Word spaces are U+0020: no-break
// spaces and gaps keep their width, and so does what stands before a tab stop,
// where narrowing gains nothing.

// canTighten says that the word spaces of a piece may be narrowed by over in
// all, and how many there are.
func (f *fitter) canTighten(l *pagemodel.Line, p *piece, over Length) (spaces Length, ok bool) {
	if f.design.Tighten <= 0 {
		return 0, false
	}
	from, least := lastTab(l), Length(0)
	for r := range p.runs {
		run := &p.runs[r]
		for i := range run.Glyphs {
			if !run.wordSpace(i, from) {
				continue
			}
			if spaces == 0 || run.Glyphs[i].Advance < least {
				least = run.Glyphs[i].Advance
			}
			spaces++
		}
	}
	return spaces, over <= spaces*(least*Length(f.design.Tighten)/100)
}

// tighten narrows the word spaces of a piece evenly by over in all, what can't
// be shared out going to the first of them; or says false and leaves the piece
// alone.
func (f *fitter) tighten(l *pagemodel.Line, p *piece, over Length) bool {
	spaces, ok := f.canTighten(l, p, over)
	if !ok {
		return false
	}
	from, taken := lastTab(l), Length(0)
	share, rest := over/spaces, over%spaces
	for r := range p.runs {
		run := &p.runs[r]
		before := taken
		run.X -= before
		for i := range run.Glyphs {
			g := &run.Glyphs[i]
			g.X -= taken - before
			if !run.wordSpace(i, from) {
				continue
			}
			narrower := share
			if rest > 0 {
				narrower, rest = narrower+1, rest-1
			}
			g.Advance -= narrower
			taken += narrower
		}
		run.Width -= taken - before
	}
	p.width -= over
	return true
}

// wordSpace says that glyph i is a word space at the byte offset from or behind
// it.
func (run *Run) wordSpace(i, from int) bool {
	at := run.Glyphs[i].Cluster
	if run.Text[at] != ' ' || run.Start+at < from {
		return false
	}
	return i+1 == len(run.Glyphs) && at+1 == len(run.Text) || i+1 < len(run.Glyphs) && run.Glyphs[i+1].Cluster == at+1
}
