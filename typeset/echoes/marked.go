package echoes

import (
	"slices"

	"headland/pagemodel"
)

// A phrase is a marked word, or several that follow one another in a line.
type phrase struct {
	echo  int // the index of its mark
	stems []stem
}

// marked finds every echo that the poet marked.
func (b *book) marked() []Echo {
	marks := b.set.Collection().Echoes()
	places := b.heard(b.phrases(marks), len(marks))
	echoes := make([]Echo, len(marks))
	for i, mark := range marks {
		e := &echoes[i]
		e.Name, e.Marked = mark.Name, true
		e.Found = b.occurrences(inOrder(append(places[i], b.byHand(mark)...)))
		e.space()
		e.Expected = b.expectedOf(mark)
		e.Surprise = surprise(len(e.Found), e.Expected)
	}
	return echoes
}

// phrases are the marked words by their first stem.
func (b *book) phrases(marks []pagemodel.Echo) map[stem][]phrase {
	phrases := map[stem][]phrase{}
	for i, mark := range marks {
		for _, word := range mark.Words {
			if stems := b.words.stemsOf(word); len(stems) > 0 {
				phrases[stems[0]] = append(phrases[stems[0]], phrase{i, stems})
			}
		}
	}
	return phrases
}

// heard are the places where words that are marked stand, mark by mark.
func (b *book) heard(phrases map[stem][]phrase, marks int) [][]place {
	places := make([][]place, marks)
	if len(phrases) == 0 {
		return places
	}
	for number, poem := range b.poems {
		for i, t := range poem.tokens {
			for _, p := range phrases[t.stem] {
				if last, ok := p.opens(poem.tokens[i:]); ok {
					places[p.echo] = append(places[p.echo], place{number, int(t.line), int(t.from), int(last.to)})
				}
			}
		}
	}
	return places
}

// opens says whether words begin with the phrase, and with which of them it
// ends.
func (p phrase) opens(tokens []token) (last token, ok bool) {
	if len(tokens) < len(p.stems) {
		return token{}, false
	}
	for i, s := range p.stems {
		if tokens[i].stem != s || tokens[i].line != tokens[0].line {
			return token{}, false
		}
	}
	return tokens[len(p.stems)-1], true
}

// byHand are the poems and lines that are marked, as far as they are in the book.
func (b *book) byHand(mark pagemodel.Echo) []place {
	var places []place
	for number, poem := range b.poems {
		if slices.Contains(mark.Poems, poem.id) {
			places = append(places, place{number, wholePoem, 0, 0})
		}
		for _, ref := range mark.Lines {
			if ref.Poem != poem.id {
				continue
			}
			if i := slices.IndexFunc(poem.lines, func(l pagemodel.Line) bool { return l.ID() == ref.Line }); i >= 0 {
				places = append(places, place{number, i, 0, len(poem.lines[i].Text())})
			}
		}
	}
	return places
}

// expectedOf is how often what is marked would be expected, where it is single
// words of content and nothing else; otherwise 0.
func (b *book) expectedOf(mark pagemodel.Echo) float64 {
	if len(mark.Lines)+len(mark.Poems) > 0 {
		return 0
	}
	single := map[stem]bool{}
	for _, word := range mark.Words {
		stems := b.words.stemsOf(word)
		if len(stems) != 1 || b.isGrammar(stems[0]) {
			return 0
		}
		single[stems[0]] = true
	}
	sum, expected := 0.0, b.expecting()
	for s := range single {
		sum += expected(s)
	}
	return sum
}
