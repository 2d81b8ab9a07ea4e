"""Reads every string literal in include/ and src/ and fails on those that look like prose: three or
more words in a row. Only words/ and app/ speak; everything else holds facts and codes.

Usage: check_prose.py ROOT [EXEMPT]. EXEMPT names a file that lists folders or files below ROOT, one
a line, which aren't read.

Not taken for prose: tags and attributes of HTML and SVG (but what `alt`, `aria-label` and `title`
say is), rules of CSS, messages of static_assert, and those of std::logic_error and
std::invalid_argument, which tell a programmer of a slip and nobody else.
"""

import pathlib
import re
import sys

SPEAKING = ("src/words/", "src/app/", "include/fogline/words/")
FOR_PROGRAMMERS = {"static_assert", "logic_error", "invalid_argument"}

TOKEN = re.compile(r"""
    (?P<skip>\s+|//[^\n]*|/\*.*?\*/|\#[ \t]*include[^\n]*)
  | (?P<raw>(?:u8|[uUL])?R"(?P<mark>[^\s()\\]*)\((?P<inside>.*?)\)(?P=mark)")
  | (?P<text>(?:u8|[uUL])?"(?P<plain>(?:\\.|[^"\\\n])*)")
  | (?P<character>'(?:\\.|[^'\\\n])+')
  | (?P<number>[0-9][0-9a-zA-Z_'.]*)
  | (?P<name>[A-Za-z_]\w*)
  | (?P<other>.)
""", re.VERBOSE | re.DOTALL)

WORD = r"[^\W\d_](?:[^\W\d_]|['’](?=[^\W\d_]))*"
PROSE = re.compile(rf"(?<![\w'’.-]){WORD}(?: {WORD}){{2,}}")
SHOWN_ATTRIBUTE = re.compile(r"""\b(?:alt|aria-label|title)=["']([^"'<>]*)""")


def unescaped(literal):
    simple = {"n": "\n", "t": "\t", "r": "\r", "0": "\0"}
    text = re.sub(r"\\x[0-9a-fA-F]+|\\[0-7]{2,3}", "?", literal)
    return re.sub(r"\\(.)", lambda escape: simple.get(escape.group(1), escape.group(1)), text,
                  flags=re.DOTALL)


def shown_to_people(text):
    """The text without markup: tags, also those that only begin or end in it, and rules of CSS."""
    shown = SHOWN_ATTRIBUTE.findall(text)
    text = re.sub(r"<style>.*?(</style>|$)", "|", text, flags=re.DOTALL)
    text = re.sub(r"[^{}]*\{[^{}]*:[^{}]*;[^{}]*\}", "|", text)
    text = re.sub(r"</?[A-Za-z!][^<>]*(>|$)", "|", text)
    text = re.sub(r"""[\w:-]+=(["'])[^"']*(\1|$)""", "|", text)
    return [text, *shown]


def literals(source):
    """Line and text of each string literal; neighbours that the compiler joins count as one."""
    line = 1
    callers = []
    before = ""
    joined = None
    for token in TOKEN.finditer(source):
        kind, text = token.lastgroup, token.group()
        # lastgroup is the outermost group that closed last.
        inside = token.group("inside")
        if inside is None and token.group("plain") is not None:
            inside = unescaped(token.group("plain"))
        if inside is not None:
            joined = (joined[0], joined[1] + inside) if joined else (line, inside)
        elif kind != "skip":
            if joined and not FOR_PROGRAMMERS.intersection(callers):
                yield joined
            joined = None
            if text == "(":
                callers.append(before)
            elif text == ")" and callers:
                callers.pop()
            before = text
        line += text.count("\n")
    if joined:
        yield joined


def prose_in(path):
    for line, literal in literals(path.read_text(encoding="utf-8")):
        if any(PROSE.search(text) for text in shown_to_people(literal)):
            yield line, literal


def source_files(root):
    for folder in ("include", "src"):
        for path in sorted((root / folder).rglob("*")):
            if path.suffix in (".h", ".cc"):
                yield path


def main():
    root = pathlib.Path(sys.argv[1])
    exempt = []
    if len(sys.argv) > 2:
        lines = pathlib.Path(sys.argv[2]).read_text(encoding="utf-8").splitlines()
        exempt = [line for line in lines if line and not line.startswith("#")]
    left_out = (*SPEAKING, *exempt)
    read = 0
    found = 0
    for path in source_files(root):
        name = path.relative_to(root).as_posix()
        if name.startswith(left_out):
            continue
        read += 1
        for line, literal in prose_in(path):
            found += 1
            print(f"{name}:{line}: {literal!r}")
    if read == 0:
        print(f"No source file below {root}: nothing was checked.")
        return 1
    print(f"{found} literals in {read} files look like prose; {len(exempt)} places aren't read yet.")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
