/* Made by `python3 build.py make` from pycore/ground/words/en_page.py. Change the words there. */
export const words = {
  "app.name": "Rungline",
  "tally.title": "Tally"
};
