"""A blank card, begun by its questions."""

FIRST = ("TB Tess Bell", "H 12", "Ines Harrow", "B-1", "")  # who, which engine, whose, the job, no shop


def begin_card(stand, *answers):
    stand.wait_for("An empty logbook")
    for answer in ("3", *answers):
        stand.press(answer + "\r")
