module headland

go 1.26.0

require (
	github.com/go-text/typesetting v0.3.5
	golang.org/x/image v0.47.0
)

require (
	fyne.io/fyne/v2 v2.7.4 // indirect
	github.com/BurntSushi/toml v1.5.0 // indirect
	github.com/clipperhouse/uax29/v2 v2.7.0 // indirect
	github.com/google/go-cmp v0.7.0 // indirect
	github.com/mattn/go-sqlite3 v1.14.53 // indirect
	github.com/tetratelabs/wazero v1.12.0 // indirect
	github.com/yuin/goldmark v1.8.7 // indirect
	golang.org/x/exp/typeparams v0.0.0-20231108232855-2478ac86f678 // indirect
	golang.org/x/mod v0.42.0 // indirect
	golang.org/x/sync v0.25.0 // indirect
	golang.org/x/sys v0.49.0 // indirect
	golang.org/x/text v0.44.0 // indirect
	golang.org/x/tools v0.52.0 // indirect
	honnef.co/go/tools v0.8.2 // indirect
	pgregory.net/rapid v1.3.0 // indirect
)

tool honnef.co/go/tools/cmd/staticcheck

// In v0.3.4 and v0.3.5 a filter over coverage tables loses glyphs, so that
// HarfBuzz and the Go port differ (small capitals of ł and ż in Gentium).
replace github.com/go-text/typesetting => github.com/go-text/typesetting v0.3.3
