"""Words and runs of bytes that jobs often have, as the squeezer of codec 1 knows them.

Frozen: another dictionary would make every old link unreadable. The likeliest stand last,
where a short distance reaches them.
"""

WORDS = (
    "Warehouse Workshop Terrace Garden Courtyard Platform Stairs Lift Pool Gym Chapel Theatre "
    "Stage Foyer Lobby Bar Café Restaurant Canteen Kitchen Store Stock room Toilets Changing room "
    "Classroom Library Laboratory Ward Waiting room Meeting room Conference room Office Open plan "
    "Reception Entrance Corridor Hallway Hall Ground floor First floor Second floor Basement Level "
    "Car park Loading bay Yard Outside North East South West Back Front Main Upper Lower Room "
    "Left Right Rack Paging Music ceiling 20 W, 90° wall 10 W, pendant horn 30 W, 60° column "
    "Horn LS- SP Speaker Loudspeaker Attenuator Control Junction box Line Zone Output Amplifier "
)
DICTIONARY = WORDS.encode()
