#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Prints the places, links, outline, labels and figures of a PDF, lengths in mm from the top left; a name that leads
nowhere is marked, and so is a page or link that the tree of parents puts under another element than its own. Reads with qpdf's JSON only, so that nothing of the program under test takes part."""
import json
import subprocess
import sys

MM = 25.4 / 72


def read(path):
    output = subprocess.run(['qpdf', '--json=2', path], capture_output=True, check=True, text=True).stdout
    return json.loads(output)


document = read(sys.argv[1])
objects = document['qpdf'][1]


def follow(value):
    while isinstance(value, str) and f'obj:{value}' in objects:
        value = objects[f'obj:{value}'].get('value', objects[f'obj:{value}'].get('stream'))
    return value


def words(value):
    value = follow(value)
    if value.startswith('u:'):
        return value[2:]
    return bytes.fromhex(value[2:]).decode('latin-1') if value.startswith('b:') else value


def quoted(text):
    return '"' + text.replace('\\', '\\\\') + '"'


def tree(node, leaf):
    node = follow(node) or {}
    for child in node.get('/Kids', []):
        yield from tree(child, leaf)
    pairs = node.get(leaf, [])
    yield from zip(pairs[0::2], pairs[1::2])


catalog = follow(objects['trailer']['value']['/Root'])
pages = [page['object'] for page in document['pages']]
height = [follow(page)['/MediaBox'][3] for page in pages]
places = {}
for name, target in tree(follow(catalog['/Names'])['/Dests'], '/Names'):
    target = follow(target)
    target = target['/D'] if isinstance(target, dict) else target
    places[words(name)] = (pages.index(target[0]), target[2], target[3])
for name, (page, x, y) in sorted(places.items()):
    print(f'place {quoted(name)} page {page + 1} at {x * MM:.2f} {round((height[page] - y) * MM, 2) + 0.0:.2f}')


def target_of(item):
    if isinstance(follow(item.get('/Dest')), list):
        return f'page {pages.index(follow(item["/Dest"])[0]) + 1}'
    name = words(item['/Dest'] if '/Dest' in item else follow(item['/A'])['/D'])
    return quoted(name) + ('' if name in places else ' WHICH IS NOT THERE')


for number, page in enumerate(pages):
    for note in follow(follow(page).get('/Annots', [])) or []:
        note = follow(note)
        x0, y0, x1, y1 = note['/Rect']
        print(f'link page {number + 1} at {x0 * MM:.2f} {(height[number] - y1) * MM:.2f} {(x1 - x0) * MM:.2f} x '
              f'{(y1 - y0) * MM:.2f} to {target_of(note)} saying {quoted(words(note["/Contents"]))}')


def print_outline(item, indent):
    while item:
        item = follow(item)
        print(f'outline {indent}{quoted(words(item["/Title"]))} to {target_of(item)}')
        print_outline(item.get('/First'), indent + '  ')
        item = item.get('/Next')


print_outline(follow(catalog['/Outlines']).get('/First'), '')
for page, label in tree(catalog['/PageLabels'], '/Nums'):
    print(f'label {page + 1} {quoted(words(follow(label)["/P"]))}')
print(f'language {quoted(words(catalog["/Lang"]))}')
if follow(catalog['/ViewerPreferences'])['/DisplayDocTitle']:
    print('shows its title')


def is_own(element, owner, page):
    """Whether an element stands for the link `owner`, or has content on `page`."""
    kids = follow(element).get('/K')
    kids = kids if isinstance(kids, list) else [kids]
    if owner is not None:
        return any(isinstance(follow(kid), dict) and follow(kid).get('/Obj') == owner for kid in kids)
    return follow(element).get('/Pg') == page or any(isinstance(kid, dict) and kid.get('/Pg') == page for kid in kids)


def check_parents():
    parents = dict(tree(follow(catalog['/StructTreeRoot']).get('/ParentTree'), '/Nums'))
    for number, page in enumerate(pages):
        elements = follow(parents.get(follow(page).get('/StructParents')))
        has_content = '/StructParents' in follow(page)
        if has_content and not (elements and all(is_own(element, None, page) for element in elements if element)):
            print(f'page {number + 1} IS NOT ITS OWN PARENT')
        for note in follow(follow(page).get('/Annots', [])) or []:
            element = parents.get(follow(note).get('/StructParent'))
            if element is None or not is_own(element, note, None):
                print(f'a link on page {number + 1} IS NOT ITS OWN PARENT')


def print_figures(element):
    element = follow(element)
    if isinstance(element, list):
        for child in element:
            print_figures(child)
    elif isinstance(element, dict):
        if element.get('/S') == '/Figure':
            print(f'figure {quoted(words(element["/Alt"]))}')
        print_figures(element.get('/K'))


print_figures(follow(catalog['/StructTreeRoot']).get('/K'))
check_parents()
