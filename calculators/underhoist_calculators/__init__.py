"""Workshop calculators: pure functions on quantities, each with its working and its sources."""
