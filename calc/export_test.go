package calc

// MetricTolerance shows a value of the metric table to the tests.
func MetricTolerance(quantity string, nominal, pitch Length) float64 {
	value, _ := metricValue(quantity, Designation{Metric: true, Nominal: nominal, Pitch: pitch})
	return value
}
