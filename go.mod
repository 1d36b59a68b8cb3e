module lastrow

go 1.26.0

require (
	github.com/Knetic/govaluate v3.0.0+incompatible
	github.com/alecthomas/kong v1.17.0
	github.com/alecthomas/participle/v2 v2.1.4
	github.com/bcicen/go-units v1.0.5
	github.com/bwmarrin/discordgo v0.29.0
	github.com/crillab/gophersat v1.4.0
	github.com/gorilla/websocket v1.5.3
	github.com/mattn/go-sqlite3 v1.14.53
	github.com/peterh/liner v1.2.3
	github.com/peterstace/simplefeatures v0.50.0
	github.com/stretchr/testify v1.12.1
	go.uber.org/goleak v1.3.0
	golang.org/x/image v0.47.0
	golang.org/x/sys v0.50.0
	golang.org/x/time v0.16.0
	gonum.org/v1/gonum v0.17.0
	pgregory.net/rapid v1.3.0
)

require (
	github.com/bcicen/bfstree v1.0.0 // indirect
	github.com/clipperhouse/uax29/v2 v2.7.0 // indirect
	github.com/mattn/go-runewidth v0.0.31 // indirect
	go.yaml.in/yaml/v3 v3.0.5 // indirect
	golang.org/x/crypto v0.59.0 // indirect
	golang.org/x/text v0.44.0 // indirect
)
