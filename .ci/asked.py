"""What every script in Python answers before it does anything: --help, --version, and words that it cannot use."""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent


def answer(help_text, least, most):
    """Ends the script where its words ask for help or the version, are an option, or are too few or too many."""
    words = sys.argv[1:]
    script = pathlib.Path(sys.argv[0]).resolve().relative_to(ROOT).as_posix()
    if "--help" in words or "-h" in words:
        print(help_text.strip() + "\n--help or -h prints this, --version the version.")
        sys.exit(0)
    if words == ["--version"]:
        print(script, re.search(r"(?m)^  <version>(.*)</version>$", (ROOT / "pom.xml").read_text())[1])
        sys.exit(0)
    for word in words:
        if word.startswith("-"):
            refuse(script, f"{word} is no option")
    if not least <= len(words) <= most:
        refuse(script, f"too {'few' if len(words) < least else 'many'} words, {len(words)}")


def refuse(script, complaint):
    print(f"{script}: {complaint}; --help tells how it is called", file=sys.stderr)
    sys.exit(2)
