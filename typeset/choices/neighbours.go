package choices

import (
	"headland/pagemodel"
)

// mostCarried is how many words are carried over a line's end at most, unless
// more are needed for the line to fit.
const mostCarried = 3

// neighbours are the words that may go to the line below or come up from it, and
// the join with it, all within the stanza.
func (f *finder) neighbours() {
	lines := f.poem.Stanza(f.at).Lines()
	if f.at.Line+1 < len(lines) {
		f.carryDown(lines[f.at.Line+1])
		f.carryUp(lines[f.at.Line+1])
		f.runOn()
	}
}

// carryDown draws words from the line's end into the line below: up to a few,
// or as many as make the line fit.
func (f *finder) carryDown(below pagemodel.Line) {
	text := f.line.Text()
	words := pagemodel.Words(text)
	for n, fit := 1, false; n < len(words) && (n <= mostCarried || !fit); n++ {
		title := "“" + text[words[len(words)-n].Start:words[len(words)-1].End] + "” to the line below"
		fit = f.carry(title, n, below.ID())
	}
}

// carryUp draws words up from the line below. What is overlong already has no
// use for them.
func (f *finder) carryUp(below pagemodel.Line) {
	words := pagemodel.Words(below.Text())
	for n := 1; n < len(words) && n <= mostCarried && f.overrun == 0; n++ {
		f.carry("“"+below.Text()[words[0].Start:words[n-1].End]+"” up from the line below", -n, below.ID())
	}
}

// carry says whether the line fits afterwards.
func (f *finder) carry(title string, count int, below pagemodel.LineID) bool {
	e := pagemodel.Carry{LineRef: f.ref, Count: count}
	tried, ok := f.try(e)
	if !ok {
		return false
	}
	f.tell(Choice{Head: Space, Title: title, Edit: e}, tried, f.ref.Line, below)
	return f.all[len(f.all)-1].Parts[0].Overrun == 0
}

// runOn joins the line below to the line.
func (f *finder) runOn() {
	e := pagemodel.Join{LineRef: f.ref}
	if tried, ok := f.try(e); ok {
		f.tell(Choice{Head: Space, Title: "run on with the line below", Edit: e}, tried, f.ref.Line)
	}
}
