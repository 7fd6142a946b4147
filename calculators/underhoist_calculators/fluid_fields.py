"""Fields that more than one fluid calculator asks for, declared once."""

from underhoist_calculators.declare import Field

FAMILY = "From the family page"
CONVENTION = "Convention"

VOLUMES = ("litre", "millilitre", "US_quart", "imperial_quart", "US_gallon", "imperial_gallon")
"""The scales of jugs and data sheets."""

BETWEEN_MARKS = Field(
    name="between-marks", label="Volume between the marks", group=FAMILY, kind="volume",
    help="From the low mark to the full mark of the dipstick.", units=VOLUMES,
    low="0.1 L", high="2 L", example="0.5 L", fills_from="fluid.level.between_marks",
)  # fmt: skip

DENSITY = Field(
    name="density", label="Density of the fluid at 15 °C", group=CONVENTION,
    kind="density", units=("kilogram_per_cubic_metre", "kilogram_per_litre"),
    help="From the data sheet. 860 kg/m³ is usual and changes little.",
    low="800.9 kg/m³", high="1163.5 kg/m³", default="860 kg/m³",
)  # fmt: skip
"""Its range is that of the volume correction's table for lubricating oils."""
