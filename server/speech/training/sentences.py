"""Random sentences of an alignment crew, as they are spoken (lower case, no digits, no punctuation).

`sentence(rng)` draws one sentence of the crew's own; `chatter(rng)` draws any other speech.
Everything is a function of the given `random.Random`, so a seed names a corpus.
Spelling is by sound: "ait", "wun" and "too" sound like "eight", "one" and "two", so they are written like these.
"""

from random import Random

UNITS = "zero one two three four five six seven eight nine".split()
TEENS = "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
TENS = "_ _ twenty thirty forty fifty sixty seventy eighty ninety".split()
RADIO = {3: "tree", 4: "fower", 5: "fife", 9: "niner"}
ITU = "nadazero unaone bissotwo terrathree kartefour pantafive soxisix setteseven oktoeight novenine".split()


def below_hundred(n: int) -> str:
    if n < 10:
        return UNITS[n]
    if n < 20:
        return TEENS[n - 10]
    return TENS[n // 10] + (f" {UNITS[n % 10]}" if n % 10 else "")


def cardinal(n: int, rng: Random) -> str:
    """Plain cardinal of 0..9999, with or without "and", with "a hundred" or "one hundred"."""
    if n < 100:
        return below_hundred(n)
    joint = rng.choice([" and ", " "])
    if n < 1000:
        lead = "a" if n < 200 and rng.random() < 0.5 else UNITS[n // 100]
        return f"{lead} hundred" + (joint + below_hundred(n % 100) if n % 100 else "")
    lead = "a" if n < 2000 and rng.random() < 0.3 else UNITS[n // 1000]
    rest = n % 1000
    if not rest:
        return f"{lead} thousand"
    return f"{lead} thousand" + (joint + below_hundred(rest) if rest < 100 else " " + cardinal(rest, rng).replace("a ", "one ", 1))


def digit(d: int, rng: Random, radio: float) -> str:
    if d == 0:
        return rng.choices(["zero", "oh", "nought"], [6, 4, 1])[0]
    if d in RADIO and rng.random() < radio:
        return RADIO[d]
    return UNITS[d]


def digit_by_digit(text: str, rng: Random) -> str:
    radio = rng.choice([0, 0, 0, 0.8])
    words, i = [], 0
    while i < len(text):
        if i + 1 < len(text) and text[i] == text[i + 1] and rng.random() < 0.25:
            words += ["double", digit(int(text[i]), rng, radio)]
            i += 2
        else:
            words.append(digit(int(text[i]), rng, radio))
            i += 1
    return " ".join(words)


def in_pairs(n: int, rng: Random) -> str:
    """"one forty two", "twelve oh five", "two hundred": the way meters are read aloud."""
    if n < 100:
        return below_hundred(n)
    head, tail = below_hundred(n // 100), n % 100
    if tail == 0:
        return f"{head} hundred"
    if tail < 10:
        return f"{head} {rng.choice(['oh', 'oh', 'zero'])} {UNITS[tail]}"
    return f"{head} {below_hundred(tail)}"


def whole(rng: Random) -> int:
    kind = rng.random()
    if kind < 0.12:
        return rng.randrange(10)
    if kind < 0.35:
        return rng.choice([rng.randrange(13, 20), 10 * rng.randrange(2, 10)])
    if kind < 0.55:
        return rng.randrange(100)
    if kind < 0.85:
        return rng.randrange(100, 1000)
    return rng.randrange(1000, 10000)


def spoken(n: int, rng: Random) -> str:
    way = rng.random()
    if n >= 10 and way < 0.35:
        return digit_by_digit(str(n), rng)
    if n < 10:
        return digit(n, rng, 0.15) if way < 0.9 else "nought " + UNITS[n]
    if way < 0.37:
        return " ".join(ITU[int(d)] for d in str(n))
    if way < 0.68:
        return in_pairs(n, rng)
    return cardinal(n, rng)


def number(rng: Random) -> str:
    if rng.random() < 0.06:
        return "oh " + UNITS[rng.randrange(1, 10)]
    text = spoken(whole(rng), rng)
    if rng.random() < 0.2:
        places = rng.choices([1, 2, 3], [6, 3, 1])[0]
        text += f" {rng.choice(['point', 'point', 'decimal'])} " + digit_by_digit("".join(str(rng.randrange(10)) for _ in range(places)), rng)
        if rng.random() < 0.08:
            text = "point " + text.rsplit(" ", 1)[-1]
    return text


UNIT_WORDS = ["percent", "percent", "volts", "volt", "millivolts", "d b", "d b", "decibels", "counts", "per cent of full scale"]


def reading(rng: Random) -> str:
    text = number(rng)
    if rng.random() < 0.15:
        text = f"{rng.choice(['minus', 'minus', 'plus', 'negative'])} {text}"
    if rng.random() < 0.25:
        text += f" {rng.choice(UNIT_WORDS)}"
    if rng.random() < 0.25:
        lead = ["reading", "reading is", "reads", "it's", "it is", "now", "now it's", "i have", "i've got", "that's", "i read",
                "we have", "signal", "signal is", "still", "about", "around", "back to", "up to", "down to", "up at", "panel says", "meter says", "got"]
        text = f"{rng.choice(lead)} {text}"
    if rng.random() < 0.05:
        text += f" {rng.choice(['now', 'steady', 'and rising', 'and falling', 'and steady', 'over', 'again'])}"
    return text


STATES = """no signal|no signal at all|nothing|nothing at all|nothing there|no reading|no light|lost it|lost|i lost it|we lost it|signal lost|lost signal|lost the signal|signal's gone|it's gone|gone
zero|it's zero|blank|flat line|dead
saturated|it's saturated|saturation|maxed out|it's maxed out|max|maximum|full scale|over range|over scale|off the scale|pegged|it's pegged|too much|too high|too strong|overload|flooded
rising|it's rising|going up|it's going up|climbing|still climbing|increasing|coming up|higher|better|up
falling|it's falling|going down|it's going down|dropping|still dropping|decreasing|lower|worse|down|coming down
steady|it's steady|settled|it's settled|stable|it's stable|not moving|holding|holding steady|no change|same|the same|same again|unchanged|stopped|constant
still moving|still changing|jumping|jumping around|drifting|unstable|not settled|not steady|still settling|fluctuating|flickering
peaked|past the peak|that's the peak|too low|very low|weak|very weak|low""".replace("\n", "|").split("|")

ANSWERS = """yes|yeah|yep|yes please|correct|that's correct|affirmative|affirm|right|that's right|confirmed|confirm
no|nope|negative|no it's not|not correct|that's wrong|incorrect|wrong
repeat|repeat that|repeat please|say again|say that again|say again please|what|what was that|pardon|again|come again|didn't hear|did not hear that|i missed that
wait|wait a minute|hold on|hold|stand by|standby|one moment|just a moment|one second|hang on|give me a minute|pause
ready|i'm ready|ready when you are|go on|go ahead|continue|carry on|resume|next|proceed|go
can't|cannot|i can't|can't do that|can't reach|can't reach it|i can't reach it|can't see it|not possible|unable|stuck|it's stuck|it won't move|won't turn|it won't turn|at the stop|at the end stop|at the end|end of travel|no more travel|it's tight|jammed
wrong way|wrong direction|that's the wrong way|other way|the other way
blocked|path blocked|path is blocked|beam blocked|beam is blocked|the beam is blocked|something in the way|someone in the way|obstructed
half covered|half blocked|covered|fully covered|all covered|it's covered|uncovered|fully uncovered|clear|all clear|path clear|path is clear|beam clear|the beam is clear|cleared
swap adjuster|swap adjusters|swap|switch adjuster|other adjuster|the other adjuster|other screw|change adjuster|switch to vertical|switch to horizontal|swap to vertical|swap to horizontal|go to vertical|go to horizontal
accept|accept it|accept that|accepted|take it|accept the alignment|good enough|finish|finished|lock it|lock it down
stop|stop now|stop stop|stop there|halt|start|begin|start again|start over|let's start|let's go|begin again|end|abort|cancel
alarm|in alarm|it's in alarm|we have an alarm|alarm received|fire alarm|fault|in fault|it's in fault|we have a fault|fault received|trouble|restored|it's restored|normal|all normal|back to normal|reset|it's reset|isolated|outputs isolated|alarm outputs isolated|not isolated|de isolated|outputs restored|told them|monitoring told|no alarm|no fault
okay|ok|copy|copied|copy that|roger|roger that|understood|got it|thanks|thank you|will do|all right|good|fine
undo|undo that|undo last|take that back|take it back|scratch that|forget that|delete that|ignore that|disregard|strike that
say the reading|say the last reading|what's the reading|what is the reading|read it back|read back|last reading|status|help|where are we|how much is left|what now|what next|why
done|moved|turned|done that|okay done|done turning|made the turn|that's done|all done""".replace("\n", "|").split("|")

FRACTIONS = """a quarter|quarter|quarter turn|a quarter turn|one quarter|half|a half|half turn|half a turn|an eighth|eighth|one eighth|eighth turn|an eighth of a turn|a sixteenth|three quarters|three quarter turn|three quarters of a turn
three eighths|one turn|a full turn|full turn|one full turn|a turn|two turns|three turns|one and a half turns|one and a half|two and a half turns|one and a quarter turns|a turn and a half|a bit|a little""".replace("\n", "|").split("|")
WAYS = """clockwise|clockwise|anticlockwise|anti clockwise|counter clockwise|counterclockwise|left|right|up|down|back|forward|in|out|to the left|to the right|the other way|the same way|more|again|further""".split("|")
AXES = ["horizontal", "vertical", "horizontal", "vertical", "the horizontal", "the vertical"]


def move(rng: Random) -> str:
    parts = []
    if rng.random() < 0.35:
        parts.append(rng.choice(["turned", "moved", "turned it", "moved it", "turn", "went", "going", "done", "i turned", "that's"]))
    if rng.random() < 0.3:
        parts.append(rng.choice(AXES))
    how = [rng.choice(FRACTIONS)]
    if rng.random() < 0.8:
        how.append(rng.choice(WAYS))
    if rng.random() < 0.2:
        how.reverse()
    parts += how
    if rng.random() < 0.1:
        parts.append(rng.choice(["on the horizontal", "on the vertical", "on horizontal", "on vertical"]))
    return " ".join(parts)


def gain(rng: Random) -> str:
    level = spoken(rng.choice([rng.randrange(1, 13), rng.randrange(100), 5 * rng.randrange(1, 21)]), rng)
    return rng.choice([
        "gain down", "gain up", "gain down one", "gain up one", "lowered the gain", "raised the gain", "lower the gain", "raise the gain",
        "turned the gain down", "turned the gain up", "turned down the gain", "gain up one step", "gain down one step", "gain down two steps",
        "gain lowered", "gain raised", "reduced the gain", "increased the gain", "gain is down", "gain is up", "full gain", "maximum gain",
        "minimum gain", "gain at full", "gain at maximum", "gain at minimum", "half gain", "gain unchanged", "gain stays",
        f"gain {level}", f"gain {level}", f"gain is now {level}", f"gain now {level}", f"gain set to {level}", f"gain is {level}",
        f"set gain to {level}", f"gain to {level}", f"gain at {level}", f"gain {level} percent", f"gain down to {level}", f"gain up to {level}"])


def correction(rng: Random) -> str:
    a, b = number(rng), number(rng)
    if rng.random() < 0.5:
        k = rng.randrange(3, 10)
        a, b = below_hundred(10 * k), below_hundred(10 + k)
        if rng.random() < 0.5:
            a, b = b, a
    return rng.choice([
        f"wrong {b}", f"no {b}", f"correction {b}", f"not {a} {b}", f"no not {a} {b}", f"yes {b}", f"yes {b}", f"wrong it's {b}",
        f"that's wrong {b}", f"i said {b}", f"i meant {b}", f"sorry {b}", f"make that {b}", f"it was {b}", f"no it's {b}",
        f"scratch that {b}", f"negative {b}", f"it's {b} not {a}", f"{b} not {a}", f"change that to {b}", f"correct {b}", f"affirmative {b}"])


COMMON = """the a and to of in that it is was for on are with as at be this have from or had by but some what there we can out other were all your when up use word how said an each she which do their time if will way about many then them would write like so these her long make thing see him two has look more day could go come did my sound no most number who over know water than call first people may down side been now find any new work part take get place made live where after back little only round man year came show every good me give our under name very through just form much great think say help low line before turn cause same mean differ move right boy old too does tell sentence set three want air well also play small end put home read hand port large spell add even land here must big high such follow act why ask men change went light kind off need house picture try us again animal point mother world near build self earth father head stand own page should country found answer school grow study still learn plant cover food sun four thought let keep eye never last door between city tree cross since hard start might story saw far sea draw left late run while press close night real life few stop open seem together next white children begin got walk example ease paper often always music those both mark book letter until mile river car feet care second group carry took rain eat room friend began idea fish mountain north once base hear horse cut sure watch color face wood main enough plain girl usual young ready above ever red list though feel talk bird soon body dog family direct pose leave song measure state product black short class wind question happen complete ship area half rock order fire south problem piece told knew pass farm top whole king size heard best hour better true during hundred remember step early hold west ground interest reach fast five sing listen six table travel less morning ten simple several vowel toward war lay against pattern slow center love person money serve appear road map science rule govern pull cold notice voice fall power town fine certain fly unit lead cry dark machine note wait plan figure star box noun field rest correct able pound done beauty drive stood contain front teach week final gave green oh quick develop sleep warm free minute strong special mind behind clear tail produce fact street inch lot nothing course stay wheel full force blue object decide surface deep moon island foot yet busy test record boat common gold possible plane age dry wonder laugh thousand ago ran check game shape yes hot miss brought heat snow bed bring sit perhaps fill east weight language among""".split()
CHATTER = """how was your weekend|did you see the game last night|can you pass me the spanner please|where did you park the van|i'm going for lunch in a minute|the ladder is in the way|tell him to move the forklift|who left the door open
what time are we finishing today|there's dust all over this thing|the boss wants us back at the office|mind your head up there|careful with that cable|i think it's going to rain|have you got a spare battery|my phone is nearly flat
turn the radio off please|the lights just went out|somebody is coming up the stairs|let me get my glasses|this building is freezing|ask the site manager about the key|we should have brought the other drill|don't forget to sign the sheet
he said he would call back later|that truck is blocking the gate|i can hear you but only just|put the box on the shelf|where's the toilet|we need a longer screw for this bracket|see you on monday|good morning everyone
is it lunch time yet|what did the customer say|that's not my job|it was like that when i got here|i'll be there in a second|can you hear me down there|we will need the cherry picker|the paint is still wet""".replace("\n", "|").split("|")


def chatter(rng: Random) -> str:
    if rng.random() < 0.25:
        return rng.choice(CHATTER)
    return " ".join(rng.choice(COMMON) for _ in range(rng.randrange(1, 8)))


def strange(rng: Random, words: list[str]) -> str:
    """One to three words of a dictionary, mostly one. Words that are not ours must be spelled as they sound."""
    return " ".join(rng.choice(words) for _ in range(rng.choices([1, 2, 3], [6, 2, 2])[0]))


def note(rng: Random) -> str:
    return f"{rng.choice(['note', 'note that', 'remark', 'for the record'])} {chatter(rng)}"


def letters(rng: Random) -> str:
    return " ".join(rng.choice("abcdefghijklmnopqrstuvwxyz") for _ in range(rng.randrange(2, 7)))


def sentence(rng: Random) -> str:
    """One sentence of the crew."""
    kind = rng.choices([reading, number, move, gain, correction, STATES, ANSWERS], [26, 14, 14, 8, 10, 12, 18])[0]
    text = rng.choice(kind) if isinstance(kind, list) else kind(rng)
    if rng.random() < 0.04:
        text = f"{rng.choice(['okay', 'right', 'well', 'so', 'hello', 'panel', 'emitter', 'um', 'er'])} {text}"
    return text


def training_text(rng: Random, grammar: list[str], words: list[str]) -> str:
    """What the synthetic voices say: mostly our sentences (half of them drawn from the grammar), and some others."""
    kind = rng.random()
    if kind < 0.4:
        return rng.choice(grammar)
    if kind < 0.76:
        return sentence(rng)
    if kind < 0.8:
        return f"{sentence(rng)} {sentence(rng)}"
    if kind < 0.88:
        return strange(rng, words)
    if kind < 0.95:
        return chatter(rng)
    return note(rng) if kind < 0.975 else letters(rng)
