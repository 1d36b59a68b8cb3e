// Package cut cuts pieces from stock of one length with a saw kerf between them, from the fewest sticks, and says what the fewest can be.
// It knows no rooms and no planks.
package cut
