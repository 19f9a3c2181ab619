package ui

import (
	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset"
)

// do does an edit to the book, and tells if it can't be done.
func (d *desk) do(e pagemodel.Edit) {
	d.settleHand()
	d.said = ""
	d.try(d.session.Do(e))
	d.keepCaret()
	d.refresh(pageParts | footPart)
}

// settleHand ends whatever the hand or the keys hold before something else is
// done: a line being retyped is kept, all else is put back.
func (d *desk) settleHand() {
	if d.typing != nil {
		d.finishTyping()
	}
	if d.hand.grip != nil {
		d.putBack()
	}
}

// noLineWords are said where something is to be done with the line at hand and
// none is.
const noLineWords = "No line is at hand: press one, or take one with the keys ↑ ↓"

// withLine does what edit makes of the line at hand.
func (d *desk) withLine(edit func(pagemodel.LineRef, pagemodel.Line) pagemodel.Edit) {
	d.settleHand()
	ref, ok := d.session.Focus()
	line, in := d.lineAtHand()
	if !ok || !in {
		d.tell(noLineWords)
		return
	}
	if e := edit(ref, line); e != nil {
		d.do(e)
	}
}

// caretWord is the byte offset that the caret is before; false, with words at
// the foot, where it is before no word but the first.
func (d *desk) caretWord(line pagemodel.Line) (int, bool) {
	words := pagemodel.Words(line.Text())
	if d.word < 0 || len(words) == 0 || d.word <= words[0].Start {
		d.tell(noWordWords)
		return 0, false
	}
	return d.word, true
}

func (d *desk) breakInPoem() { d.withLine(d.breakAtCaret(pagemodel.InPoem)) }

func (d *desk) breakInEdition() { d.withLine(d.breakAtCaret(pagemodel.InEdition)) }

func (d *desk) breakAtCaret(in pagemodel.In) func(pagemodel.LineRef, pagemodel.Line) pagemodel.Edit {
	return func(ref pagemodel.LineRef, line pagemodel.Line) pagemodel.Edit {
		if at, ok := d.caretWord(line); ok {
			return pagemodel.Break{LineRef: ref, At: at, In: in}
		}
		return nil
	}
}

func (d *desk) turnHere() { d.withLine(d.turnEdit) }

func (d *desk) turnEdit(ref pagemodel.LineRef, line pagemodel.Line) pagemodel.Edit {
	if at, ok := d.caretWord(line); ok {
		return pagemodel.Keep{LineRef: ref, Turns: []int{at}, Reason: line.Reason(), Shown: line.Shown()}
	}
	return nil
}

func (d *desk) keepLine() { d.withLine(d.keepEdit) }

func (d *desk) keepEdit(ref pagemodel.LineRef, line pagemodel.Line) pagemodel.Edit {
	return pagemodel.Keep{LineRef: ref, Reason: line.Reason(), Shown: line.Shown()}
}

func (d *desk) unsettle() { d.withLine(d.unsettleEdit) }

func (d *desk) unsettleEdit(ref pagemodel.LineRef, _ pagemodel.Line) pagemodel.Edit {
	return pagemodel.Unsettle{LineRef: ref}
}

func (d *desk) joinLine() { d.withLine(d.joinEdit) }

// joinEdit runs the line below on. Where this edition breaks the line, it is
// the edition's break that goes: the one at the caret, or the first.
func (d *desk) joinEdit(ref pagemodel.LineRef, line pagemodel.Line) pagemodel.Edit {
	breaks := line.Breaks()
	if len(breaks) == 0 {
		return pagemodel.Join{LineRef: ref}
	}
	at := breaks[0]
	for _, b := range breaks {
		if b <= d.word {
			at = b
		}
	}
	return pagemodel.Join{LineRef: ref, In: pagemodel.InEdition, At: at}
}

func (d *desk) stanzaBreak() { d.withLine(d.stanzaEdit) }

// stanzaEdit opens a stanza break after the line, or closes the one there.
func (d *desk) stanzaEdit(ref pagemodel.LineRef, _ pagemodel.Line) pagemodel.Edit {
	poem, at, err := d.session.Collection().Line(ref)
	if err != nil {
		return nil
	}
	return pagemodel.StanzaBreak{LineRef: ref, Open: at.Line+1 < len(poem.Stanza(at).Lines())}
}

func (d *desk) widenGap() { d.withLine(d.spaceEdit(gapStep)) }

func (d *desk) narrowGap() { d.withLine(d.spaceEdit(-gapStep)) }

// spaceEdit widens the gap before the caret's word by a step, or, where the
// caret is before the first word or before none, the line's indent.
func (d *desk) spaceEdit(by pagemodel.Em) func(pagemodel.LineRef, pagemodel.Line) pagemodel.Edit {
	return func(ref pagemodel.LineRef, line pagemodel.Line) pagemodel.Edit {
		words := pagemodel.Words(line.Text())
		if d.word < 0 || len(words) == 0 || d.word <= words[0].Start {
			return pagemodel.Indent{LineRef: ref, To: max(0, line.Indent()+by)}
		}
		return pagemodel.SetGap{LineRef: ref, At: d.word, Width: max(0, gapBefore(line, d.word)+by)}
	}
}

func (d *desk) shedWord() { d.stepRule(-1) }

func (d *desk) drawWordUp() { d.stepRule(1) }

func (d *desk) landOwn() { d.landRule(ownLine) }

func (d *desk) landNext() { d.landRule(joinsNext) }

func (d *desk) nextUnsettled() { d.toUnsettled(1) }

func (d *desk) unsettledBefore() { d.toUnsettled(-1) }

func (d *desk) nextLeaf() { d.turnLeaf(1) }

func (d *desk) leafBefore() { d.turnLeaf(-1) }

func (d *desk) nearer() { d.zoomBy(1) }

func (d *desk) farther() { d.zoomBy(-1) }

func (d *desk) fitWindow() { d.zoomTo(0) }

// undo takes back what was last done; while a line is retyped, what was last
// typed.
func (d *desk) undo() { d.goBack((*typing).undo, d.session.Undo) }

// redo does it again.
func (d *desk) redo() { d.goBack((*typing).redo, d.session.Redo) }

func (d *desk) goBack(typed func(*typing) bool, done func() error) {
	if d.typing != nil {
		typed(d.typing)
		d.showTyping()
		return
	}
	d.settleHand()
	d.said = ""
	before := d.of
	d.try(done())
	d.keepCaret()
	d.showWhatChanged(before)
	d.refresh(allParts)
}

// showWhatChanged opens the book where it is no longer as it was, unless that
// is in sight.
func (d *desk) showWhatChanged(before *typeset.Setting) {
	if d.of == before {
		return
	}
	for _, n := range [...]int{d.spread.Verso, d.spread.Recto} {
		if n > 0 && !samePage(before, d.of, n) {
			return
		}
	}
	first := d.of.FirstMoved(before)
	for n := first; n > 0 && n <= max(d.of.Extent(), before.Extent()); n++ {
		if !samePage(before, d.of, n) {
			d.showPage(n)
			return
		}
	}
}

// lineMenu is what can be done with a line, asked for with the right button.
type lineMenu struct {
	at    fyne.Position
	items []lineItem
}

// lineItem is one thing that can be done, in words.
type lineItem struct {
	words string
	act   func()
}

// askAbout asks what is to be done with the line under the hand.
func (d *desk) askAbout(on target, at fyne.Position) {
	switch on.kind {
	case overRule:
		d.session.SetFocus(on.ref)
		d.word = -1
	case overWord:
		d.putAtHand(on)
	case overFault:
		d.goToFault(on.fault)
	case overStroke:
		d.session.SetFocus(on.ref)
		d.word = -1
	default:
		return
	}
	d.refresh(pageParts | footPart)
	d.ask(lineMenu{at, d.lineItems()})
}

// lineItems are the things that can be done with the line at hand as it is.
func (d *desk) lineItems() []lineItem {
	line, ok := d.lineAtHand()
	if !ok {
		return nil
	}
	var items []lineItem
	add := func(fits bool, words string, act func()) {
		if fits {
			items = append(items, lineItem{words, act})
		}
	}
	ref, _ := d.session.Focus()
	word := d.wordName(line)
	overlong, unsettled := d.overrunOf(ref) > 0, d.isUnsettled(ref)
	add(true, "Choices…", d.choose)
	add(overlong && (unsettled || !line.Kept()), "Let the line turn: it is settled", d.keepLine)
	add(overlong && word != "", "Turn it at "+word, d.turnHere)
	add(word != "", "Break before "+word+" in the poem", d.breakInPoem)
	add(word != "", "Break before "+word+" in this edition", d.breakInEdition)
	add(len(line.Breaks()) > 0, "Take back this edition’s break", d.joinLine)
	add(len(line.Breaks()) == 0 && !d.endsStanza(ref), "Join the line below to it", d.joinLine)
	add(line.State() != pagemodel.Unsettled, "Unsettle the line", d.unsettle)
	add(true, "Note a reason…", d.reason)
	add(true, "Retype the line", d.beginTyping)
	if say := d.wordToSay(line); say != "" {
		add(true, "Say how "+quoted(say)+" goes…", d.sayWord)
	}
	items = append(items, d.spaceItems(ref, line)...)
	return append(items, d.overruleItems(ref, line)...)
}

// wordName is the word after the caret, in quotation marks; "" where the line
// can't be parted there.
func (d *desk) wordName(line pagemodel.Line) string {
	for i, w := range pagemodel.Words(line.Text()) {
		if i > 0 && w.Start == d.word {
			return quoted(line.Text()[w.Start:w.End])
		}
	}
	return ""
}

func (d *desk) endsStanza(ref pagemodel.LineRef) bool {
	poem, at, err := d.session.Collection().Line(ref)
	return err != nil || at.Line+1 == len(poem.Stanza(at).Lines())
}
