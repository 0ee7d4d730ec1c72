"""Lines of every shape, for laws."""

from hypothesis import strategies as st

from tests.samples.lines import Stem, grow

STATES = st.sampled_from(["override", "set"])
HERTZ = st.sampled_from([0.0, 50.0, 80.0, 1000.0, 10_000.0])


def stems(*, most: int, controls: bool = True) -> st.SearchStrategy[list[Stem]]:
    """A line of up to `most` points."""
    return st.builds(
        lambda chance, count: grow(chance, count, controls=controls),
        st.randoms(use_true_random=False),
        st.integers(1, most),
    )
