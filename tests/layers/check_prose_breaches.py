"""Proves that check_prose.py sees what it should: runs it over the tree in breach/prose/, where each
line on which a forbidden literal begins ends with `// breach`, and asks for exactly those lines in
the answer; then with a folder left out.

Usage: check_prose_breaches.py
"""

import pathlib
import re
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).parent
TREE = HERE / "breach" / "prose"


def answer(*more):
    run = subprocess.run([sys.executable, HERE / "check_prose.py", TREE, *more],
                         stdout=subprocess.PIPE, text=True, check=False)
    places = re.findall(r"^((?:include|src)/[^:\n]*:\d+): ", run.stdout, flags=re.MULTILINE)
    return run.returncode, set(places)


def planted():
    places = set()
    for path in TREE.rglob("*.*"):
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if line.endswith("// breach"):
                places.add(f"{path.relative_to(TREE).as_posix()}:{number}")
    return places


def main():
    wanted = planted()
    status, found = answer()
    failures = []
    if status == 0 or not wanted or found != wanted:
        failures.append(f"Planted but not seen: {sorted(wanted - found)}\n"
                        f"Seen but not planted: {sorted(found - wanted)}\nstatus {status}")
    with tempfile.NamedTemporaryFile("w", suffix=".txt") as exempt:
        exempt.write("# a note\nsrc/roll/\n")
        exempt.flush()
        _, rest = answer(exempt.name)
    if rest != {place for place in wanted if not place.startswith("src/roll/")}:
        failures.append(f"With src/roll left out: {sorted(rest)}")
    print("\n".join(failures) or f"All {len(wanted)} planted breaches were seen, and nothing else.")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
