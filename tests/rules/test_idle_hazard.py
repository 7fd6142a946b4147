"""`idle-hazard`: exact wording, and silence where nothing is wrong."""


def test_misspelt_area(manual):
    manual.keys("hazards/hot-fluid.md", "required_when: {areas: [workshops]}\n")
    assert manual.found() == [
        (
            "hazards/hot-fluid.md:8:25 idle-hazard (stop)",
            "workshops",
            "No procedure works in the area workshops.",
            "Did you mean workshop?",
        )
    ]


def test_an_area_nobody_works_in_yet(manual):
    manual.keys("hazards/hot-fluid.md", "required_when: {areas: [electrics]}\n")
    assert manual.found() == []


def test_capitals_do_not_matter(manual):
    manual.keys("hazards/raised-vehicle.md", "required_when: {areas: [Workshop]}\n")
    assert manual.found() == []


def test_misspelt_fluid(manual):
    manual.keys("hazards/hot-fluid.md", "required_when: {fluids: [DX2]}\n")
    assert manual.found() == [
        (
            "hazards/hot-fluid.md:8:26 idle-hazard (stop)",
            "DX2",
            "No page names the fluid DX2.",
            "Did you mean DX-2?",
        )
    ]


def test_a_fluid_of_another_trade(manual):
    manual.keys("hazards/hot-fluid.md", "required_when: {fluids: [Brake water]}\n")
    assert manual.found() == []
