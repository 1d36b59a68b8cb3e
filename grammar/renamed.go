package grammar

import (
	"regexp"
	"strings"

	"lastrow/calc/term"
)

// Words before a job's name, from the surest on, where the message is beyond doubt about a job.
var jobOpeners = []*regexp.Regexp{
	regexp.MustCompile(`(?i)\b(?:call|name)(?:d|ed)?\s+(?:it\s+|this one\s+|the job\s+)?(.+)$`),
	regexp.MustCompile(`(?i)\b(?:job|one|new)\s*[:,]\s+(.+)$`),
	regexp.MustCompile(`(?i)\b(?:switch|swap|change|go|move|heading|back|over)\b.*\bto\s+(.+)$`),
	regexp.MustCompile(`(?i)\b(?:i['’]?m|we['’]?re|me|work|working)\s+(?:back\s+|over\s+)?(?:on|at)\s+(.+)$`),
	regexp.MustCompile(`(?i)\b(?:for|make a job)\s+(.+)$`),
}

var (
	beforeName = regexp.MustCompile(`(?i)^(?:(?:the|a|an|my|new|job|uh|um)\s+)+`)
	afterName  = regexp.MustCompile(`(?i)(?:[,\s]+(?:job|one|now|please|pls|today|again|then|swap over|begin it))+\s*[.!]*$`)
)

// likelyJob reads the name of a job in a message that begins one or goes to one.
func (r *reader) likelyJob() (Reading, bool) {
	for _, open := range jobOpeners {
		g := open.FindStringSubmatch(r.text)
		if g == nil {
			continue
		}
		name := strings.Trim(afterName.ReplaceAllString(beforeName.ReplaceAllString(oneLine(g[1]), ""), ""), " .!\"'“”")
		if n := len(strings.Fields(name)); n == 0 || n > 5 || strings.ContainsAny(name, ",;:.?") {
			return Reading{}, false
		}
		return r.tell([]Statement{JobName{r.knownJob(name)}})
	}
	return Reading{}, false
}

// knownJob is the one job of the user's that has the name in its own, or else the name.
func (r *reader) knownJob(name string) string {
	found, n := name, 0
	for _, j := range r.ctx.Jobs {
		if strings.EqualFold(j, name) {
			return j
		}
		if wholeWord(strings.ToLower(j), strings.ToLower(name)) >= 0 {
			found, n = j, n+1
		}
	}
	if n > 1 {
		return name
	}
	return found
}

var (
	noteWords = []string{"note", "notes", "memo", "jot", "write", "record", "remark", "remember", "remind", "save", "file", "log", "word", "keep", "reminder"}
	noteOpens = regexp.MustCompile(`(?is)^.*?\b(?:notes?|memo|remark|down|file|record|this|word for [a-z ]{3,20}|next lot)\s*[,:\-–]?\s+(?:that\s+)?(\S.*)$`)
	putDown   = regexp.MustCompile(`(?i)\bput\s+(?:it\s+|this\s+)?down\b`)
)

// likelyNote keeps a message that is beyond doubt a note: what follows the words that ask for it, or all of it.
func (r *reader) likelyNote() (Reading, bool) {
	if !r.hasWord(noteWords...) && !putDown.MatchString(r.text) {
		return Reading{}, false
	}
	text := oneLine(r.text)
	if g := noteOpens.FindStringSubmatch(text); g != nil && len(strings.Fields(g[1])) > 2 {
		text = g[1]
	}
	return Reading{Statements: []Statement{Note{text}}}, true
}

// likelyWay reads which way the rows run, by a wall that they point at or go along. The long way of a room that is not known
// is asked for.
func (r *reader) likelyWay() (Reading, bool) {
	wall := r.wallSaid()
	switch {
	case r.has("longways", "shortways") && r.longWay() == "":
		return Reading{Problem: &Problem{Outcome: "ask-back", Kind: term.SetDirection, Read: r.gist(), Example: "room 11ft 4in x 12ft 6in", Missing: []term.Name{term.Room}, Setting: term.SetRoom}}, true
	case wall == "":
		return Reading{}, false
	case r.hasWord("point", "points", "pointing", "toward", "towards", "facing"):
		way := "north-south"
		if meaningOf(wall) == "east" || meaningOf(wall) == "west" {
			way = "east-west"
		}
		return r.tell([]Statement{Direction{Way: way}})
	case r.hasWord("along", "parallel", "same", "with"):
		return r.tell([]Statement{Direction{Wall: wall}})
	}
	return Reading{}, false
}
