"""Reads every #include of engine/, app/ and platforms/ and fails on one that points upwards or to a library that is not the module's.

Usage: test_layers.py ROOT. The table is the one in DEVELOPERS.md."""
import pathlib
import re
import sys

# module -> (level, third-party headers it may include). Standard headers are always allowed.
MODULES = {
    "engine/base": (0, {"tl", "fmt"}),
    "engine/model": (1, {"fmt"}),
    "engine/physics": (2, {"fmt", "boost/math"}),
    "engine/walk": (3, {"fmt", "boost/math"}),
    "engine/checks": (3, {"fmt"}),
    "engine/select": (4, {"fmt", "boost/math"}),
    "engine/desk": (4, {"fmt"}),
    "assets": (0, set()),
    "app/data": (5, {"nlohmann", "fmt"}),
    "app/text": (5, {"nlohmann", "fmt"}),
    "app/bundle": (5, {"nlohmann", "fmt", "sodium", "boost/uuid"}),
    "app/core": (6, {"fmt"}),
    "app/photo": (6, {"fmt", "jpeglib", "jerror"}),
    "app/storage": (6, {"sqlite3", "fmt", "nlohmann"}),
    "app/ui": (7, {"imgui", "imstb_truetype", "fmt"}),
    "app/paper": (7, {"hpdf", "fmt"}),
    "app/sync": (7, {"fmt", "nlohmann", "curl", "sodium", "qrencode"}),
    "app/office": (7, {"fmt", "nlohmann", "sqlite3", "sodium", "boost/beast", "boost/asio", "libpq-fe", "qrencode"}),
    "app/shell": (8, {"fmt"}),
    "app/driver": (9, {"fmt", "imgui", "stb"}),
    "platforms": (10, {"SDL", "imgui", "GL", "CLI", "fmt", "nlohmann", "curl", "libv4l2", "stb"}),
}
SYSTEM = re.compile(r"^(sys|netinet|arpa|linux)/|^(unistd|fcntl|signal|poll|dirent|termios|dlfcn)\.h$")
SYSTEM_ALLOWED = ("app/storage", "app/office", "app/sync", "app/photo", "app/shell", "app/driver", "platforms")


def module_of(path):
    best = ""
    for name in MODULES:
        if (path == name or path.startswith(name + "/")) and len(name) > len(best):
            best = name
    return best


def third_party(header):
    for names in (library for _, libraries in MODULES.values() for library in libraries):
        if header == names or header.startswith((names + "/", names + ".", names + "_")):
            return True
    return "/" in header or header.endswith((".h", ".hpp"))


def allowed(header, module):
    _, libraries = MODULES[module]
    if any(header == name or header.startswith((name + "/", name + ".", name + "_", name)) for name in libraries):
        return True
    return bool(SYSTEM.match(header)) and module.startswith(SYSTEM_ALLOWED)


def faults(root):
    for folder in ("engine", "app", "platforms", "assets"):
        for path in sorted((root / folder).rglob("*.[ch]pp")):
            name = path.relative_to(root).as_posix()
            module = module_of(name)
            if not module:
                yield f"{name}: its folder is not in the layers table"
                continue
            level = MODULES[module][0]
            for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
                found = re.match(r'\s*#\s*include\s*([<"])([^>"]+)[>"]', line)
                if not found:
                    continue
                quote, header = found.groups()
                target = module_of(header)
                if quote == '"' and target:
                    if MODULES[target][0] > level or (MODULES[target][0] == level and level >= 6 and target != module
                                                      and (target, module) not in SIDEWAYS):
                        yield f"{name}:{number} includes {header}; level {level} may not"
                elif quote == "<" and third_party(header) and not allowed(header, module):
                    yield f"{name}:{number} includes <{header}>; {module} may not"
                elif quote == '"' and not target:
                    yield f"{name}:{number}: '{header}' is not a path from the root"


# Neighbours on one level that may be seen: (included, including).
SIDEWAYS = {("app/storage", "app/photo")}

if __name__ == "__main__":
    found = list(faults(pathlib.Path(sys.argv[1])))
    print("\n".join(found) or "all includes point down")
    sys.exit(1 if found else 0)
