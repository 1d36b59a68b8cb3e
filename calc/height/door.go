package height

import (
	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// Door is a door over a floor that is being raised.
type Door struct {
	Gap     length.Length // from the subfloor to the door's lower edge
	BuildUp length.Length // of the new floor
	Working length.Length // clearance that it is to swing with
}

// Clearance is what is left over the new floor; negative where the door stands in it.
func (d Door) Clearance() length.Length { return d.Gap - d.BuildUp }

// TrimOff is how much to take off the door to swing with the working clearance; 0 where it does already.
func (d Door) TrimOff() length.Length { return max(0, d.Working-d.Clearance()) }

// CutLine is where the door is cut, above the subfloor.
func (d Door) CutLine() length.Length { return d.BuildUp + d.Working }

// FireDoorKept says whether the clearance left, after any trimming, is within what a fire door may have above the finished
// floor (NFPA 80 4.8.4).
func (d Door) FireDoorKept() bool {
	return d.Clearance()+d.TrimOff() <= limit.FireDoor.Inch
}

// RaiseBrackets is how much to raise the floor guides or the track of a closet's sliding doors: what the floor's
// build-up takes beyond the play that they have now.
func RaiseBrackets(buildUp, play length.Length) length.Length { return max(0, buildUp-play) }
