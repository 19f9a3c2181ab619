package command

import "headland/pagemodel"

// designReport is a design as the report gives it and a script's design edit
// takes it: lengths are exact to the 1/64 pt that they are kept in.
type designReport struct {
	Trim       [2]float64    `json:"trim_mm"` // width and height
	Margins    marginsReport `json:"margins_mm"`
	Measure    float64       `json:"measure_pt"`
	Face       string        `json:"face"`
	Size       float64       `json:"size_pt"`
	Leading    float64       `json:"leading_pt"`
	Binding    string        `json:"binding"`
	Turnovers  string        `json:"turnovers"`
	StanzaGap  int           `json:"stanza_gap"` // lines of white
	TitleRow   int           `json:"title_row"`  // rows of the baseline grid, from 1
	PoemRow    int           `json:"poem_row"`
	RunOut     float64       `json:"run_out_pt"`
	HangQuotes bool          `json:"hang_quotes"`
	Tighten    int           `json:"tighten_percent"`
	Edge       string        `json:"edge"`

	Titles       string      `json:"titles"`
	TitleSize    float64     `json:"title_size_pt"` // 0 where it goes with the size of the verse
	TitleCentred bool        `json:"title_centred"`
	Folios       string      `json:"folios"`
	Running      string      `json:"running_heads"`
	Prose        string      `json:"prose"`
	Hidden       string      `json:"hidden_breaks"`
	SectionsOpen bool        `json:"sections_open"`
	Signature    int         `json:"signature"`
	Paper        paperReport `json:"paper"`
}

type marginsReport struct {
	Inner float64 `json:"inner"`
	Outer float64 `json:"outer"`
	Head  float64 `json:"head"`
	Foot  float64 `json:"foot"`
}

func designOf(d pagemodel.Design) designReport {
	return designReport{
		Trim: [2]float64{millimetres(d.Trim.Width), millimetres(d.Trim.Height)},
		Margins: marginsReport{
			Inner: millimetres(d.Margins.Inner), Outer: millimetres(d.Margins.Outer),
			Head: millimetres(d.Margins.Head), Foot: millimetres(d.Margins.Foot),
		},
		Measure: points(d.Measure()), Face: d.Face, Size: points(d.Size), Leading: points(d.Leading),
		Binding: d.Binding.String(), Turnovers: d.Turnovers.String(), StanzaGap: d.StanzaGap,
		TitleRow: d.TitleRow, PoemRow: d.PoemRow, RunOut: points(d.RunOut), HangQuotes: d.HangQuotes,
		Tighten: d.Tighten, Edge: bookEdge(d).String(), Titles: d.Titles.String(), TitleSize: points(d.TitleSize), TitleCentred: d.TitleCentred,
		Folios: d.Folios.String(), Running: d.Running.String(), Prose: d.Prose.String(), Hidden: d.Hidden.String(),
		SectionsOpen: d.SectionOpen, Signature: d.SignaturePages(), Paper: paperOf(d.Paper),
	}
}

// millimetres is a length in as few decimals as give it back.
func millimetres(l pagemodel.Length) float64 { return shortest(l, l.Millimetres(), pagemodel.MM) }

// points is a length in as few decimals as give it back.
func points(l pagemodel.Length) float64 { return shortest(l, l.Points(), pagemodel.Pt) }

func shortest(l pagemodel.Length, value float64, length func(float64) pagemodel.Length) float64 {
	for decimals := range 6 {
		if v := rounded(value, decimals); length(v) == l {
			return v
		}
	}
	return value
}
