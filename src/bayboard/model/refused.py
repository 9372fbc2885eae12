"""The one error for bad input."""


class Refused(Exception):
    """Bad input, said in one sentence: where it is, what it is, what to do.

    `place` reads like `gear A2 › at` and is empty when the whole file is meant.
    """

    def __init__(self, place: str, what: str, do: str = "") -> None:
        self.place = place
        self.what = what
        self.do = do
        super().__init__(str(self))

    def __str__(self) -> str:
        """Return the sentence that a person reads."""
        start = f"{self.place}: {self.what}" if self.place else self.what
        return f"{start}. {self.do}." if self.do else f"{start}."
