package length

import "math/big"

// Area is an exact number of square nanometres. The zero Area is none. It is compared with Cmp, never with ==.
type Area struct{ nm2 big.Int }

// Volume is an exact number of cubic nanometres.
type Volume struct{ nm3 big.Int }
