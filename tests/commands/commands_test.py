"""Runs the program as a person would and looks at exit status, both outputs and files.

Usage: commands_test.py PROGRAM SOURCE_DIR MANUAL_DIR CASE, or commands_test.py --list. MANUAL_DIR
holds what the build wrote from the table of commands: man pages, completion, commands.tsv.
Exit status 77: skipped, with the reason printed (a sample scan, the JSON schema validator or groff is
absent). Where the environment says CI, an absent validator or groff is a failure.
"""

import json
import os
import pathlib
import pty
import re
import shlex
import shutil
import struct
import subprocess
import sys
import tempfile
import zlib

SKIPPED = 77
PROGRAM = None
SOURCE = None
MANUAL = None
CASES = {}


def case(function):
    CASES[function.__name__.replace("_", "-")] = function
    return function


class Skip(Exception):
    pass


def run(folder, *arguments, environment=None, stdout=subprocess.PIPE, user=None):
    return subprocess.run([PROGRAM, *arguments], cwd=folder, stdout=stdout, stderr=subprocess.PIPE,
                          text=True, timeout=100, env={**os.environ, **(environment or {})},
                          user=user)


def check(condition, *shown):
    if not condition:
        raise AssertionError("\n".join(str(item) for item in shown))


def check_run(result, status, stderr_lines=0):
    check(result.returncode == status, f"status {result.returncode}, not {status}", result.stdout,
          result.stderr)
    lines = result.stderr.splitlines()
    check(len(lines) == stderr_lines, f"{len(lines)} lines on stderr, not {stderr_lines}",
          result.stderr)
    check(all(line.startswith("fogline: ") for line in lines), result.stderr)


def write_white_png(path, width=400, height=300):
    """A picture without any film."""
    def chunk(kind, data):
        return (struct.pack(">I", len(data)) + kind + data
                + struct.pack(">I", zlib.crc32(kind + data)))
    rows = (b"\0" + b"\xf0" * width) * height
    path.write_bytes(b"\x89PNG\r\n\x1a\n"
                     + chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0))
                     + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b""))


def sample_scan():
    samples = sorted((SOURCE / "sample_scans").glob("*.tif"))
    if not samples:
        raise Skip("no sample scan")
    return samples[0]


def check_schema(report):
    try:
        import jsonschema
    except ImportError:
        check(not os.environ.get("CI"), "python3-jsonschema is absent")
        raise Skip("python3-jsonschema is absent")
    schema = json.loads((SOURCE / "calibration" / "report.schema.json").read_text())
    jsonschema.validate(report, schema)


@case
def help_says_what_to_do(folder):
    for arguments in [["--help"], ["-h"], ["help"]]:
        result = run(folder, *arguments)
        check_run(result, 0)
        check("fogline measure strip.tif" in result.stdout, result.stdout)
        check("fogline help TOPIC" in result.stdout, result.stdout)


class Command:
    def __init__(self, name):
        self.name = name
        self.words = name.split()
        self.options = []
        self.examples = []


class Option:
    def __init__(self, name, takes, argument, words):
        self.name, self.takes, self.argument = name, takes, argument
        self.words = words.split()


def commands():
    """The table of commands, from the file that the build wrote of it."""
    table = {}
    for line in (MANUAL / "commands.tsv").read_text().splitlines():
        kind, name, *rest = line.split("\t")
        if kind == "command":
            table[name] = Command(name)
        elif kind == "option":
            table[name].options.append(Option(*rest))
        elif kind == "example":
            table[name].examples.append(rest[0])
    check("measure" in table and "calibrate" in table, table)
    return table.values()


def topics():
    lines = (MANUAL / "commands.tsv").read_text().splitlines()
    return [line.split("\t")[1] for line in lines if line.startswith("topic\t")]


@case
def every_command_has_help(folder):
    for command in commands():
        texts = []
        for arguments in [["help", *command.words], [*command.words, "--help"]]:
            result = run(folder, *arguments)
            check_run(result, 0)
            texts.append(result.stdout)
        check(texts[0] == texts[1], "two ways, two texts")
        check(max(map(len, texts[0].splitlines())) <= 80, "a line is too long", texts[0])
        for option in command.options:
            row = re.search(rf"^  {option.name}( |$).*", texts[0], re.MULTILINE)
            check(row, f"{option.name} is not in", texts[0])
            for word in [option.argument, *option.words]:
                check(word in row.group(), f"{word} is not in", row.group())
        for example in command.examples:
            unbroken = re.sub(r" \\\n +", " ", texts[0])
            check(example in unbroken, f"{example} is not in", texts[0])


@case
def every_topic_has_help(folder):
    overview = run(folder, "--help").stdout
    for topic in topics():
        check_run(run(folder, "help", topic), 0)
    for name in [command.name for command in commands()] + topics():
        check(f"\n  {name} " in overview, f"{name} is not in", overview)


def check_wrong_use(folder, words, *arguments):
    result = run(folder, *arguments)
    check_run(result, 2, stderr_lines=1)
    for word in words:
        check(word in result.stderr, arguments, f"{word} is not in", result.stderr)
    check(result.stdout == "" and not list(folder.iterdir()), arguments, result.stdout)


@case
def every_command_refuses_wrong_options(folder):
    for command in commands():
        check_wrong_use(folder, ["--no-such-option"], *command.words, "--no-such-option")
        for option in command.options:
            if option.takes == "nothing":
                check_wrong_use(folder, [option.name], *command.words, f"{option.name}=x")
                continue
            check_wrong_use(folder, [option.name], *command.words, option.name)
            if not option.argument:
                check_wrong_use(folder, [option.name, *option.words], *command.words,
                                option.name, "no-such-word")


@case
def every_example_is_right_use(folder):
    for command in commands():
        check(command.examples, f"{command.name} has no example")
        for example in command.examples:
            program, *arguments = shlex.split(example)
            check(program == "fogline", example)
            result = run(folder, *arguments)
            check(result.returncode in [0, 1], example, result.stderr)


@case
def every_command_has_a_man_page(folder):
    for command in commands():
        page = (MANUAL / "man1" / f"fogline-{'-'.join(command.words)}.1").read_text()
        check(page.isascii(), "a sign that isn't ASCII")
        text = re.sub(r"\\f[BIR]", "", page).replace("\\-", "-")
        for option in command.options:
            row = re.search(rf"^[.]TP\n({option.name}( .*)?)$", text, re.MULTILINE)
            check(row, f"{option.name} is not in", text)
            for word in [option.argument, *option.words]:
                check(word in row.group(1), f"{word} is not in", row.group(1))
        overview = (MANUAL / "man1" / "fogline.1").read_text().replace("\\-", "-")
        check(f"fogline-{'-'.join(command.words)}" in overview, overview)
    pages = sorted((MANUAL / "man1").iterdir())
    check(len(pages) == len(commands()) + 1, pages)


@case
def man_pages_are_set_without_warnings(folder):
    if not shutil.which("groff"):
        check(not os.environ.get("CI"), "groff is absent")
        raise Skip("groff is absent")
    for page in sorted((MANUAL / "man1").iterdir()):
        result = subprocess.run(["groff", "-man", "-Tutf8", "-P-cbou", "-ww", str(page)], capture_output=True,
                                text=True, timeout=60)
        check(result.returncode == 0 and result.stderr == "", page, result.stderr)
        for heading in ["NAME", "SYNOPSIS", "DESCRIPTION"]:
            check(heading in result.stdout, f"no {heading} in {page}")


def completed(folder, *words):
    """What bash offers for the last word."""
    script = """source "$1"; shift
      COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _fogline
      if ((${#COMPREPLY[@]})); then printf '%s\\n' "${COMPREPLY[@]}"; fi"""
    result = subprocess.run(["bash", "--norc", "-c", script, "bash", str(MANUAL / "fogline.bash"),
                             "fogline", *words], cwd=folder, capture_output=True, text=True,
                            timeout=60)
    check(result.returncode == 0 and result.stderr == "", words, result.stderr)
    return sorted(result.stdout.splitlines())


@case
def completion_knows_every_command_option_and_word(folder):
    check(completed(folder, "") == sorted({command.words[0] for command in commands()}
                                          | {"--help", "--version"}), completed(folder, ""))
    names = {command.words[0] for command in commands()} | set(topics())
    check(completed(folder, "help", "") == sorted(names), completed(folder, "help", ""))
    for command in commands():
        options = completed(folder, *command.words, "-")
        check(options == sorted(option.name for option in command.options), options)
        for option in command.options:
            if option.takes == "nothing":
                continue
            for before in [[option.name, ""], [option.name, "="]]:
                words = completed(folder, *command.words, *before)
                check(words == sorted(option.words), command.name, before, words)
            for word in option.words:
                for before in [[option.name], [option.name, "="]]:
                    words = completed(folder, *command.words, *before, word[:-1])
                    check(word in words, command.name, before, words)


@case
def completion_offers_the_files_that_fit(folder):
    (folder / "rolls").mkdir()
    for name in ["strip 1.TIF", "strip.jpeg", "strip.report.html", "card.toml", "notes"]:
        (folder / name).write_text("")
    scans = ["rolls", "strip 1.TIF", "strip.jpeg"]
    check(completed(folder, "measure", "") == scans, completed(folder, "measure", ""))
    check(completed(folder, "measure", "a.tif", "--budget", "s") == scans[1:])
    check(completed(folder, "measure", "--card", "") == ["card.toml", "rolls"])
    check(completed(folder, "measure", "--card", "=", "c") == ["card.toml"])
    # Where no file has the usual ending, any may be meant.
    check(completed(folder, "measure", "--card", "n") == ["notes"])
    check(completed(folder, "calibrate", "--html", "") == ["none", "rolls", "strip.report.html"])


@case
def help_scanning_covers_flatbed_and_camera(folder):
    result = run(folder, "help", "scanning")
    check_run(result, 0)
    for words in ["Flatbed", "Camera", "80 to 95 %", "bare panel"]:
        check(words in result.stdout, f"{words} is not in", result.stdout)
    check(max(map(len, result.stdout.splitlines())) <= 80, "a line is too long")


CARD_KEYS = """name film film_type exposure_index aim_contrast_index aim_like print_with batch expiry
exposed developed camera tank base_tint developer dilution volume_ml time temperature_c
end_temperature_c agitation presoak opened kind rolls_before clearing_time fresh_clearing_time method
fills stops by doubt_stops reference h_at_zero_lux_s""".split()


def example_card(folder):
    """The example of `fogline help card` as a file."""
    text = run(folder, "help", "card").stdout
    example = text.split("most rolls have:")[1].split("Keys for few rolls")[0]
    path = folder / "card.toml"
    path.write_text(example)
    return path


@case
def help_card_names_every_key(folder):
    result = run(folder, "help", "card")
    check_run(result, 0)
    for key in CARD_KEYS:
        check(f" {key} = " in result.stdout, f"{key} is not in", result.stdout)
    for table in ["development", "stop", "fix", "wash", "target"]:
        check(f"[{table}]" in result.stdout, f"{table} is not in", result.stdout)
    check("gloves" in result.stdout and "safety sheet" in result.stdout, "baths without cautions")
    check(max(map(len, result.stdout.splitlines())) <= 80, "a line is too long")


@case
def example_card_is_understood(folder):
    card = example_card(folder)
    write_white_png(folder / "white.png")
    result = run(folder, "measure", "white.png", "--card", card.name, "--json", "roll.json")
    check_run(result, 3)
    report = json.loads((folder / "roll.json").read_text())
    check_schema(report)
    check(report["roll"]["name"] == "Roll 12", report["roll"])
    check(report["roll"]["development"]["time_s"] == 570, report["roll"])
    check(report["aim"]["contrast_index"] == 0.58, report["aim"])
    check("Roll 12" in (folder / "white.report.html").read_text(), "the page doesn't name the roll")


@case
def wrong_card_is_told_before_any_scan_is_read(folder):
    (folder / "card.toml").write_text('name = "Roll 12"\nflim = "grey box"\n')
    for card, words in [("card.toml", "flim"), ("gone.toml", "gone.toml")]:
        result = run(folder, "measure", "gone.tif", "--card", card, "--json", "roll.json")
        check_run(result, 1, stderr_lines=1)
        check(words in result.stderr and "gone.tif" not in result.stderr, result.stderr)
        check(result.stdout == "", result.stdout)
        check([path.name for path in folder.iterdir()] == ["card.toml"], list(folder.iterdir()))


@case
def aim_option_goes_before_the_card(folder):
    card = example_card(folder)
    write_white_png(folder / "white.png")
    run(folder, "measure", "white.png", "--card", card.name, "--aim-contrast-index", "0.5",
        "--json", "roll.json", "--html", "none")
    aim = json.loads((folder / "roll.json").read_text())["aim"]
    check(aim["contrast_index"] == 0.5, aim)


@case
def version_is_the_projects(folder):
    result = run(folder, "--version")
    check_run(result, 0)
    version = re.search(r"VERSION (\S+)", (SOURCE / "CMakeLists.txt").read_text().split("project(")[1])
    check(result.stdout == f"fogline {version.group(1)}\n", result.stdout)


WRONG_USES = [
    ([], "say what to do"),
    (["measur"], "is no command"),
    (["--measure"], "is no command"),
    (["help", "cooking"], "no help on"),
    (["help", "measure", "scanning"], "one topic"),
    (["measure"], "at least one scan"),
    (["measure", "-"], "standard input"),
    (["measure", ""], "standard input"),
    (["measure", "a.tif", "--colour"], "--colour"),
    (["measure", "a.tif", "--form", "135"], "--form"),
    (["measure", "a.tif", "--json"], "--json"),
    (["measure", "a.tif", "--json", "x", "--json", "y"], "more than once"),
    (["measure", "a.tif", "--json", "a.tif"], "overwrite the scan"),
    (["measure", "a.tif", "--html", "./a.tif"], "overwrite the scan"),
    (["measure", "a.tif", "--json", "-", "--html", "-"], "one place"),
    (["measure", "a.tif", "--json", "x", "--html", "./x"], "one place"),
    (["measure", "a.tif", "b.tif", "./a.tif"], "given twice"),
    (["measure", "a.tif", "--units", "inches"], "density or stops"),
    (["measure", "a.tif", "--transfer", "cubic"], "power"),
    (["measure", "a.tif", "--transfer", "2,2"], "power"),
    (["measure", "a.tif", "--transfer", "nan"], "power"),
    (["measure", "a.tif", "--transfer", "9"], "power"),
    (["measure", "a.tif", "--format", "136"], "135, 120 or sheet"),
    (["measure", "a.tif", "--frame-mm", "0"], "8 to 250"),
    (["measure", "a.tif", "--frame-mm", "36mm"], "8 to 250"),
    (["measure", "a.tif", "--clear", "sky"], "holes, gap or none"),
    (["measure", "a.tif", "--aim-contrast-index", "0.1"], "0.2 to 1.5"),
    (["measure", "a.tif", "--aim-contrast-index", "1.6"], "0.2 to 1.5"),
    (["measure", "a.tif", "--aim-contrast-index", "0,58"], "0.2 to 1.5"),
    (["measure", "a.tif", "--card", "-"], "standard input"),
    (["measure", "a.tif", "--card", "c.toml", "--json", "./c.toml"], "overwrite c.toml"),
    (["measure", "a.tif", "--blank", "b.tif", "--html", "b.tif"], "overwrite b.tif"),
    (["measure", "a.tif", "--scanner", "s.json", "--json", "s.json"], "overwrite s.json"),
    (["measure", "a.tif", "--scanner", "s.json", "--wedge", "w.csv"], "two calibrations"),
    (["measure", "a.tif", "--area", "1,2,3=0"], "--area"),
    (["measure", "a.tif", "--area", "1,2,3,0=0"], "--area"),
    (["measure", "a.tif", "--area", "1,2,3,4"], "--area"),
    (["measure", "a.tif", "b.tif", "--area", "1,2,3,4=0"], "one scan"),
    (["measure", "a.tif", "--csv", "./a.tif"], "overwrite the scan a.tif"),
    (["calibrate"], "name a scan"),
    (["calibrate", "a.tif", "--wedge", "w.csv"], "--output"),
    (["calibrate", "a.tif", "--output", "s.json"], "--wedge"),
    (["calibrate", "a.tif", "--wedge", "w.csv", "--steps", "21x0.15", "--output", "s.json"],
     "in one way"),
    (["calibrate", "a.tif", "--steps", "21", "--output", "s.json"], "21x0.15"),
    (["calibrate", "a.tif", "--steps", "3x0.15", "--output", "s.json"], "21x0.15"),
    (["calibrate", "a.tif", "--wedge", "w.csv", "--output", "./a.tif"], "overwrite a.tif"),
    (["calibrate", "a.tif", "b.tif", "--wedge", "w.csv", "--output", "s.json"], "one scan"),
    (["calibrate", "a.tif", "--layers", "0,1,x", "--output", "s.json"], "--layers"),
    (["calibrate", "a.tif", "--bracket", "1/0", "--output", "s.json"], "--bracket"),
    (["calibrate", "a.tif", "--wedge", "w.csv", "--output", "s.json", "--device", "fax"],
     "flatbed, film-scanner or camera"),
    (["calibrate", "a.tif", "--wedge", "w.csv", "--output", "s.json", "--date", "today"],
     "--date"),
]


@case
def wrong_use_is_one_sentence_and_writes_nothing(folder):
    for arguments, words in WRONG_USES:
        result = run(folder, *arguments)
        check_run(result, 2, stderr_lines=1)
        check(words in result.stderr, f"{words} is not in", result.stderr)
        check(result.stdout == "", arguments, result.stdout)
        check(not list(folder.iterdir()), arguments, list(folder.iterdir()))


@case
def absent_file_is_one_sentence(folder):
    result = run(folder, "measure", "gone.tif", "--json", "roll.json")
    check_run(result, 1, stderr_lines=1)
    check("gone.tif" in result.stderr, result.stderr)
    report = json.loads((folder / "roll.json").read_text())
    check(report["unread"][0]["file"] == "gone.tif", report["unread"])
    check_schema(report)
    check((folder / "gone.report.html").exists(), "no page")


@case
def file_that_is_no_picture_is_one_sentence(folder):
    (folder / "notes.txt").write_text("Not a picture at all.\n")
    (folder / "empty.tif").write_bytes(b"")
    for name in ["notes.txt", "empty.tif"]:
        result = run(folder, "measure", name)
        check_run(result, 1, stderr_lines=1)
        check(name in result.stderr, result.stderr)


@case
def folder_instead_of_a_scan_is_one_sentence(folder):
    (folder / "rolls").mkdir()
    result = run(folder, "measure", "rolls")
    check_run(result, 1, stderr_lines=1)
    check("is a folder" in result.stderr, result.stderr)


@case
def unfit_picture_is_status_3(folder):
    write_white_png(folder / "white.png")
    result = run(folder, "measure", "white.png", "--json", "roll.json")
    check_run(result, 3)
    report = json.loads((folder / "roll.json").read_text())
    check(report["findings"][0]["code"] == "unfit-scan", report["findings"])
    check("How to scan better" in result.stdout, result.stdout)
    check((folder / "white.report.html").exists(), "no page")
    check_schema(report)


@case
def unread_file_weighs_more_than_unfit_scan(folder):
    write_white_png(folder / "white.png")
    check_run(run(folder, "measure", "white.png", "gone.png"), 1, stderr_lines=1)


@case
def own_page_is_replaced(folder):
    write_white_png(folder / "white.png")
    page = folder / "white.report.html"
    check_run(run(folder, "measure", "white.png"), 3)
    first = page.read_text()
    page.write_text(first + "<!-- old -->")
    check_run(run(folder, "measure", "white.png"), 3)
    check(page.read_text() == first, "the old page stands")


@case
def foreign_page_is_left_alone(folder):
    write_white_png(folder / "white.png")
    page = folder / "white.report.html"
    page.write_text("<p>mine</p>")
    for extra in [[], ["--html", "white.report.html"]]:
        result = run(folder, "measure", "white.png", *extra)
        check_run(result, 1, stderr_lines=1)
        check("wasn't written by fogline" in result.stderr, result.stderr)
        check(page.read_text() == "<p>mine</p>", "overwritten")


@case
def page_can_be_left_out_or_sent_on(folder):
    write_white_png(folder / "white.png")
    check_run(run(folder, "measure", "white.png", "--html", "none"), 3)
    check([path.name for path in folder.iterdir()] == ["white.png"], list(folder.iterdir()))
    result = run(folder, "measure", "white.png", "--html", "-")
    check_run(result, 3)
    check(result.stdout.startswith("<!DOCTYPE html>"), result.stdout[:200])
    check(result.stdout.rstrip().endswith("</html>"), "something follows the page")


@case
def json_on_standard_output_stands_alone(folder):
    write_white_png(folder / "white.png")
    result = run(folder, "measure", "white.png", "--json", "-", "--html", "none")
    check_run(result, 3)
    check(json.loads(result.stdout)["format"] == "fogline report", result.stdout)


@case
def unwritable_place_is_status_1(folder):
    write_white_png(folder / "white.png")
    result = run(folder, "measure", "white.png", "--json", "no/such/folder/roll.json")
    check_run(result, 1, stderr_lines=1)
    check((folder / "white.report.html").exists(), "the page went missing with the JSON")
    with open("/dev/full", "w") as full:
        result = run(folder, "measure", "white.png", stdout=full)
    check(result.returncode == 1, result.returncode)
    check("standard output" in result.stderr, result.stderr)


@case
def unwritable_folder_puts_the_page_here(folder):
    scans = folder / "scans"
    scans.mkdir()
    write_white_png(scans / "white.png")
    scans.chmod(0o555)
    user = None
    if os.geteuid() == 0:  # the superuser may write everywhere: be nobody
        user = 65534
        folder.chmod(0o777)
    try:
        result = run(folder, "measure", "scans/white.png", user=user)
    except PermissionError:
        raise Skip("the program lies where another user can't run it")
    finally:
        scans.chmod(0o755)
    check_run(result, 3, stderr_lines=1)
    check("the page is white.report.html" in result.stderr, result.stderr)
    check((folder / "white.report.html").exists(), "no page here")


@case
def numbers_do_not_depend_on_the_locale(folder):
    write_white_png(folder / "white.png")
    texts = [run(folder, "measure", "white.png", "--json", "-", "--html", "none",
                 environment={"LC_ALL": locale}).stdout for locale in ["C", "de_DE.UTF-8"]]
    check(texts[0] == texts[1], *texts)


@case
def pipe_has_no_escape_codes_and_terminal_has(folder):
    write_white_png(folder / "white.png")
    check("\x1b" not in run(folder, "measure", "white.png").stdout, "escape codes in a pipe")
    for no_color, wanted in [("", True), ("1", False)]:
        ours, theirs = pty.openpty()
        run(folder, "measure", "white.png", stdout=theirs,
            environment={"TERM": "xterm", "NO_COLOR": no_color})
        os.close(theirs)
        shown = b""
        try:
            while data := os.read(ours, 65536):
                shown += data
        except OSError:
            pass  # the other end is closed
        os.close(ours)
        check((b"\x1b[1m" in shown) == wanted, no_color, shown)


@case
def sample_scan_is_measured(folder):
    scan = sample_scan()
    result = run(folder, "measure", str(scan), "--json", "roll.json", "--html", "page.html")
    check_run(result, 0)
    check(result.stdout.startswith("In one breath\n"), result.stdout)
    check("\x1b" not in result.stdout, "escape codes in a pipe")
    report = json.loads((folder / "roll.json").read_text())
    check(report["scans"][0]["frames"], "no frame")
    check_schema(report)
    page = (folder / "page.html").read_text()
    check('content="fogline ' in page, "no marker")
    check("data:image/jpeg;base64,/9j/" in page, "no picture")


SCREEN_LINES = 40


def fits_on_one_screen(name):
    def fits(folder):
        scan = SOURCE / "sample_scans" / f"{name}.tif"
        if not scan.exists():
            raise Skip(f"{scan} is absent")
        card = scan.with_suffix(".toml")
        options = ["--card", str(card)] if card.exists() else []
        result = run(folder, "measure", str(scan), "--html", "page.html", *options)
        check_run(result, 0)
        lines = result.stdout.splitlines()
        check(len(lines) <= SCREEN_LINES, f"{len(lines)} lines", result.stdout)
        check(max(map(len, lines)) <= 80, "a line is too long", result.stdout)
        for words in ["Next roll", "The roll in numbers", "Gloves", "page.html", "--full"]:
            check(words in result.stdout, f"{words} is not in", result.stdout)
    return fits


for sample in ["bracket-135", "good-120", "good-135", "marks-135", "thin-dye-135"]:
    CASES[f"{sample}-fits-on-one-screen"] = fits_on_one_screen(sample)


@case
def an_unfit_scan_fits_on_one_screen(folder):
    write_white_png(folder / "white.png")
    result = run(folder, "measure", "white.png")
    check_run(result, 3)
    check(len(result.stdout.splitlines()) <= SCREEN_LINES, result.stdout)
    check("white.report.html" in result.stdout, result.stdout)
    whole = run(folder, "measure", "white.png", "--full", "--html", "none")
    check_run(whole, 3)
    check("How it was measured" in whole.stdout, whole.stdout)


@case
def sample_scan_in_stops_says_the_same(folder):
    scan = sample_scan()
    result = run(folder, "measure", str(scan), "--units", "stops", "--html", "none")
    check_run(result, 0)
    text = " ".join(result.stdout.split())
    check(re.search(r"base plus fog [0-9.]+ ± [0-9.]+ stops", text), result.stdout)


def sample_wedge():
    wedge = SOURCE / "sample_scans" / "wedge.tif"
    if not wedge.exists():
        raise Skip("no sample wedge")
    return str(wedge), str(wedge.with_suffix(".csv"))


def calibrate_sample(folder, *more):
    wedge, reference = sample_wedge()
    return run(folder, "calibrate", wedge, "--wedge", reference, "--output", "scanner.json",
               "--date", "2026-11-26", *more)


@case
def sample_wedge_calibrates(folder):
    result = calibrate_sample(folder, "--device", "flatbed")
    check_run(result, 0)
    check(result.stdout.startswith("In one breath\n"), result.stdout)
    scanner = json.loads((folder / "scanner.json").read_text())
    check(scanner["date"] == "2026-11-26", scanner["date"])
    check(scanner["version"] == 2 and scanner["checksum"], scanner["version"])
    check(scanner["settings"]["device"] == "flatbed", scanner["settings"])
    check(scanner["source_files"][0].endswith("wedge.tif"), scanner["source_files"])
    check(scanner["density_limit"] > 2.0, scanner["density_limit"])
    check(len(scanner["steps"]) >= 19, len(scanner["steps"]))
    page = (folder / "scanner.report.html").read_text()
    check("Step by step" in page and "<script" not in page, "the page isn't whole")


@case
def calibration_on_standard_output_stands_alone(folder):
    wedge, reference = sample_wedge()
    result = run(folder, "calibrate", wedge, "--wedge", reference, "--output", "-", "--html",
                 "none")
    check_run(result, 0)
    check(json.loads(result.stdout)["method"] == "wedge", result.stdout[:200])
    check(not list(folder.iterdir()), list(folder.iterdir()))


@case
def calibrated_sample_is_measured_with_its_budget(folder):
    check_run(calibrate_sample(folder, "--html", "none"), 0)
    scan = str(SOURCE / "sample_scans" / "good-135.tif")
    result = run(folder, "measure", scan, "--scanner", "scanner.json", "--budget", "--json",
                 "roll.json", "--html", "page.html")
    check_run(result, 0)
    check("Where each doubt comes from" in result.stdout, result.stdout)
    check("Where each doubt comes from" in (folder / "page.html").read_text(), "no budget in page")
    report = json.loads((folder / "roll.json").read_text())
    scan = report["scans"][0]
    check(scan["fitness"] == "measured", scan["fitness"])
    check(scan["calibration"]["method"] == "wedge", scan["calibration"])
    check(scan["calibration"]["same_settings"], scan["calibration"])
    for budget in scan["budgets"]:
        total = sum(line["u95"] ** 2 for line in budget["lines"]) ** 0.5
        check(abs(total - budget["density"]["u95"]) < 0.002, budget)
    truth = json.loads((SOURCE / "sample_scans" / "good-135.truth.json").read_text())
    base = scan["base_fog"]["visual"]
    true_base = truth["strips"][0]["base_fog"]["visual"]
    check(abs(base["value"] - true_base) <= base["u95"], base, true_base)
    check_schema(report)


@case
def sample_bracket_gives_its_curve(folder):
    check_run(calibrate_sample(folder, "--html", "none", "--device", "flatbed"), 0)
    scan = SOURCE / "sample_scans" / "bracket-135.tif"
    if not scan.exists():
        raise Skip(f"{scan} is absent")
    result = run(folder, "measure", str(scan), "--card", str(scan.with_suffix(".toml")),
                 "--scanner", "scanner.json", "--json", "roll.json", "--csv", "curve.csv",
                 "--html", "page.html", "--full")
    check_run(result, 0)
    check("The curve" in result.stdout, result.stdout)
    report = json.loads((folder / "roll.json").read_text())
    check_schema(report)
    contrast = report["contrast"]
    truth = json.loads(scan.with_suffix(".truth.json").read_text())["strips"][0]
    check(contrast["method"] == "bracket", contrast["method"])
    for name in ["contrast_index", "average_gradient"]:
        read = contrast[name]
        check(abs(read["value"] - truth[name]) <= read["u95"], name, read, truth[name])
        check(read["u95"] < 0.06, name, read)
    steps = [s for s in report["scans"][0]["steps"] if s["role"] == "bracket"]
    check(len(steps) == 6, steps)
    # The strip lies the other way round: the least exposed frame is the rightmost.
    check(steps[0]["box_px"]["x"] > steps[-1]["box_px"]["x"], steps)
    rows = (folder / "curve.csv").read_text().splitlines()
    check(rows[0] == "kind,name,log_h,net_density,u95,used", rows[0])
    check(sum(row.startswith("step,") for row in rows) == 6, rows[:10])


@case
def files_are_there_though_nobody_reads_the_text(folder):
    reading, writing = os.pipe()
    os.close(reading)
    try:
        run(folder, "measure", str(sample_scan()), "--json", "roll.json", "--html", "page.html",
            stdout=writing)
    finally:
        os.close(writing)
    check_schema(json.loads((folder / "roll.json").read_text()))
    check("</html>" in (folder / "page.html").read_text(), "the page isn't whole")


@case
def marked_areas_are_read_or_refused(folder):
    scan = SOURCE / "sample_scans" / "bracket-135.tif"
    if not scan.exists():
        raise Skip(f"{scan} is absent")
    result = run(folder, "measure", str(scan), "--html", "none", "--area", "2,2,9,9=0")
    check_run(result, 1, stderr_lines=1)
    check("doesn't lie on film" in result.stderr, result.stderr)
    result = run(folder, "measure", str(scan), "--html", "none", "--csv", "-")
    check_run(result, 0)
    check(result.stdout == "kind,name,log_h,net_density,u95,used\n", repr(result.stdout))


@case
def wrong_references_are_one_sentence(folder):
    wedge, reference = sample_wedge()
    lines = pathlib.Path(reference).read_text().splitlines()
    (folder / "fewer.csv").write_text("\n".join(lines[:9]) + "\n")
    (folder / "back.csv").write_text("\n".join(lines[:5] + [lines[4].replace("4,", "5,")]
                                               + lines[6:]) + "\n")
    (folder / "words.csv").write_text("a wedge\n")
    for name, words in [("fewer.csv", "8"), ("back.csv", "rise"), ("words.csv", "step,density"),
                        ("gone.csv", "gone.csv")]:
        result = run(folder, "calibrate", wedge, "--wedge", name, "--output", "scanner.json")
        check_run(result, 1, stderr_lines=1)
        check(words in result.stderr, name, result.stderr)
        check(not (folder / "scanner.json").exists(), "a calibration was written")


@case
def damaged_scanner_file_is_one_sentence(folder):
    check_run(calibrate_sample(folder, "--html", "none"), 0)
    text = (folder / "scanner.json").read_text()
    (folder / "changed.json").write_text(text.replace('"residual_rms": 0', '"residual_rms": 1'))
    (folder / "cut.json").write_text(text[:400])
    (folder / "later.json").write_text(text.replace('"version": 2', '"version": 99'))
    (folder / "other.json").write_text('{"name": "something else"}')
    scan = str(sample_scan())
    for name in ["changed.json", "cut.json", "later.json", "other.json", "gone.json"]:
        result = run(folder, "measure", scan, "--scanner", name, "--html", "none")
        check_run(result, 1, stderr_lines=1)
        check(name in result.stderr and result.stdout == "", name, result.stderr)


@case
def scan_without_a_wedge_calibrates_nothing(folder):
    write_white_png(folder / "white.png")
    result = run(folder, "calibrate", "white.png", "--steps", "21x0.15", "--output",
                 "scanner.json")
    check_run(result, 1, stderr_lines=1)
    check("no step wedge is in sight" in result.stderr, result.stderr)
    check(not (folder / "scanner.json").exists(), "a calibration was written")


@case
def foreign_file_is_not_replaced_by_a_calibration(folder):
    (folder / "scanner.json").write_text("my own notes")
    result = calibrate_sample(folder)
    check_run(result, 1, stderr_lines=1)
    check((folder / "scanner.json").read_text() == "my own notes", "notes lost")


def main():
    global PROGRAM, SOURCE, MANUAL
    if sys.argv[1:] == ["--list"]:
        print("\n".join(CASES))
        return 0
    PROGRAM, SOURCE = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2])
    MANUAL = pathlib.Path(sys.argv[3]).absolute()
    with tempfile.TemporaryDirectory() as folder:
        try:
            CASES[sys.argv[4]](pathlib.Path(folder))
        except Skip as reason:
            print(f"skipped: {reason}")
            return SKIPPED
        except AssertionError as failure:
            print(f"failed: {failure}")
            return 1
    return 0


sys.exit(main())
