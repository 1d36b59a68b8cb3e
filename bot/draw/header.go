package draw

import (
	"fmt"
	"strings"

	"lastrow/bot/draw/sheet"
)

// header writes what the sheet shows, the job, the room, the goods that it is made of, and the date.
func (p *page) header(shows, goods string) {
	name := strings.Join(some(p.title.Job, p.title.Room), ", ")
	date := p.title.date()
	room := p.W - 2*margin
	if date != "" {
		w, _ := sheet.Measure(date, plainText, false)
		p.Add(sheet.Text{At: sheet.Point{X: p.W - margin - w, Y: p.pen + 10}, Size: plainText, S: date})
		room -= w + margin
	}
	if name == "" {
		name, shows = shows, ""
	}
	name = sheet.Fit(name, titleText, true, room)
	p.Add(sheet.Text{At: sheet.Point{X: margin, Y: p.pen}, Size: titleText, Bold: true, S: name})
	p.skip(titleText * 5 / 4)
	if line := strings.Join(some(shows, goods), "; "); line != "" {
		p.write(line, plainText+2, false)
	}
	p.skip(6)
	p.Add(sheet.Line{A: sheet.Point{X: margin, Y: p.pen}, B: sheet.Point{X: p.W - margin, Y: p.pen}, Width: middleLine})
	p.skip(10)
}

func (t Title) date() string {
	if t.Changed.IsZero() {
		return ""
	}
	return t.Changed.Format("2 Jan 2006")
}

// goods says the plank and how many are needed.
func (t Title) goods() string {
	size := ""
	if t.Plank.Width > 0 {
		size = "plank " + t.bare(t.Plank.Width)
		if t.Plank.Length > 0 {
			size += " x " + t.bare(t.Plank.Length)
		}
		size += " " + t.unit()
	}
	return strings.Join(some(size, count(t.Planks, "plank"), count(t.Boxes, "box")), ", ")
}

func count(n int64, what string) string {
	switch {
	case n == 0:
		return ""
	case n == 1:
		return "1 " + what
	case strings.HasSuffix(what, "x"):
		return fmt.Sprintf("%d %ses", n, what)
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// some leaves out what is empty.
func some(parts ...string) []string {
	var out []string
	for _, s := range parts {
		if s != "" {
			out = append(out, s)
		}
	}
	return out
}
