//go:build ignore

// Boil makes words.gz out of the CMU Pronouncing Dictionary as the npm package
// cmu-pronouncing-dictionary carries it. In an empty folder:
//
//	npm pack cmu-pronouncing-dictionary@3.0.0
//	tar xzf cmu-pronouncing-dictionary-3.0.0.tgz
//	go run …/assets/pronunciations/boil.go package/index.js …/assets/pronunciations/words.gz
//
// It refuses any other input than the one whose SHA-256 stands below.
package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"log"
	"os"
	"regexp"
	"slices"
	"strings"
)

// inputSum is the SHA-256 of package/index.js in version 3.0.0.
const inputSum = "ef8b2b976d2e5801b7541ebcc7714f538d1ffa0ebb28645259536e2666bd2948"

// entry is one line of the input: a word, the number of a further way to say
// it in brackets, the phonemes, and sometimes a remark after "#".
var entry = regexp.MustCompile(`^ {2}"?([^"():]+)(?:\(\d+\))?"?: "([^"#]+?)(?: #[^"]*)?",?$`)

// kept is a word of letters, apostrophes and hyphens. Initials with stops and
// words with digits, such as "a.m." and "a42128", are told by rule.
var kept = regexp.MustCompile(`^['a-z-]*[a-z]['a-z-]*$`)

// said is what has a vowel: the only phonemes with a digit, which is the stress.
var said = regexp.MustCompile(`[0-2]`)

func main() {
	log.SetFlags(0)
	if len(os.Args) != 3 {
		log.Fatal("usage: go run boil.go package/index.js words.gz")
	}
	input, err := os.ReadFile(os.Args[1])
	if err != nil {
		log.Fatal(err)
	}
	if sum := sha256.Sum256(input); hex.EncodeToString(sum[:]) != inputSum {
		log.Fatalf("%s has the SHA-256 %x, want %s: take version 3.0.0 of the package", os.Args[1], sum, inputSum)
	}
	output, err := pack(lines(string(input)))
	if err != nil {
		log.Fatal(err)
	}
	if err := os.WriteFile(os.Args[2], output, 0o644); err != nil {
		log.Fatal(err)
	}
}

// lines are the words in the order of their bytes, each with the ways in which
// it is said, the usual first: "fire\tF AY1 ER0\tF AY1 R".
func lines(input string) []string {
	ways := map[string][]string{}
	for line := range strings.Lines(input) {
		m := entry.FindStringSubmatch(strings.TrimRight(line, "\n"))
		if m == nil {
			if strings.HasPrefix(line, "  ") {
				log.Fatalf("no entry of the dictionary: %q", line)
			}
			continue
		}
		if word, way := m[1], m[2]; kept.MatchString(word) && said.MatchString(way) && !slices.Contains(ways[word], way) {
			ways[word] = append(ways[word], way)
		}
	}
	var lines []string
	for word, said := range ways {
		lines = append(lines, word+"\t"+strings.Join(said, "\t"))
	}
	slices.SortFunc(lines, func(a, b string) int {
		wordA, _, _ := strings.Cut(a, "\t")
		wordB, _, _ := strings.Cut(b, "\t")
		return strings.Compare(wordA, wordB)
	})
	return lines
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
