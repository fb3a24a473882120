"""Every dependency carries a permissive licence; a new kind of licence stops the gate until it is looked at."""
import json
import re
import subprocess
import sys

PERMISSIVE = {
    "MIT", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "ISC", "Unicode-3.0", "Zlib", "0BSD", "Unlicense",
    "CC0-1.0", "BSL-1.0", "MIT-0", "Apache-2.0 WITH LLVM-exception", "CDLA-Permissive-2.0",
}


def permissive(expression: str) -> bool:
    """At least one side of every OR, all sides of every AND."""
    expression = expression.replace("/", " OR ").strip()
    depth, parts, word, start = 0, [], None, 0
    for wanted in (" AND ", " OR "):
        depth = start = 0
        parts = []
        for i, sign in enumerate(expression):
            depth += (sign == "(") - (sign == ")")
            if depth == 0 and expression.startswith(wanted, i):
                parts.append(expression[start:i])
                start = i + len(wanted)
        if parts:
            parts.append(expression[start:])
            return (all if wanted == " AND " else any)(permissive(p) for p in parts)
    if expression.startswith("(") and expression.endswith(")"):
        return permissive(expression[1:-1])
    return re.sub(r"\s+", " ", expression) in PERMISSIVE


# Weak copyleft of single files: accepted where only the tests use it, since nothing of it is handed out.
TESTS_ONLY = {"MPL-2.0"}


def shipped(edges="normal,build", platform="all") -> set[str]:
    """`name version` of everything that is built into the library or the program; with edges `normal` alone, of what is in it then."""
    tree = ["cargo", "tree", "--locked", "--all-features", "--target", platform, "--edges", edges, "--prefix", "none"]
    lines = subprocess.check_output([*tree, "--format", "{p}"], text=True).splitlines()
    inside = (line for line in lines if line.strip() and ("build" in edges or "proc-macro" not in line))
    return {" ".join(line.split()[:2]).replace(" v", " ") for line in inside}


def packages() -> list[dict]:
    """All of them, as cargo describes them."""
    return json.loads(subprocess.check_output(["cargo", "metadata", "--format-version", "1", "--locked"]))["packages"]


def called(package) -> str:
    return f"{package['name']} {package['version']}"


def main() -> None:
    built_in, every = shipped(), packages()

    def fine(package) -> bool:
        licence = package["license"] or "none"
        return permissive(licence) or (called(package) not in built_in and licence in TESTS_ONLY)

    bad = [f"{called(package)}: {package['license']}" for package in every if not fine(package)]
    print(f"{len(every)} packages looked at")
    if bad:
        sys.exit("not permissive:\n  " + "\n  ".join(bad))


if __name__ == "__main__":
    main()
