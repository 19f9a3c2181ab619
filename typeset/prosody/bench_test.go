package prosody

import (
	"testing"

	"headland/assets"
)

// BenchmarkLoad unpacks the dictionary, as the first call of English does.
func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		load(assets.Pronunciations())
	}
}

// BenchmarkLine measures a line whose words the dictionary has, and one whose
// words it lacks.
func BenchmarkLine(b *testing.B) {
	for name, line := range map[string]string{
		"known":   sonnet18[0],
		"guessed": "glorping untroddener yestreens bewhispering unovened",
	} {
		b.Run(name, func(b *testing.B) {
			l := English()
			for b.Loop() {
				l.Line(line)
			}
		})
	}
}
