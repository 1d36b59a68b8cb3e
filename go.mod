module lastrow

go 1.26.0

require (
	github.com/Knetic/govaluate v3.0.0+incompatible // indirect
	github.com/alecthomas/kong v1.17.0 // indirect
	github.com/alecthomas/participle/v2 v2.1.4 // indirect
	github.com/bcicen/bfstree v1.0.0 // indirect
	github.com/bcicen/go-units v1.0.5 // indirect
	github.com/bwmarrin/discordgo v0.29.0 // indirect
	github.com/clipperhouse/uax29/v2 v2.7.0 // indirect
	github.com/crillab/gophersat v1.4.0 // indirect
	github.com/google/go-cmp v0.7.0 // indirect
	github.com/gorilla/websocket v1.5.3 // indirect
	github.com/joho/godotenv v1.5.1 // indirect
	github.com/mattn/go-runewidth v0.0.31 // indirect
	github.com/mattn/go-sqlite3 v1.14.53 // indirect
	github.com/peterh/liner v1.2.3 // indirect
	github.com/peterstace/simplefeatures v0.50.0 // indirect
	github.com/stretchr/testify v1.12.1 // indirect
	go.uber.org/goleak v1.3.0 // indirect
	go.yaml.in/yaml/v3 v3.0.5 // indirect
	golang.org/x/crypto v0.59.0 // indirect
	golang.org/x/image v0.47.0 // indirect
	golang.org/x/sys v0.50.0 // indirect
	golang.org/x/text v0.44.0 // indirect
	golang.org/x/time v0.16.0 // indirect
	gonum.org/v1/gonum v0.17.0 // indirect
	pgregory.net/rapid v1.3.0 // indirect
)
