// Package locale sees to it that the toolkit can read the name of the user's
// language. Fyne asks for it before main begins, and where it is the C locale
// with a character set, as in LANG=C.UTF-8, it takes "C" for a language, prints
// an error and goes on in English. So this package asks for English first.
//
// It must begin before Fyne's packages do. Go begins packages in the order of
// their import paths, each once all that it imports have begun (The Go
// Programming Language Specification, Program initialization); this one imports
// next to nothing, so its turn comes long before Fyne's. The test in
// headland/ui/command that runs the program sees that it does. It does nothing
// else and knows nothing of the program.
package locale

import (
	"os"
	"strings"
)

func init() {
	if os.Getenv("LANGUAGE") == "" && isC(fromEnvironment()) {
		_ = os.Setenv("LANGUAGE", "en") // if it can't be set, the error is printed: no harm
	}
}

// fromEnvironment is the locale that messages are to be in (POSIX, 8.2: the
// first of these that is set).
func fromEnvironment() string {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		if value := os.Getenv(name); value != "" {
			return value
		}
	}
	return ""
}

// isC says that a locale is C with a character set.
func isC(locale string) bool { return strings.HasPrefix(locale, "C.") }
