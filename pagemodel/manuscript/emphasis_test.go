package manuscript

import "testing"

// TestEmphasis holds examples of CommonMark 0.31.2, "Emphasis and strong
// emphasis", and the ways that a verse line differs from them.
func TestEmphasis(t *testing.T) {
	for raw, want := range map[string]string{
		"*foo bar*":                    `foo bar i:"foo bar"`,
		"a * foo bar*":                 "a * foo bar*",
		`a*"foo"*`:                     `a*"foo"*`,
		"*\u00a0a*":                    "*\u00a0a*",
		"foo*bar*":                     `foobar i:"bar"`,
		"_foo bar_":                    `foo bar i:"foo bar"`,
		"foo_bar_":                     "foo_bar_",
		"пристаням_стремятся_":         "пристаням_стремятся_",
		"foo-_(bar)_":                  `foo-(bar) i:"(bar)"`,
		"_foo_bar_baz_":                `foo_bar_baz i:"foo_bar_baz"`,
		"_(bar)_.":                     `(bar). i:"(bar)"`,
		"_foo*":                        "_foo*",
		"*foo bar *":                   "*foo bar *",
		"*(*foo":                       "*(*foo",
		"*(*foo*)*":                    `(foo) i:"(foo)"`,
		"__foo, __bar__, baz__":        `foo, bar, baz b:"foo, bar, baz"`,
		"foo**bar**":                   `foobar b:"bar"`,
		"*foo **bar** baz*":            `foo bar baz i:"foo " ib:"bar" i:" baz"`,
		"*foo**bar**baz*":              `foobarbaz i:"foo" ib:"bar" i:"baz"`,
		"*foo**bar*":                   `foo**bar i:"foo**bar"`,
		"***foo** bar*":                `foo bar ib:"foo" i:" bar"`,
		"*foo**bar***":                 `foobar i:"foo" ib:"bar"`,
		"foo***bar***baz":              `foobarbaz ib:"bar"`,
		"foo******bar*********baz":     `foobar***baz b:"bar"`,
		"**foo*":                       `*foo i:"foo"`,
		"*foo**":                       `foo* i:"foo"`,
		"_a _b c* d_ e_ *f*":           `a b c* d e f i:"a b c* d e" i:"f"`,
		"*a [gap 1] [caps]b* c[/caps]": `a b c i:"a " ic:"b" c:" c" 1em@2`,
	} {
		c, notices := read(t, "a.md", "##\n\n"+raw)
		if got := sketch(c); got != "¶ {"+want+"}" || len(notices) > 0 {
			t.Errorf("%q: got %s %v, want %s", raw, got, notices, want)
		}
	}
}
