//go:build ignore

// Boil makes words.gz out of WordNet 3.0 as Debian's package wordnet-base
// carries it. In an empty folder:
//
//	apt-get download wordnet-base=1:3.0-37
//	dpkg -x wordnet-base_1%3a3.0-37_all.deb .
//	go run …/assets/frequencies/boil.go usr/share/wordnet …/assets/frequencies/words.gz
//
// It refuses any other input than the one whose SHA-256 stands below.
//
// It counts two texts. One is the running text of WordNet's own definitions and
// examples, some 1.4 million words of the plain English of about 2000. The
// other, which tells better how often tales have doors and nights, can be
// counted only by its base words: the senses that WordNet's editors tagged in
// their semantic concordance, which is American prose, most of it out of the Brown
// Corpus of 1961 (from memory). cntlist.rev says how often each sense was tagged.
package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"log"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// read are the files that are read, in this order.
var read = []string{
	"cntlist.rev", "data.adj", "data.adv", "data.noun", "data.verb", "index.adj", "index.adv", "index.noun", "noun.exc", "verb.exc",
}

// inputSum is the SHA-256 of these files one after another.
const inputSum = "5267cda2098feefa552d28bb4674026b99038df9d204e5a67adea1d5e585557d"

// word is a word of the running text: letters with apostrophes among them.
var word = regexp.MustCompile(`[\pL\pM]+(?:'[\pL\pM]+)*`)

// plain is a word that is kept; the others are borrowed or contracted.
var plain = regexp.MustCompile(`^[a-z]+$`)

// homographs are irregular forms that are more often those of another word.
var homographs = []string{"canning", "clove", "does", "dogged", "lives", "rose", "rung", "soles", "spatting", "storied"}

// plurals are such forms that have an entry of their own and are still plurals.
var plurals = []string{"elves", "men", "oxen", "teeth"}

// seldom is how much seldomer than its base word a form was tagged as a word of
// its own, where it is taken to be none: said and found, as adjectives, are.
const seldom = 20

func main() {
	log.SetFlags(0)
	if len(os.Args) != 3 {
		log.Fatal("usage: go run boil.go usr/share/wordnet words.gz")
	}
	files, sum := map[string]string{}, sha256.New()
	for _, name := range read {
		data, err := os.ReadFile(filepath.Join(os.Args[1], name))
		if err != nil {
			log.Fatal(err)
		}
		files[name] = string(data)
		sum.Write(data)
	}
	if got := hex.EncodeToString(sum.Sum(nil)); got != inputSum {
		log.Fatalf("the files have the SHA-256 %s, want %s: take version 1:3.0-37 of the package", got, inputSum)
	}
	output, err := pack(lines(files))
	if err != nil {
		log.Fatal(err)
	}
	if err := os.WriteFile(os.Args[2], output, 0o644); err != nil {
		log.Fatal(err)
	}
}

// lines are the words in the order of their bytes, with how often each stands
// in the running text and how often it was tagged, and the base word of an
// irregular form: "loaves\t5\t0\tloaf". What was found only once is left out.
func lines(files map[string]string) []string {
	running, tagged := runningText(files), taggedSenses(files["cntlist.rev"])
	known := func(w string) bool { return running[w]+tagged[w] > 1 }
	bases := irregular(files, tagged, known)
	all := maps.Clone(running)
	maps.Copy(all, tagged)
	var lines []string
	for _, w := range slices.Sorted(maps.Keys(all)) {
		if line := fmt.Sprintf("%s\t%d\t%d", w, running[w], tagged[w]); known(w) && bases[w] != "" {
			lines = append(lines, line+"\t"+bases[w])
		} else if known(w) {
			lines = append(lines, line)
		}
	}
	return lines
}

// runningText counts the words of the definitions and examples. A possessive is
// its noun.
func runningText(files map[string]string) map[string]int {
	counts := map[string]int{}
	for name, text := range files {
		if !strings.HasPrefix(name, "data.") {
			continue
		}
		for line := range strings.Lines(text) {
			_, gloss, _ := strings.Cut(line, " | ") // none in the licence, which opens each file
			for _, w := range word.FindAllString(strings.ToLower(gloss), -1) {
				if w = strings.TrimSuffix(w, "'s"); plain.MatchString(w) {
					counts[w]++
				}
			}
		}
	}
	return counts
}

// taggedSenses counts base words by the lines of cntlist.rev, which hold the key
// of a sense, its number and how often it was tagged. Each word of a compound
// such as night_watchman counts.
func taggedSenses(text string) map[string]int {
	counts := map[string]int{}
	for line := range strings.Lines(text) {
		fields := strings.Fields(line)
		n, err := strconv.Atoi(fields[2])
		if err != nil {
			log.Fatalf("no line of cntlist.rev: %q", line)
		}
		lemma, _, _ := strings.Cut(fields[0], "%")
		for _, w := range strings.FieldsFunc(lemma, func(r rune) bool { return r == '_' || r == '-' }) {
			if w = strings.TrimSuffix(w, "'s"); plain.MatchString(w) {
				counts[w] += n
			}
		}
	}
	return counts
}

// irregular are the irregular plurals of nouns and forms of verbs with their base
// words, where both are known. A form that is a noun, adjective or adverb of its
// own as well, such as left and thought, is left alone unless it is plainly the
// verb's.
func irregular(files map[string]string, tagged map[string]int, known func(string) bool) map[string]string {
	bases := map[string]string{}
	for _, list := range []string{"noun.exc", "verb.exc"} {
		for line := range strings.Lines(files[list]) {
			form := strings.Fields(line) // and its base words
			if !known(form[0]) || !known(form[1]) || form[0] == form[1] || slices.Contains(homographs, form[0]) {
				continue
			}
			verb := list == "verb.exc" && tagged[form[1]] > 0 && seldom*tagged[form[0]] <= tagged[form[1]]
			if verb || slices.Contains(plurals, form[0]) || !isAnother(files, form[0]) {
				bases[form[0]] = form[1]
			}
		}
	}
	return bases
}

// isAnother says whether a form is a noun, an adjective or an adverb of its own.
func isAnother(files map[string]string, form string) bool {
	for _, index := range []string{"index.noun", "index.adj", "index.adv"} {
		if strings.Contains(files[index], "\n"+form+" ") {
			return true
		}
	}
	return false
}

// pack compresses the lines, the same lines always to the same bytes.
func pack(lines []string) ([]byte, error) {
	var packed bytes.Buffer
	z, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := fmt.Fprintln(z, strings.Join(lines, "\n")); err != nil {
		return nil, err
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	return packed.Bytes(), nil
}
