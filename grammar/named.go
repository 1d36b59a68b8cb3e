package grammar

import (
	"regexp"
	"strings"
)

// Statements whose words are kept as typed: job names and notes.
var (
	jobForm      = regexp.MustCompile(`(?i)^\s*(?:(?:ok|hey|hi|please|pls|so|right|now|lets|let's|let’s|can you|could you|i want to|i'd like to|time to)[,\s]+)*(?:(?:new|(?:start|begin|open up|open|create)(?: me| us)?|switch(?: me)?(?: over)? to|go to|back to|use|change to|set up|call this|load)\s+(?:a |an |the |my )?(?:new )?job|(?:start|begin|open|create)\s+(?:a )?(?:new )?(?:one|project)(?: called| named)|new project|job)(?:\s+for|\s+called|\s+named|\s*:|\s+is|\s*,?\s+(?:and\s+)?(?:call|name)\s+it)?\s+(.+)$`)
	callForm     = regexp.MustCompile(`(?i)^\s*(?:(?:ok|hey|hi|please|pls|so|lets|let's|can you)[,\s]+)*(?:(?:start|begin|open|create|set up|make|kick off|set)(?: me| us)?(?: up)?\s+(?:a |an |one )?(?:new |fresh )?(?:job|one|project)?(?: up)?[,:]?\s+(?:and )?(?:call it|named?|called|name it)|call (?:this|the|it)(?: new)?(?: one| job)?|new (?:job|one)[,:]|(?:the )?next job(?: is|'s)?)\s+(.+)$`)
	ofJobForm    = regexp.MustCompile(`(?i)^\s*(?:(?:ok|hey|hi|please|pls|so|lets|let's|can you)[,\s]+)*(?:open(?: up)?|switch(?: me)?(?: over)? to|swap(?: me)?(?: over)? to|(?:go )?back to|go to|put me (?:back )?on|pull up|load|change(?: job)? to|move (?:me )?(?:over )?to)\s+(?:the |my )?([^,.;:?]+?)\s+(?:job|project)(?:\s+again|\s+now|\s+please)?\s*[.!]?\s*$`)
	rememberForm = regexp.MustCompile(`(?is)^\s*(?:please )?(?:remember|don'?t let me forget|remind me)(?: that)?\s+(\S.*)$`)
	reminded     = regexp.MustCompile(`(?i)\bremind me (?:what|how|which|where|when|who|of)\b`)
	noteForm     = regexp.MustCompile(`(?is)^\s*(?:please |pls )?(?:(?:make|keep|take|add|leave|save|log) a (?:note|memo|remark)|memo|(?:jot|write|take) (?:this|that|it) down|put a note on|put a note in|put a note|note to self|note|nb|n\.b\.|jot down|write down)(?:\s+(?:for|on|to|about)\s+[^:]{1,40}:|\s+that\b|\s+down\b|\s*[:,\-–]|\s)\s*(\S.*)$`)
)

// readNamed reads job names and notes, whose words are kept as typed. In a group these are left alone.
func readNamed(text string, ctx Context) (Reading, bool) {
	if ctx.Group {
		return Reading{}, false
	}
	if g := noteForm.FindStringSubmatch(text); g != nil && !strings.HasSuffix(text, "?") {
		return Reading{Statements: []Statement{Note{oneLine(g[1])}}}, true
	}
	if g := rememberForm.FindStringSubmatch(text); g != nil && !strings.HasSuffix(text, "?") && !strings.ContainsAny(text, "0123456789") && !reminded.MatchString(text) {
		return Reading{Statements: []Statement{Note{oneLine(g[1])}}}, true
	}
	for _, form := range []*regexp.Regexp{jobForm, ofJobForm, callForm} {
		if g := form.FindStringSubmatch(text); g != nil && !strings.HasSuffix(text, "?") {
			return named(g[1], ctx)
		}
	}
	return Reading{}, false
}

// named begins or switches to a job; what follows a full stop or a semicolon is read as more of the message.
func named(name string, ctx Context) (Reading, bool) {
	name, more := cutName(name)
	if low := strings.ToLower(name); name == "" || low == "list" || low == "done" || low == "status" || low == "history" {
		return Reading{}, false
	}
	if len(name) > 80 {
		return problem("refused", "job", "job", "the name is longer than 80 characters", "job Alder basement"), true
	}
	for _, j := range ctx.Jobs {
		if strings.EqualFold(j, name) {
			name = j
		}
	}
	out := Reading{Statements: []Statement{JobName{name}}}
	if more == "" {
		return out, true
	}
	inner := ctx
	inner.Pending, inner.Last, inner.LastSet, inner.Setting = nil, nil, nil, ""
	rest := Read(more, inner)
	if rest.Problem != nil {
		return rest, true
	}
	out.Statements = append(out.Statements, rest.Statements...)
	out.Question, out.Signs, out.System, out.Measured = rest.Question, rest.Signs, rest.System, rest.Measured
	return out, true
}

var nameEnd = regexp.MustCompile(`[.;\n]\s+|[;\n]|,\s+|\s+and\s+(?:tell|show|how|what|give|let)\s`)

func cutName(s string) (name, more string) {
	if at := nameEnd.FindStringIndex(s); at != nil {
		name, more = s[:at[0]], strings.TrimSpace(s[at[0]:])
		more = strings.TrimLeft(more, ".;, \n")
	} else {
		name = s
	}
	return strings.Trim(oneLine(name), " .!\"'“”"), more
}

// switched gives the job that the message switches to, among those that there are.
func (r *reader) switched() string {
	if r.job != "" && r.has("switch") {
		return r.job
	}
	if len(r.seq) <= 2 && r.has("switch") && r.hasWord("back", "other") && len(r.quantities()) == 0 {
		return r.otherJob()
	}
	return ""
}

// otherJob is the one job besides the current one, or "" where there are more or none.
func (r *reader) otherJob() string {
	if len(r.ctx.Jobs) != 2 || r.ctx.Current == "" {
		return ""
	}
	for _, j := range r.ctx.Jobs {
		if j != r.ctx.Current {
			return j
		}
	}
	return ""
}
