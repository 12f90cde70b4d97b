"""How far is our arithmetic of heat from the hourly reference, said of all homes and of one?"""

from __future__ import annotations

from estimator.compare import Comparison
from estimator.estimate import Estimate
from estimator.evidence.method import Band, MethodError, MethodRun, method_error
from estimator.report.figures import energy, fixed, number, share
from estimator.report.rows import Rows

WIDE = 0.05  # of the saving, beyond which the sentence warns
NEAR = 0.025  # of the saving, which 19 of 20 homes should keep within


def method_answer(run: MethodRun) -> str:
    """How far the heat saved is from the reference, on climates the method was not fitted on."""
    fresh = _fresh(run)
    real = sum(not row.invented for row in fresh)
    return (
        f"On {len(fresh)} climates the method was not fitted on, {real} of them real, half of {number(run.homes)} "
        f"random homes save within {_percent(max(row.median for row in fresh))} of what ISO 13790’s hourly method "
        f"finds, and 19 of 20 within {_percent(max(row.nineteen_in_twenty for row in fresh))}"
    )


def method_notes(run: MethodRun) -> tuple[str, ...]:
    """Where the two part, what the comparison is and leaves out, and how it was run."""
    high = [row.demand_bias for row in run.climates]
    worst = max(run.climates, key=lambda row: row.worst)
    return (
        f"{_beyond(run)} The worst home of all differs by {_percent(worst.worst)}, in {worst.climate}.",
        "It is a comparison of two calculations, not with measured heat. Both get the same air hour by hour, so this "
        "says nothing about leakage or fans. The whole demand reads "
        f"{share(min(high))} to {share(max(high))} above the reference, which counts the film of air on inner surfaces "
        "as well: that is why answers here are savings.",
        f"{number(run.homes)} random homes on each climate; reference: {run.reference}, which ISO 52016-1 has replaced "
        f"since. Run on {run.date} with: {run.command}.",
    )


def _fresh(run: MethodRun) -> list[MethodError]:
    """Climates on which the method was surely not fitted."""
    return [row for row in run.climates if row.fitted == "no"]


def _beyond(run: MethodRun) -> str:
    fresh = _fresh(run)
    wide = {row.climate: row.wide for row in fresh if row.nineteen_in_twenty > NEAR}
    far = {row.climate: row.beyond for row in fresh if row.beyond}
    said = (
        "".join(
            f"In {climate} {_percent(part)} of homes lie beyond {_percent(NEAR)}: the aim of 19 of 20 is missed there. "
            for climate, part in wide.items()
        )
        or f"In each of them 19 of 20 homes keep within {_percent(NEAR)}. "
    )
    if not far:
        return f"{said}No home differs by both more than 6% and more than 60 kWh a year."
    places = " and ".join(f"{count} in {climate}" for climate, count in far.items())
    return (
        f"{said}{sum(far.values())} of {number(len(fresh) * run.homes)} homes differ by more than 6% and more than "
        f"60 kWh a year: {places}. They are homes of little loss under a strong winter sun, whose heating has little "
        "left to do; beside the answer for such a home the method error is shown as wide as it is there."
    )


def method_table(run: MethodRun) -> Rows:
    """Errors of the heat saved, climate by climate."""
    return Rows(
        caption="Difference in heat saved from the hourly reference",
        head=("Climate", "Half of homes within", "19 of 20 within", "Worst home", "Middle, with its sign"),
        rows=tuple(
            (
                f"{row.climate}{_kind(row)}",
                *(_percent(error) for error in (row.median, row.nineteen_in_twenty, row.worst, row.bias)),
            )
            for row in run.climates
        ),
    )


def band_table(run: MethodRun) -> Rows:
    """Errors by the share of the loss that heating has to meet, which decides them more than the climate does."""
    lower = [0.0, *(band.up_to for band in run.bands)]
    return Rows(
        caption="The same by how much of the home’s loss its heating has to meet, all climates together",
        head=("Met by heating", "Homes", "19 of 20, in every climate", "All lie between"),
        rows=tuple(
            (
                f"{share(low)} to {share(band.up_to)}",
                number(float(band.homes), figures=6),
                _between(band.low, band.high),
                _between(band.least, band.most),
            )
            for low, band in zip(lower, run.bands, strict=False)
        ),
    )


def method_error_in_words(done: Estimate, comparison: Comparison) -> str:
    """One sentence for the small print beside an answer: the reference's bounds for a home like this."""
    found = method_error(done, comparison)
    if found is None:
        return (
            "Heat is counted by degree-days below a fixed base, as asked; that method was not held against an hourly "
            "reference."
        )
    return (
        f"Method error: of the heat saved, {energy(found.saved)} a year, the hourly reference of ISO 13790 would find "
        f"{energy(found.low)} to {energy(found.high)} in 19 of 20 homes like this one, whose heating meets "
        f"{share(found.met_by_heating)} of the loss. {_weight(found.band)}"
    )


def _weight(band: Band) -> str:
    wide = max(abs(band.low), abs(band.high))
    if wide > WIDE:
        return "Sun and people meet most of it here, and then the two methods part: take the saving as rough."
    return "That is little beside what is not known of the home itself."


def _between(low: float, high: float) -> str:
    return f"{_percent(low)} and {'+' if high > 0.0 else ''}{_percent(high)}"


def _kind(row: MethodError) -> str:
    return f" ({'invented' if row.invented else 'real'}{_FITTED[row.fitted]})"


_FITTED = {"no": "", "perhaps": ", perhaps fitted on it", "yes": ", fitted on it"}


def _percent(fraction: float) -> str:
    return f"{fixed(100.0 * fraction, decimals=1)}%"
