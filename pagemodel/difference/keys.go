package difference

import (
	"fmt"
	"strconv"
)

// keyed gives each change its key: what it is, where it stands by lasting
// identities, and the words; and, among those that are alike in all of these, which
// of them it is.
func keyed(changes []Change) []Change {
	seen := make(map[string]int, len(changes))
	for i := range changes {
		ch := &changes[i]
		key := fmt.Sprintf("%s/%d/%d/%d/%s/%s", ch.Kind, ch.Section, ch.Poem, ch.Line.Line, ch.Field, ch.about)
		if seen[key]++; seen[key] > 1 {
			key += "/" + strconv.Itoa(seen[key])
		}
		ch.Key = key
	}
	return changes
}
