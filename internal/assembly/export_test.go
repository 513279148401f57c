package assembly

// Forget empties the memory of orders.
func Forget() {
	remembered.Lock()
	defer remembered.Unlock()
	clear(remembered.known)
}
