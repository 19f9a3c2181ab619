package prosody

// A Measure is what a line measures to the ear.
type Measure struct {
	// Syllables counts them: each word in its usual way, a function word in
	// its shortest, as "our" in one.
	Syllables int

	// Stress has a digit a syllable, as in Sound.Stress; but a function word
	// of one syllable, which the dictionary stresses as if it were said alone,
	// has 0. The metre that the line may be in is for who reads it to hear.
	Stress string

	// Guessed are the words, as written and in order, that are neither in the
	// dictionary nor told by a rule nor said by the poet.
	Guessed []string
}

// Line measures a line. It is the zero Measure for the nil Lexicon, for a line
// without words, and where there is no dictionary for one with a word that the
// poet has not said.
func (l *Lexicon) Line(text string) Measure {
	var m Measure
	if l == nil {
		return m
	}
	for _, word := range words(text) {
		s, ok := l.inLine(word)
		if !ok {
			return Measure{}
		}
		m.Syllables += s.Syllables
		m.Stress += s.Stress
		if s.Guessed {
			m.Guessed = append(m.Guessed, word)
		}
	}
	return m
}

// inLine is the sound of a word among others, or false where nobody knows.
func (l *Lexicon) inLine(word string) (Sound, bool) {
	ways := l.written(word)
	if len(ways) == 0 {
		return Sound{}, false
	}
	if said := l.said[sayKey(word)] != nil; said || !isFunctionWord(fold(word)) {
		return soundOf(ways[0]), true
	}
	s := soundOf(fewest(ways)[0])
	if s.Syllables == 1 {
		s.Stress = "0"
	}
	return s, true
}

// Rhymes says whether two words rhyme: alike from the last stressed vowel on, as
// the Princeton Encyclopedia has it (from memory), in any of the ways in which
// they are said. Words that sound the same but are written otherwise rhyme, as
// rime riche; a word doesn't rhyme with itself, nor with one whose sound is
// unknown.
//
// So an unstressed end rhymes with what is before it, as in "wanted" and
// "haunted", and never by itself: neither "that" in its weak form nor the last
// syllable of "poetry" does. A pronoun or a verb in its strong form may end a
// line, and rhymes in that. An article or a coordinator has stress only where it
// is named, and rhymes with nothing unless the poet has said it with stress (our
// own rule).
func (l *Lexicon) Rhymes(a, b string) bool {
	if fold(LastWord(a)) == fold(LastWord(b)) || l.unrhymed(a) || l.unrhymed(b) {
		return false
	}
	for _, one := range l.Word(a) {
		for _, other := range l.Word(b) {
			if one.Rhyme != "" && one.Rhyme == other.Rhyme {
				return true
			}
		}
	}
	return false
}

// unrhymed says whether a word is one that rhymes with nothing.
func (l *Lexicon) unrhymed(word string) bool {
	word = LastWord(word)
	return l != nil && l.said[sayKey(word)] == nil && weak[fold(word)]
}
