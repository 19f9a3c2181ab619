package pagemodel

import (
	"math"
	"strings"
	"testing"
)

// TestVoice holds what a voice may be, and that the zero one is the usual one.
func TestVoice(t *testing.T) {
	c := testBook()
	if c.Voice() != UsualVoice() || UsualVoice().check() != nil {
		t.Errorf("a book without a voice has %+v", c.Voice())
	}
	own := Voice{Syllables: 160, LineEnd: 0.5, RunOn: 0.1, Stanza: 1, Title: 3, Words: 120}
	d, err := SetVoice{own}.Apply(c)
	if err != nil || d.Voice() != own {
		t.Fatalf("got %+v, %v", d, err)
	}
	if d, err = (SetVoice{}).Apply(d); err != nil || d.Voice() != UsualVoice() {
		t.Errorf("the voice taken back: %+v, %v", d.Voice(), err)
	}
	for _, wrong := range []struct {
		voice Voice
		words string
	}{
		{Voice{Syllables: 29, Words: 150}, "from 30 to 1000 syllables"},
		{Voice{Syllables: math.NaN(), Words: 150}, "from 30 to 1000 syllables"},
		{Voice{Syllables: 185, Words: math.Inf(1)}, "from 20 to 600 words"},
		{Voice{Syllables: 185, Words: 150, Stanza: -1}, "from 0 to 60"},
		{Voice{Syllables: 185, Words: 150, Title: math.NaN()}, "from 0 to 60"},
	} {
		if _, err := (SetVoice{wrong.voice}).Apply(c); err == nil || !strings.Contains(err.Error(), wrong.words) {
			t.Errorf("%+v: got %v", wrong.voice, err)
		}
	}
}
