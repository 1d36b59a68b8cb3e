package discord

import "lastrow/bot/answer"

// What the transport itself has to say, for the bot knows nothing of it.
const (
	tooMany    = "That was a lot at once, so I left some of it out. Wait a few seconds, then send the rest again."
	nothing    = "I have nothing to say to that. Try `/lastrow help`."
	noFiles    = "(The picture is left out: I am not allowed to attach files here.)"
	tooLarge   = "(A file is left out: it is larger than Discord takes.)"
	commandFor = "Ask about a click-lock floor: rows, boxes, cuts, heights, moisture, trim"
	optionFor  = "What you would type, such as: last row width for 11ft 4in, plank 7 5/8"
)

var fault = answer.Fault().Text
