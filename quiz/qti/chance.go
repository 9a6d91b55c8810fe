package qti

import (
	"hash/fnv"
	"math/bits"
	"math/rand/v2"
)

// chanceOf is a source of numbers that hangs on a text: the same on every machine, and with
// choosing of our own, for a library may change its way.
func chanceOf(text string) *rand.PCG {
	h := fnv.New64a()
	h.Write([]byte(text)) // a hash never returns an error
	a := h.Sum64()
	h.Write([]byte("second"))
	return rand.NewPCG(a, h.Sum64())
}

// intN is a whole number from 0 up to but not including n.
func intN(chance *rand.PCG, n int) int {
	high, _ := bits.Mul64(chance.Uint64(), uint64(n))
	return int(high)
}

// shuffled puts things into a drawn order.
func shuffled[T any](chance *rand.PCG, things []T) {
	for i := len(things) - 1; i > 0; i-- {
		j := intN(chance, i+1)
		things[i], things[j] = things[j], things[i]
	}
}
