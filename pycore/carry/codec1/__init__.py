"""Link codec number 1: a job as a short run of bytes, columns rather than objects.

Everything a text of this codec needs to be read is in this package and nothing of it is
looked up elsewhere: the fields and their order (`shape`), the choices, the catalogue and
the dictionary as they were. So no later change to the models or the catalogue alters an
old link. The fields of a table may be added to at its end; nothing else here may change
once a release has written links.
"""

from pycore.carry.codec1.whole import pack, unpack

__all__ = ["pack", "unpack"]
