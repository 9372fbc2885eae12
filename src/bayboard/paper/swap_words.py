"""What a sheet says that takes an older one's place: which of the older sheets stay with it."""

from bayboard.paper.options import SwapSheets


def swap_sentence(swap: SwapSheets) -> str:
    """Return "swap sheet; goes with 1, 2, 4–6 of set walnut harbour" for the strip."""
    told = " and ".join(f"{runs(numbers)} of set {words}" for words, numbers in swap.stay)
    return f"swap sheet; goes with {told}" if told else "swap sheet"


def swap_lines(swap: SwapSheets, number: int) -> tuple[str, ...]:
    """Return what stands on the sheet itself, in lines: what it goes with, and what is thrown away."""
    stay = tuple(f"{runs(numbers)} of set {words}" for words, numbers in swap.stay)
    also = tuple(n for n in swap.numbers if n != number)
    beside = (f"and the new {runs(also)}",) if also else ()
    return (f"SWAP SHEET {number}", "goes with", *stay, *beside, f"Throw the old sheet {number} away.")


def runs(numbers: tuple[int, ...]) -> str:
    """Return numbers in short, three or more that follow one another as a run: "1, 2, 4–6"."""
    found: list[list[int]] = []
    for number in numbers:
        if found and found[-1][-1] == number - 1:
            found[-1].append(number)
        else:
            found.append([number])
    told = ([f"{run[0]}–{run[-1]}"] if len(run) > 2 else [str(n) for n in run] for run in found)
    return ", ".join(word for words in told for word in words)
