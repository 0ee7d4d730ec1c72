"""English: names of the kinds that come with the tool. They are generic and invented."""

NAMES = {
    "ceiling_6w": "ceiling 6 W, 90°",
    "ceiling_20w": "ceiling 20 W, 90°",
    "wall_10w": "wall 10 W, 120°",
    "column_30w": "column 30 W, 120° × 40°",
    "horn_30w": "horn 30 W, 60°",
    "pendant_15w": "pendant 15 W, 120°",
    "control_10w": "wall control 10 W at 100 V",
    "control_35w": "wall control 35 W at 100 V, overridden by a page",
    "control_100w": "wall control 100 W at 100 V, overridden by a page",
}
