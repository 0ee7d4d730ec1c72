"""What each id of a job is called when a sentence speaks of it."""

from pycore.ground.words import kind_name
from pycore.jobs import Job


def names_of(job: Job, *, language: str) -> dict[str, str]:
    """Names by id. An output carries its amplifier's name when it stands with others."""
    names: dict[str, str] = {}
    for amplifier in job.amplifiers:
        names[amplifier.id] = amplifier.name
        for output in amplifier.outputs:
            alone = len(amplifier.outputs) == 1
            names[output.id] = amplifier.name if alone else f"{amplifier.name} · {output.name}"
    for zone in job.zones:
        names[zone.id] = zone.name
        # a part nobody named is spoken of by its zone: an id says nothing to a person
        names.update((point.id, point.fitted.label or zone.name) for point in zone.line)
    for family in (job.kinds.cables, job.kinds.loudspeakers, job.kinds.attenuators):
        names.update((kind.id, kind_name(kind.name, language=language)) for kind in family)
    names.update((area.id, area.name) for area in job.areas)
    return names
