#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Times a whole print of one, two and four machines in one spec, and says how time and memory grow.

    python3 tests/bench/bench_print.py [PROGRAM]      (a release build: build/release/loomfolio)

The second and later machines are the first again under other ids, without its situations. `afresh` draws anew, `again` prints over the
PDF that is there and keeps its drawings. Each is the median of five processes; memory is the largest that any of them held. Where
bench_render is built beside the program, its bare pages are timed between the prints of one machine: seconds of different computers
compare by that ratio alone. Not a test: no figure here makes anything fail.
"""
import os, re, statistics, subprocess, sys, tempfile, time

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


def run(spec, out, *options):
    start = time.monotonic()
    pid = os.fork()
    if pid == 0:
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 2)
        os.execv(program, [program, 'print', '--draft', *options, spec, '-o', out])
    _, status, usage = os.wait4(pid, 0)
    return time.monotonic() - start, usage.ru_maxrss / 1024, os.waitstatus_to_exitcode(status)


def bare_pages():
    """Seconds that cairo and Pango alone need for 20 pages of 300 short texts and 300 paths; nothing where bench_render is not built."""
    bench = os.path.join(os.path.dirname(os.path.abspath(program)), 'tests', 'bench', 'bench_render')
    if not os.path.exists(bench):
        return None
    said = subprocess.run([bench, '20', '300', '300'], capture_output=True, text=True, check=True).stdout
    return float(re.search(r'bare cairo and Pango +([\d.]+) ms', said)[1]) / 1000


text = open(os.path.join(root, 'samples', 'street-single.toml'), encoding='utf-8').read()
first = bare = None
print('machines  afresh s   again s   MB   afresh x  again x  memory x   exit')
with tempfile.TemporaryDirectory() as folder:
    for count in (1, 2, 4):
        spec, out = os.path.join(folder, f'{count}.toml'), os.path.join(folder, f'{count}.pdf')
        open(spec, 'w', encoding='utf-8').write(machines(text, count))
        before = bare_pages() if first is None else None
        afresh, again = [run(spec, out, '--fresh') for _ in range(5)], [run(spec, out) for _ in range(5)]
        seconds = [statistics.median(r[0] for r in runs) for runs in (afresh, again)]
        if before is not None:
            bare = (before + bare_pages()) / 2
        memory = max(r[1] for r in afresh + again)
        first = first or (*seconds, memory)
        times = [seconds[0] / first[0], seconds[1] / first[1], memory / first[2]]
        print(f'{count:8} {seconds[0]:9.2f} {seconds[1]:9.2f} {memory:5.0f} {times[0]:9.1f} {times[1]:8.1f} {times[2]:9.1f} {again[-1][2]:6}')
if bare is not None:
    print(f'bare pages {bare:.3f} s: one machine afresh takes {first[0] / bare:.1f} times that, again {first[1] / bare:.1f} times')
