"""What is said: readings over their whole ranges, commands, safety phrases, near phrases, and everyday talk that must not be taken for any of them."""
import os
import random

HERE = os.path.dirname(os.path.abspath(__file__))
ONES = ("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen").split()
TENS = "- - twenty thirty forty fifty sixty seventy eighty ninety".split()

# Spoken names, usual and whole range, decimals and units: src/HandsFreeStartup.Procedure/Hearing/Fields.cs.
FIELDS = [
    (["oxygen", "O two"], (2, 12), (0, 20.9), [1], ["percent"]),
    (["carbon dioxide", "C O two"], (4, 11.5), (0, 15), [1], ["percent"]),
    (["monoxide", "monoxide", "carbon monoxide", "C O"], (0, 450), (0, 9999), [0], ["P P M", "parts per million"]),
    (["room monoxide", "room carbon monoxide", "room C O"], (0, 80), (0, 9999), [0], ["P P M", "parts per million"]),
    (["flue temperature", "stack temperature"], (85, 520), (60, 900), [0], ["degrees", "degrees Fahrenheit", "degrees Celsius"]),
    (["air temperature", "combustion air"], (20, 110), (-40, 130), [0], ["degrees", "degrees Fahrenheit", "degrees Celsius"]),
    (["draft"], (-0.2, 0.1), (-0.5, 0.5), [2, 2, 2, 3], ["inches", "inches of water", "inches water column", "pascals"]),
    (["inlet pressure", "inlet"], (3, 14), (0, 30), [1, 1, 2], ["inches", "inches of water", "inches water column", "millibars"]),
    (["manifold pressure", "manifold"], (0.8, 11), (0, 15), [1, 1, 2], ["inches", "inches of water", "inches water column", "millibars"]),
    (["meter"], (8, 240), (3, 600), [0, 0, 1], ["seconds"]),
    (["supply temperature"], (80, 190), (30, 220), [0], ["degrees", "degrees Fahrenheit", "degrees Celsius"]),
    (["return temperature"], (50, 85), (30, 220), [0], ["degrees", "degrees Fahrenheit", "degrees Celsius"]),
    (["supply static"], (0.05, 0.9), (-1.5, 2), [2], ["inches", "inches of water", "pascals"]),
    (["return static"], (-0.6, -0.03), (-1.5, 2), [2], ["inches", "inches of water", "pascals"]),
    (["flame current"], (0.4, 9), (0, 50), [1], ["microamps"]),
    (["line voltage"], (108, 130), (0, 300), [0, 0, 1], ["volts"]),
    (["control voltage"], (20, 29), (0, 60), [0, 1, 1], ["volts"]),
    (["lowest", "highest"], (0.8, 14), (0, 30), [1, 1, 2], ["inches"]),
]

COMMANDS = (
    "done|next|go back|say again|disregard|skip step|note|how long|start timer|read back|stand by|go ahead|what is open|help|finish|confirm|yes|no|affirm|affirmative|"
    "negative|tell me more|short prompts|full prompts|stop talking|keep|again|gas supplier|fire service|own finding|fault|owner's wish|category one|category two|category three|category four"
).split("|")

NEAR = (
    "next week|next one|next door|done already|it is done|not done|no more|no thanks|no problem|yes sir|yes please|yes ma'am|confirm it|confirmed|I confirm|scratch that|repeat that|"
    "listen again|pause listening|read it back|read the label|back up|go home|go back home|go on|help me|help yourself|how long is it|how long will it take|how about that|"
    "start the furnace|start it|timer is running|what is it|what is that|is it open|it is open|open the door|pause|listen|listen up|note that|a note|notes|finished|finish line|finish it|"
    "skip it|skip that|skip the step|step over|repeat|repeat it|that one|oxygen is low|the oxygen|oxygen sensor|the draft is fine|draft beer|draft hood|manifold gauge|the manifold|"
    "inlet valve|inlet side|flue pipe|the flue|stack it|supply air|supply duct|return air|return duct|return it|flame sensor|the flame|line set|line voltage is fine|control board|"
    "control it|meter reading|the meter|temperature|room temperature|air filter|air handler|carbon|carbon filter|monoxide alarm|the monoxide|static|static electricity|current|voltage|"
    "pressure|percent|degrees|inches|volts|seconds|point|minus|zero|hundred|thousand|and|stand up|stand back|standing by the door|go ahead and open it|go ahead of me|regard it|"
    "regardless|say it again later|say that|stop talking about it|keep it|keep that|once again|tell me|tell me about it|it is negative|a positive sign|the fire service was here|over the range"
).split("|")

LEADS = ["the ", "it says ", "and ", "I think ", "we have ", "you said ", "now "]


def table(path=os.path.join(HERE, "safety-words.tsv")):
    """Ways to stop and phrases that must not stop, of the program's own table."""
    path = path if os.path.exists(path) else os.path.join(HERE, "../../src/HandsFreeStartup.Procedure/Hearing/safety-words.tsv")
    rows = [line.rstrip("\n").split("\t") for line in open(path) if line.strip() and line[0] != "#"]
    ways = [row[1] for row in rows if row[0] not in ("-", "around", "lead", "thing")]
    things = [f"{way} {thing}" for way in ways if way.endswith(" a fire") for row in rows if row[0] == "thing" for thing in row[1].split()]
    return ways, [row[1] for row in rows if row[0] == "-"] + things


def lines(name):
    return [line.strip() for line in open(os.path.join(HERE, name)) if line.strip()]


def below_hundred(n):
    return ONES[n] if n < 20 else TENS[n // 10] + ("" if n % 10 == 0 else " " + ONES[n % 10])


def whole(n):
    """Ways to say a whole number 0..9999."""
    if n < 100:
        ways = [below_hundred(n)]
    elif n < 1000:
        hundreds, rest = divmod(n, 100)
        ways = [ONES[hundreds] + " hundred" + (f" {below_hundred(rest)}" if rest else "")]
        if rest:
            ways += [f"{ONES[hundreds]} hundred and {below_hundred(rest)}", f"{ONES[hundreds]} {below_hundred(rest)}" if rest >= 10 else f"{ONES[hundreds]} oh {ONES[rest]}"]
        if hundreds == 1:
            ways.append("a hundred" + (f" and {below_hundred(rest)}" if rest else ""))
    else:
        thousands, rest = divmod(n, 1000)
        ways = [ONES[thousands] + " thousand" + (f" {whole(rest)[0]}" if rest else "")]
        if n % 100 == 0:
            ways.append(below_hundred(n // 100) + " hundred")
        elif n // 100 % 10:
            ways.append(f"{below_hundred(n // 100)} {below_hundred(n % 100) if n % 100 >= 10 else 'oh ' + ONES[n % 100]}")
    if n >= 10:
        ways.append(" ".join(ONES[int(digit)] for digit in str(n)))
    return ways


def spoken(text):
    """Ways to say a decimal such as -0.02, 7.6 or 328."""
    sign, body = ("minus ", text[1:]) if text[0] == "-" else ("", text)
    head, _, tail = body.partition(".")
    if not tail:
        return [sign + way for way in whole(int(head))]
    tails = [" ".join(ONES[int(digit)] for digit in tail), " ".join("oh" if digit == "0" else ONES[int(digit)] for digit in tail)]
    heads = [below_hundred(int(head))] if int(head) < 100 else whole(int(head))
    ways = [f"{one} point {other}" for one in heads for other in tails] + ([f"point {other}" for other in tails] if int(head) == 0 else [])
    return [sign + way for way in dict.fromkeys(ways)]


class Texts:
    """Random texts; the same for the same seed and number."""

    def __init__(self):
        self.words, self.sentences = lines("words.txt"), lines("sentences.txt")
        self.ways, self.not_meant = table()

    def number(self, rnd, field):
        low, high = field[2] if rnd.random() < 0.35 else field[1]
        if high > 5000 and rnd.random() < 0.7:
            high = 900
        value = rnd.uniform(low, high)
        if rnd.random() < 0.12:
            value = float(round(value))
        text = f"{value:.{rnd.choice(field[3])}f}"
        return rnd.choice(spoken(text.lstrip("-") if float(text) == 0 else text))

    def reading(self, rnd):
        field = rnd.choice(FIELDS)
        name = rnd.choice(field[0])
        if "monoxide" in name and rnd.random() < 0.04:
            return f"{name} over range"
        number = self.number(rnd, field)
        if rnd.random() < 0.04:
            number = number.replace(" point ", " ")
        return f"{name} {number}" + (f" {rnd.choice(field[4])}" if rnd.random() < 0.35 else "")

    def safety(self, rnd):
        way = rnd.choice(self.ways)
        before = rnd.choice(["", "", "", "", "yes ", "yes I do ", "hey ", "help ", "no ", "I think ", "wait "])
        return before + way + rnd.choice(["", "", "", "", " here", " now", " in here", " down here", " in the basement"])

    def one(self, rnd):
        chance = rnd.random()
        for share, make in (
            (0.52, lambda: self.reading(rnd)),
            (0.65, lambda: rnd.choice(COMMANDS)),
            (0.70, lambda: rnd.choice(NEAR if rnd.random() < 0.6 else self.not_meant)),
            (0.75, lambda: self.safety(rnd)),
            (0.79, lambda: self.number(rnd, rnd.choice(FIELDS))),
            (0.81, lambda: rnd.choice(rnd.choice(FIELDS)[0])),
            (0.88, lambda: rnd.choice(self.words)),
            (0.90, lambda: " ".join((text := self.reading(rnd).split())[: rnd.randint(1, len(text))])),
            (0.93, lambda: rnd.choice(LEADS) + self.reading(rnd)),
            (1.01, lambda: rnd.choice(self.sentences)),
        ):
            if chance < share:
                return make()


if __name__ == "__main__":
    texts, generator = Texts(), random.Random(1)
    for _ in range(40):
        print(texts.one(generator))
