"""The licence texts of all that is built into the program, for whoever hands it on: python3 .ci/notices.py [--check]

Writes data/notices.txt from the sources that cargo has fetched; with --check it fails where the file is not what it would write.
What is bundled into the script of the page carries its licences on top of that script.
"""
import pathlib
import re
import sys

import licences

OUT = pathlib.Path(__file__).resolve().parent.parent / "data" / "notices.txt"
HEAD = """Libraries that are built into schrund, and the licences under which they come. Made by .ci/notices.py.
Where a library leaves a choice, the MIT licence is taken if it is among them.
"""
# Texts of a licence, most wanted first: names of files begin so.
WANTED = ["license-mit", "license-mit.", "license", "licence", "copying", "license-apache", "unlicense", "license-zlib", "license-0bsd"]
PLATFORMS = ["x86_64-unknown-linux-gnu", "aarch64-unknown-linux-gnu", "x86_64-apple-darwin", "x86_64-pc-windows-msvc", "wasm32-wasip1"]
MIT = (OUT.parent.parent / "LICENSE").read_text().split("\n\n", 2)[2]
BSD_2 = """Redistribution and use in source and binary forms, with or without modification, are permitted provided that the following
conditions are met:

1. Redistributions of source code must retain the above copyright notice, this list of conditions and the following disclaimer.

2. Redistributions in binary form must reproduce the above copyright notice, this list of conditions and the following
disclaimer in the documentation and/or other materials provided with the distribution.

THIS SOFTWARE IS PROVIDED BY THE COPYRIGHT HOLDERS AND CONTRIBUTORS "AS IS" AND ANY EXPRESS OR IMPLIED WARRANTIES, INCLUDING, BUT
NOT LIMITED TO, THE IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS FOR A PARTICULAR PURPOSE ARE DISCLAIMED. IN NO EVENT SHALL
THE COPYRIGHT HOLDER OR CONTRIBUTORS BE LIABLE FOR ANY DIRECT, INDIRECT, INCIDENTAL, SPECIAL, EXEMPLARY, OR CONSEQUENTIAL DAMAGES
(INCLUDING, BUT NOT LIMITED TO, PROCUREMENT OF SUBSTITUTE GOODS OR SERVICES; LOSS OF USE, DATA, OR PROFITS; OR BUSINESS
INTERRUPTION) HOWEVER CAUSED AND ON ANY THEORY OF LIABILITY, WHETHER IN CONTRACT, STRICT LIABILITY, OR TORT (INCLUDING NEGLIGENCE
OR OTHERWISE) ARISING IN ANY WAY OUT OF THE USE OF THIS SOFTWARE, EVEN IF ADVISED OF THE POSSIBILITY OF SUCH DAMAGE.
"""


def by_name_alone(package, apache: str) -> str:
    """What stands for a library whose package holds no text: who wrote it, and the text that its licence has everywhere."""
    who = ", ".join(package["authors"]) or f"the authors of {package['name']}"
    licence = package["license"] or ""
    known = {"MIT": MIT, "BSD-2-Clause": BSD_2, "Apache-2.0": apache}
    name = next((name for name in known if name in re.split(r"[ /()]+", licence)), None)
    if name is None:
        sys.exit(f"{package['name']}: no text of {licence} is known")
    return f"Copyright (c) {who}\nIts package holds no text of its licence; this is that of {name}.\n\n{plain(known[name])}"


def texts(package) -> list[str]:
    """The text of its licence and its notice, as they stand in its folder."""
    folder = pathlib.Path(package["manifest_path"]).parent
    files = sorted(path for path in folder.iterdir() if path.is_file())
    by_name = {path.name.lower(): path for path in files}
    licence = next((by_name[name] for want in WANTED for name in sorted(by_name) if name.startswith(want)), None)
    notice = [path for name, path in by_name.items() if name.startswith("notice")]
    return [path.read_text(errors="replace") for path in [*([licence] if licence else []), *notice]]


def plain(text: str) -> str:
    return "\n".join(line.rstrip() for line in text.replace("\r", "").expandtabs().strip().splitlines())


def notices() -> str:
    wanted = set().union(*(licences.shipped("normal", platform) for platform in PLATFORMS))
    packages = [p for p in licences.packages() if licences.called(p) in wanted and p["name"] != "schrund"]
    by_text: dict[str, list[str]] = {}
    apaches = [pathlib.Path(p["manifest_path"]).parent / "LICENSE-APACHE" for p in packages]
    apache = next(path for path in apaches if path.exists()).read_text()
    for package in sorted(packages, key=lambda p: (p["name"], p["version"])):
        told = f"{licences.called(package)} ({package['license']})"
        found = texts(package)
        text = "\n\n".join(map(plain, found)) if found else by_name_alone(package, apache)
        by_text.setdefault(re.sub(r"\n{3,}", "\n\n", text), []).append(told)
    parts = [HEAD] + ["\n".join(names) + "\n\n" + text + "\n" for text, names in sorted(by_text.items(), key=lambda item: item[1])]
    return ("\n" + "-" * 80 + "\n\n").join(parts)


made = notices()
if "--check" in sys.argv:
    if not OUT.exists() or OUT.read_text() != made:
        sys.exit("data/notices.txt is not as the libraries are: python3 .ci/notices.py")
else:
    OUT.write_text(made)
    print(f"{OUT.name}: {len(made)} characters")
