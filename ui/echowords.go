package ui

import (
	"fmt"
	"image"
	"math"
	"strings"

	"headland/typeset/echoes"
)

// timesWords say how often an echo is there.
func timesWords(e *echoes.Echo) string {
	switch len(e.Found) {
	case 0:
		return "not there"
	case 1:
		return "once"
	}
	return fmt.Sprintf("%d times", len(e.Found))
}

// spacingWords say in how many poems an echo is, how near it comes to itself, and
// how often the language would have it.
func spacingWords(e *echoes.Echo) string {
	if len(e.Found) == 0 {
		return "it stands nowhere in the book now"
	}
	near, often := "", ""
	switch n := e.Nearest.Poems; {
	case n == 1:
		near = "nearest: in the next poem"
	case n > 1:
		near = fmt.Sprintf("nearest: %d poems apart", n)
	}
	if n := e.Nearest.Pages; near != "" {
		near += ", " + apartWords(n)
	}
	if e.Expected > 0 {
		often = "the language would have it " + expectedWords(e.Expected)
	}
	return joined(" · ", "in "+counted(e.Poems, "poem", "poems"), near, often)
}

// apartWords say how far apart two pages are.
func apartWords(pages int) string {
	switch pages {
	case 0:
		return "on one page"
	case 1:
		return "1 page on"
	}
	return fmt.Sprintf("%d pages on", pages)
}

// expectedWords say how often something would be expected.
func expectedWords(n float64) string {
	switch {
	case n < 0.5:
		return "hardly once"
	case n < 1.5:
		return "about once"
	}
	return fmt.Sprintf("about %.0f times", math.Round(n))
}

// placeTitle is the name of the poem of the place at hand, and its page.
func (v *echoView) placeTitle() string {
	o, ok := v.occurrence()
	if !ok {
		return ""
	}
	words := ""
	if p, _, in := v.w.desk.of.Collection().Poem(o.Ref.Poem); in {
		words = nameInWords(p)
	}
	if o.Ref.Line == 0 {
		words += ", the whole poem"
	}
	return words + ", page " + v.w.desk.of.FolioOf(o.Page)
}

// markedWords are the words of what the poet marked under a name of its own.
func (v *echoView) markedWords(e *echoes.Echo) string {
	if !e.Marked {
		return ""
	}
	marked := v.w.echoOf(e.Name)
	if len(marked.Words) == 0 || len(marked.Words) == 1 && strings.EqualFold(marked.Words[0], e.Name) {
		return ""
	}
	return counted(len(marked.Words), "word", "words") + ": " + strings.Join(marked.Words, ", ")
}

// captionBase is the baseline of the words over the line at hand.
func (v *echoView) captionBase() int { return v.rowsEnd() + v.units(echoCaption)*3/5 }

// markWords say what marks or unmarks the echo at hand.
func (v *echoView) markWords() string {
	if v.all[v.at].Marked {
		return "Take the mark off (Delete)"
	}
	return "Mark it as an echo (Insert)"
}

// markAt is where those words can be pressed.
func (v *echoView) markAt() image.Rectangle {
	wide := v.units(v.w.desk.k.words(v.markWords(), wordSize-1, true).Width.Points())
	right, base := v.view.Dx()-v.units(overMargin), v.captionBase()
	return image.Rect(right-wide, base-v.units(18), right, base+v.units(8))
}

// drawCaption writes what the echo at hand is over the line, and the words that
// mark it.
func (v *echoView) drawCaption(s *slate) {
	d, e := v.w.desk, &v.all[v.at]
	colors, base, mark := d.light.palette(), v.captionBase(), v.markAt()
	words := quoted(e.Name)
	if len(e.Found) > 0 {
		words += fmt.Sprintf(", %d of %d", v.place(v.at)+1, len(e.Found))
	}
	words = joined(" · ", words, v.markedWords(e), spacingWords(e))
	words = d.fitting(s, words, mark.Min.X-v.units(overMargin+20))
	s.write(d.k.words(words, wordSize-1, false), v.units(overMargin), base, colors.words)
	end := s.write(d.k.words(v.markWords(), wordSize-1, true), mark.Min.X, base, colors.words)
	if v.over.kind == overEchoMark {
		s.fill(image.Rect(mark.Min.X, base+v.units(5), end, base+v.units(5)+max(1, v.units(1))), colors.words)
	}
}

// tell says at the foot what can be done.
func (v *echoView) tell() {
	d := v.w.desk
	switch on := v.over; on.kind {
	case overEchoLine:
		d.tell("Press: the book opens here")
	case overEchoTick:
		o := &v.all[on.echo].Found[on.place]
		d.tell("Page " + d.of.FolioOf(o.Page) + " · press: its line is shown below")
	default:
		words := fmt.Sprintf("Echo %d of %d · ↑ ↓ walk them · ← → its places", v.at+1, len(v.all))
		d.tell(words + " · Enter opens the book there · Esc leaves them")
	}
}
