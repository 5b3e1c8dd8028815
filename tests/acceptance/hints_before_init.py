"""A10: the hints that keep fingers from becoming a mouse, and the mouse from being captured, stand before SDL starts.

Usage: hints_before_init.py ROOT."""
import pathlib
import re
import sys

HINTS = ("SDL_HINT_TOUCH_MOUSE_EVENTS", "SDL_HINT_MOUSE_TOUCH_EVENTS", "SDL_HINT_MOUSE_AUTO_CAPTURE")


def faults(root):
    starts = 0
    for path in sorted((root / "platforms").rglob("*.cpp")):
        text = path.read_text(encoding="utf-8")
        name = path.relative_to(root).as_posix()
        for start in re.finditer(r"\bSDL_Init(SubSystem)?\(", text):
            starts += 1
            for hint in HINTS:
                if not re.search(rf'SDL_SetHint\({hint}, "0"\)', text[:start.start()]):
                    yield f"{name}: {hint} is not off before SDL starts"
    if starts == 0:
        yield "nothing starts SDL"


def main():
    found = list(faults(pathlib.Path(sys.argv[1])))
    print("\n".join(found))
    return 1 if found else 0


sys.exit(main())
