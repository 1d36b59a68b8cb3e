package material

// Work counts what takes time on a floor; a pace has the same fields in minutes for each.
type Work struct {
	Rows      int64 // lined up and closed
	Pieces    int64 // laid and locked
	Crosscuts int64
	Rips      int64
	Notches   int64 // and holes, and cuts at an angle
	Doorways  int64 // jambs undercut, track set
	Corners   int64 // of trim, coped or mitred
}

// UsualPace is one person's minutes. No handbook prints them; a floor of plain rows comes to 20 to 60 sq ft an hour with
// them, which is what trade texts give. A user who knows better sets them.
var UsualPace = Work{Rows: 3, Pieces: 2, Crosscuts: 2, Rips: 4, Notches: 10, Doorways: 20, Corners: 5}

// Minutes is one person's time for the work at a pace.
func (w Work) Minutes(pace Work) int64 {
	return w.Rows*pace.Rows + w.Pieces*pace.Pieces + w.Crosscuts*pace.Crosscuts + w.Rips*pace.Rips +
		w.Notches*pace.Notches + w.Doorways*pace.Doorways + w.Corners*pace.Corners
}
