package sqlite

import (
	"bufio"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"testing"
	"time"

	"headland/pagemodel"
)

// What tells the child which file to work on, and so what to do to it.
const (
	crashChild = "HEADLAND_TEST_EDIT_FOREVER"
	roundChild = "HEADLAND_TEST_MARK_FOREVER"
)

// editForever is the child: it edits the file, says so after each edit, and is
// killed.
func editForever(path string) {
	s, err := Open(path)
	if err != nil || s.ReadOnly() {
		fmt.Fprintln(os.Stderr, err, s)
		os.Exit(1)
	}
	for n := number(s.Collection().About().Title); ; {
		n++
		if _, err := s.Do(titled(strconv.Itoa(n))); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		fmt.Println(n)
	}
}

// markForever is the child that marks rounds, which are called by their number.
func markForever(path string) {
	s, err := Open(path)
	if err != nil || s.ReadOnly() {
		fmt.Fprintln(os.Stderr, err, s)
		os.Exit(1)
	}
	for n := len(s.Collection().Rounds()); ; {
		n++
		if _, err := s.MarkSent(pagemodel.MarkSent{Name: strconv.Itoa(n)}, placesOf(s.Collection())); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		fmt.Println(n)
	}
}

func number(title string) int {
	n, _ := strconv.Atoi(title)
	return n
}

// TestCrash kills a process in the middle of its edits, again and again: no
// edit that was reported is lost, none is half there, and the file can be
// written at once.
func TestCrash(t *testing.T) {
	path := newPath(t)
	mustClose(t, mustCreate(t, path))
	edits := 0
	for range 20 {
		reported := runUntilKilled(t, crashChild, path, time.Duration(rand.IntN(40_000))*time.Microsecond)
		s := mustOpen(t, path)
		got := number(s.Collection().About().Title)
		if s.ReadOnly() || got < reported || got > reported+1 {
			t.Fatalf("edit %d was reported, the file has %d; %s", reported, got, s.WhyReadOnly())
		}
		undoAll(t, s, got)
		edits = got
		mustClose(t, s)
	}
	t.Logf("%d edits, 20 kills", edits)
}

// TestCrashInRound holds that a round is in the file with all its places, or not
// at all.
func TestCrashInRound(t *testing.T) {
	path := newPath(t)
	mustClose(t, mustCreate(t, path))
	for range 10 {
		reported := runUntilKilled(t, roundChild, path, time.Duration(rand.IntN(40_000))*time.Microsecond)
		s := mustOpen(t, path)
		rounds := s.Collection().Rounds()
		if len(rounds) < reported || len(rounds) > reported+1 {
			t.Fatalf("round %d was reported, the file has %d", reported, len(rounds))
		}
		var marks int
		if err := s.row("SELECT count(*) FROM mark").Scan(&marks); err != nil || marks != len(rounds) {
			t.Fatalf("the file has %d rounds and %d marks, %v", len(rounds), marks, err)
		}
		last := rounds[len(rounds)-1]
		if _, places, err := s.Sent(last.ID); err != nil || !maps.Equal(places, placesOf(s.Collection())) {
			t.Fatalf("round %s has %d places, %v", last.Name, len(places), err)
		}
		mustClose(t, s)
	}
}

// undoAll goes back and forth a little: the history is as sound as its head.
func undoAll(t *testing.T, s *Store, head int) {
	back := min(3, head)
	for range back {
		if _, err := s.Undo(); err != nil {
			t.Fatal(err)
		}
	}
	if got := number(s.Collection().About().Title); got != head-back {
		t.Fatalf("%d undone from %d gave %d", back, head, got)
	}
	for range back {
		if _, err := s.Redo(); err != nil {
			t.Fatal(err)
		}
	}
}

// runUntilKilled is the last edit that a child reported before it was killed.
func runUntilKilled(t *testing.T, work, path string, after time.Duration) (last int) {
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), work+"="+path)
	child.Stderr = os.Stderr
	out, err := child.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := child.Start(); err != nil {
		t.Fatal(err)
	}
	for lines := bufio.NewScanner(out); lines.Scan(); {
		if last == 0 {
			time.AfterFunc(after, func() { child.Process.Kill() })
		}
		last = number(lines.Text())
	}
	if child.Wait(); last == 0 {
		t.Fatal("the child made no edit")
	}
	return last
}

// leftInTheMiddle is a file as a crash in the middle of an edit leaves it: some
// of its pages written over, and the journal that has them as they were.
func leftInTheMiddle(t *testing.T) (path string) {
	s := mustCreate(t, newPath(t))
	path = newPath(t)
	if err := s.exec("PRAGMA cache_size = 1"); err != nil {
		t.Fatal(err)
	}
	s.transact(func() error {
		for _, query := range []string{"UPDATE state SET body = zeroblob(9000)", "UPDATE edit SET label = hex(zeroblob(9000))", "DELETE FROM head"} {
			if err := s.exec(query); err != nil {
				t.Fatal(err)
			}
		}
		write(t, path, read(t, s.Path()))
		write(t, path+"-journal", read(t, s.Path()+"-journal"))
		return errors.New("that is enough")
	})
	return path
}

func TestLeftInTheMiddle(t *testing.T) {
	path := leftInTheMiddle(t)
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	held, _, err := takeLock(path, info)
	if err != nil || held == nil {
		t.Fatal(held, err)
	}
	_, err = Open(path)
	mustBeInWords(t, "held", err, fs.ErrPermission, path, "was left in the middle of an edit by a crash")
	held.release()
	if s := mustOpen(t, path); sum(s.Collection()) != sum(book()) {
		t.Error("what a crash cut short was not put right")
	}
	alone(t, path, "book.headland")
}
