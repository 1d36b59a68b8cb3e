package length

// Tape is how lengths are shown: the system, and the finest division read off it.
type Tape struct {
	System System
	Parts  int // divisions of an inch (16, 32 or 64), or of a millimetre (1 or 10); 0 stands for 16 or 1
}
