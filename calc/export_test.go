package calc

// MetricTolerance shows a value of the metric tables to the tests: of Td2, TD2, Td or TD1
// with the grade, of es with the grade 0; in micrometres, es under 0. ok is false where
// the tables have none.
func MetricTolerance(q string, grade int, nominal, pitch Length) (value float64, ok bool) {
	row, _ := metricRowOf(quantity(q), nominal.Millimetres(), pitch.Millimetres())
	value, ok = row.values[grade]
	if q == string(deviationG) {
		value = -value
	}
	return value, ok
}

// ExceptionalThreads names the threads whose published limits the formulas do not give.
func ExceptionalThreads() map[string]bool {
	names := map[string]bool{}
	for _, e := range exceptions {
		names[e.thread] = e.source != ""
	}
	return names
}

// WithoutExceptions are the limits by the formulas alone, while do runs.
func WithoutExceptions(do func()) {
	kept := exceptions
	exceptions = nil
	defer func() { exceptions = kept }()
	do()
}
