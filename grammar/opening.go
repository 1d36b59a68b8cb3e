package grammar

import "lastrow/calc/room"

// opening reads "opening 3' between the hall and the annex, in the hall's east wall, 6in from the north corner", and its place
// in the other room's wall where that follows: "1' from the north corner of the annex".
func (r *reader) opening(qs []int) (Statement, []int) {
	rooms, ok := r.betweenRooms()
	if !ok || len(qs) == 0 || len(qs) > 3 {
		return nil, nil
	}
	o := Opening{Off: r.roomOfWall(qs[0]), Wall: r.sideAfter(qs[0])}
	switch {
	case o.Off == rooms[0]:
		o.To = rooms[1]
	case o.Off == rooms[1]:
		o.To = rooms[0]
	default:
		return nil, nil
	}
	var sizes []Size
	var ends []room.Side
	for _, q := range qs {
		size, ok := r.message.read(r.items[q].sizes[0], bareNear, r.lean)
		if !ok || len(r.items[q].sizes) > 1 || r.items[q].vague || r.sideAfter(q) == "" {
			return nil, nil
		}
		sizes, ends = append(sizes, size), append(ends, r.sideAfter(q))
	}
	o.Wide = sizes[0]
	if len(qs) > 1 {
		o.From, o.FromEnd = &sizes[1], ends[1]
	}
	if len(qs) > 2 {
		o.ToFrom, o.ToEnd = &sizes[2], ends[2]
	}
	return o, qs
}

// betweenRooms gives the two rooms that an opening is said to be between; the main room has no name.
func (r *reader) betweenRooms() (rooms [2]string, ok bool) {
	n, between := 0, r.hasWord("joined", "joins", "connected", "connects")
	for i := range r.items {
		it := &r.items[i]
		switch name, known := r.roomNamed(it); {
		case it.word == "between" || it.word == "from" && r.leadsTo(i, "hall", "closet", "room"):
			between = true
		case between && known && n < 2 && (n == 0 || name != rooms[0]):
			rooms[n] = name
			n++
		}
	}
	return rooms, n == 2 && r.hasWord("opening", "open", "opens", "archway", "arch")
}

// roomNamed is the room that a word names: a bedroom or the like is the room beside the main one, where there is one.
func (r *reader) roomNamed(it *item) (name string, ok bool) {
	switch {
	case it.meaning == "hall" || it.meaning == "closet":
		return it.meaning, true
	case it.word == "annex":
		return "annex", true
	case it.meaning == "room" && it.word != "room" && r.hasAnnex():
		return "annex", true
	}
	return "", it.meaning == "room"
}

func (r *reader) hasAnnex() bool {
	for _, s := range r.ctx.Statements {
		if c, ok := s.(Closet); ok && c.What == "annex" {
			return true
		}
	}
	return false
}

// ofItsOwn says whether a distance is from a corner of the room that is told of, and not of the wall that it opens off:
// "opening 3', 18in from its south corner".
func (r *reader) ofItsOwn(q int) bool {
	for j := q + 1; j < len(r.items) && !r.items[j].quantity(); j++ {
		if r.items[j].word == "its" {
			return r.sideAfter(j) != ""
		}
	}
	return false
}

// openingFrom is the place of the opening as a closet keeps it, from the corner where its wall begins as one walks with the
// floor on the left; ok is false where the wall has no such corner.
func (c Closet) openingFrom(size Size, corner room.Side) (from Size, ok bool) {
	begins := map[room.Side]room.Side{room.East: room.South, room.South: room.West, room.West: room.North, room.North: room.East}[c.Wall]
	switch {
	case begins == "":
		return size, false
	case corner == begins.Opposite():
		size.Len = c.Wide.Len - c.Opening.Len - size.Len
	case corner != begins:
		return size, false
	}
	return size, size.Len >= 0
}
