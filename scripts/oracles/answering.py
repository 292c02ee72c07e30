"""How a script answers: points come as lines of JSON with the name of the question, values go out as lines of JSON."""
import json
import sys


def answer(questions):
    """`questions` maps the name of a question to a function of the numbers of a point, by name."""
    for line in sys.stdin:
        point = json.loads(line)
        ask = point.pop("ask")
        try:
            print(json.dumps(questions[ask](**point), allow_nan=False))
        except Exception as fault:  # the runner counts a point without an answer as failed, and shows this text
            print(json.dumps({"fault": f"{ask} {point}: {fault!r}"}))
