"""Words and runs of bytes that jobs often have, as the squeezer of codec 1 knows them.

Frozen: another dictionary would make every old link unreadable. The likeliest stand last,
where a short distance reaches them.
"""

from base64 import b64decode

WORDS = (
    "Warehouse Workshop Terrace Garden Courtyard Platform Stairs Lift Pool Gym Chapel Theatre "
    "Stage Foyer Lobby Bar Café Restaurant Canteen Kitchen Store Stock room Toilets Changing room "
    "Classroom Library Laboratory Ward Waiting room Meeting room Conference room Office Open plan "
    "Reception Entrance Corridor Hallway Hall Ground floor First floor Second floor Basement Level "
    "Car park Loading bay Yard Outside North East South West Back Front Main Upper Lower Room "
    "Left Right Rack Paging Music ceiling 20 W, 90° wall 10 W, pendant horn 30 W, 60° column "
    "Horn LS- SP Speaker Loudspeaker Attenuator Control Junction box Line Zone Output Amplifier "
)
# What this codec wrote of three small invented jobs: the runs of bytes that most jobs share.
COLUMNS = (
    "BTAuMS4w5q4BAAEABms3ZgACAAIAAAAAAAAAAK4BAAAKAMjVy6kGAAAABwAAAgEAABYAAAQBAAYCBAAAAgEAAAIA"
    "AAQPAAAAAAAKAAEAFEFtcGxpZmllciAGAgAAAgAABA8AAAAABQILAgACAAJBQgMCCgAAAAAAAMgBAAAAAOADAAAA"
    "AAAGRwAAAAAGBjIyAAMAAkFCQwQCJAAAAAQGJAAGGBgELQAAAAAHA2gCBgQAVFVVVlVVBgABAAFEFT1ZAUdIclJa"
    "TA1EGQBhOTReMAMUZAMLLUQAAAIATwAAAAADAgDw/wAAAQAHB3gePMgBMpADZAUAACEQIRERQ0M0ZVNGIQAAAADI"
    "AQAAAAAAAgAANBkAAhQAAgAACgGI1M+nBpyGC4T/D9i2Bey+SqSIBdSgbqDoCdyUKvjUhAH0527E3FTk+j383hWg"
    "tFPUqYkBvJxevINjAKS+L4SRCuTsDoyhjQGkigGo/kTwv4MB2IOJAQABAARSSwMAAQAAAAAABTAuMS4w5i4AAQAG"
    "azdmAAIAAgAAAAAAAAAArgEAAAoAyNXLqQYAAAAHAAACAQAAFgAABAEABgIEAAACAQAAAgAABA8AAAAAAAoAAQAU"
    "QW1wbGlmaWVyIAYCAAACAAAEDwAAAAAFAgsCAAIAAkFCAwIKAAAAAAAAyAEAAAAA4AMAAAAAAARHAAAAAAYGMgAC"
    "AAJBQgYCBAAAAAYGCAAGGAQtAAAAAAcDNAIGBABUVVUGAAEAAT5TPiAiTjcuHyoqSxIADgAAAgBPAAAAAAMCADAA"
    "AQAGeHgePB48PB48PHgeZDIAAAAAyAEAAAAAAAIFMC4xLjCmLgABAAZxMngAAgACAAEAClRhbGx5AAIAAAAAAAAA"
    "AAAAAAIPAAAAAAACAAEAEkFtcGxpZmllcgACAAAAAAIPAAAAAAACAAEADk91dHB1dCAAAgACAAAAAMgBAAAAAHgA"
    "AAIDAAAAAPABAAACAAQAAAJHAAAAAAACAAEACExpbmUAAgAAAAAEAAAYIQAAAAAAAgBNAAAAAAAAABQAAAAAyAEA"
    "AAAAAAI="
)
DICTIONARY = WORDS.encode() + b64decode(COLUMNS)
