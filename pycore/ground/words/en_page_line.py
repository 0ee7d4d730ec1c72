"""English: the page's words for a line as it hangs. Drawing, cable, what if, and the ladder."""

PAGE: dict[str, str] = {
    "do.add_run": "Hang a run",
    "do.set_cable": "Pull another cable",
    "do.swap_loudspeaker": "Fit another loudspeaker",
    "do.tick": "Tick a loudspeaker",
    "do.untick": "Take a tick back",
}
