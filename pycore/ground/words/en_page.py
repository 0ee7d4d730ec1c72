"""English: the page's own words. A {name} is filled by the page with a text it was given."""

PAGE: dict[str, str] = {
    "app.name": "Rungline",
    "tally.title": "Tally",
}
