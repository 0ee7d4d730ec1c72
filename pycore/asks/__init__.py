"""One file per ask: the only floor that combines calculation, editing and carrying."""
