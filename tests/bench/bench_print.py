#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Times a whole print of one, two and four machines in one spec, and says how time and memory grow.

    python3 tests/bench/bench_print.py [PROGRAM]      (a release build: build/release/loomfolio)

The second and later machines are the first again under other ids, without its situations. Each row is the median of five
processes; memory is the largest that any of them held. Not a test: no figure here makes anything fail.
"""
import os, re, statistics, sys, tempfile, time

root = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..')
program = sys.argv[1] if len(sys.argv) > 1 else os.path.join(root, 'build', 'release', 'loomfolio')


def blocks(text):
    """The spec cut at its tables, each with its heading line."""
    return re.split(r'(?m)^(?=\[)', text)


def renamed(block, prefix):
    block = re.sub(r'(?m)^(id|zone|from|to)( *= *")', rf'\1\g<2>{prefix}', block)
    return re.sub(r'(?m)^(label *= *")', rf'\g<1>{prefix} ', block)


def machines(text, count):
    parts = blocks(text)
    copies = [b for b in parts if re.match(r'\[\[(zone|part|splice|earth|wire)\]\]', b)]
    return text + ''.join('\n' + renamed(b, f'M{n}-') for n in range(2, count + 1) for b in copies)


def run(spec, out):
    start = time.monotonic()
    pid = os.fork()
    if pid == 0:
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 2)
        os.execv(program, [program, 'print', '--draft', spec, '-o', out])
    _, status, usage = os.wait4(pid, 0)
    return time.monotonic() - start, usage.ru_maxrss / 1024, os.waitstatus_to_exitcode(status)


text = open(os.path.join(root, 'samples', 'street-single.toml'), encoding='utf-8').read()
first = None
print('machines   seconds   MB      time x   memory x   exit')
with tempfile.TemporaryDirectory() as folder:
    for count in (1, 2, 4):
        spec = os.path.join(folder, f'{count}.toml')
        open(spec, 'w', encoding='utf-8').write(machines(text, count))
        runs = [run(spec, os.path.join(folder, 'out.pdf')) for _ in range(5)]
        seconds, memory = statistics.median(r[0] for r in runs), max(r[1] for r in runs)
        first = first or (seconds, memory)
        print(f'{count:8} {seconds:9.2f} {memory:6.0f} {seconds / first[0]:9.1f} {memory / first[1]:10.1f} {runs[-1][2]:6}')
