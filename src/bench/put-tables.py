#!/usr/bin/env python3
"""Puts new tables into a page: src/bench/put-tables.py FOLDER PAGE RESULT

What stands between <!-- table NAME --> and <!-- end --> is replaced by FOLDER/NAME.md, where there is one.
"""
import pathlib
import re
import sys

folder, page, result = map(pathlib.Path, sys.argv[1:])
text = page.read_text()
lost = []
for table in sorted(folder.glob("*.md")):
    marked = re.compile(rf"(<!-- table {table.stem} -->\n).*?(<!-- end -->\n)", re.DOTALL)
    if table == result:
        continue
    if not marked.search(text):
        lost.append(table.stem)
    text = marked.sub(lambda place: place[1] + table.read_text().strip() + "\n" + place[2], text)
result.write_text(text)
if lost:
    sys.exit(f"{page} has no place for {', '.join(lost)}; the other tables are in {result}")
