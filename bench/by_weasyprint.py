"""Prints HTML files by WeasyPrint, in one process: by_weasyprint.py FILE... Prints the seconds that it took."""

import sys
import time

from weasyprint import HTML

begun = time.perf_counter()
for path in sys.argv[1:]:
    with open(path, encoding="utf-8") as file:
        HTML(string=file.read()).write_pdf()
print(time.perf_counter() - begun)
