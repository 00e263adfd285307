"""As ask.R, for Python."""
import csv
import importlib.util
import sys


def ask(script, name, calls, answers):
    spec = importlib.util.spec_from_file_location("script", script)
    functions = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(functions)
    with open(calls, newline="") as rows, open(answers, "w") as lines:
        for row in csv.DictReader(rows):
            numbers = {argument: [float.fromhex(number) for number in cell.split()] for argument, cell in row.items()}
            print(*(float(number).hex() for number in getattr(functions, name)(**numbers)), file=lines)


for question in sys.stdin:
    if question == "end\n":
        break
    ask(*question.rstrip("\n").split("\t"))
    print("done", flush=True)
