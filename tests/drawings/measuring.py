"""What a drawing looks like in a browser, as numbers, and what is wrong with it."""

NARROWEST, NARROW, WIDE = 280, 320, 1000
# A text that comes out lower than this cannot be read on a telephone; pixels.
MIN_HEIGHT = 8.0
# The least size of type in a drawing as narrow as a page may show it; pixels.
MIN_SIZE = 8.9
# Boxes of letters that share less than this do not touch to the eye; units of the drawing.
OVERLAP_TOLERANCE = 0.3
# What text, and what lines, must stand out from their paper by (WCAG 2.2, 1.4.3 and 1.4.11).
MIN_CONTRAST = 4.5
MIN_LINE_CONTRAST = 3.0

MEASURE = """(index => {
  const root = document.querySelectorAll('svg.loopwright-drawing')[index], view = root.viewBox.baseVal;
  const numbers = colour => colour === 'none' ? null : colour.match(/[0-9.]+/g).slice(0, 3).map(Number);
  const scale = root.getBoundingClientRect().width / view.width;
  return {
    view: [view.width, view.height],
    scripts: root.querySelectorAll('script, foreignObject, image, use, a, iframe').length,
    handlers: [root, ...root.querySelectorAll('*')].flatMap(e => [...e.attributes]).filter(a => /^on|href|^src|^style$/.test(a.name)).length,
    role: root.getAttribute('role'),
    language: root.getAttribute('lang'),
    labels: root.getAttribute('aria-labelledby').split(' ').map(id => document.getElementById(id)?.textContent ?? ''),
    paper: numbers(getComputedStyle(root.querySelector('.paper')).fill),
    strokes: [...root.querySelectorAll('path, circle')].map(shape => [shape.getAttribute('class'), numbers(getComputedStyle(shape).stroke)]),
    points: [...root.querySelectorAll('.dot, .wiredot')].map(shape => [shape.getAttribute('class'), numbers(getComputedStyle(shape).fill)]),
    texts: [...root.querySelectorAll('text')].map(text => {
      const box = text.getBBox();
      return { words: text.textContent, box: [box.x, box.y, box.x + box.width, box.y + box.height],
               height: text.getBoundingClientRect().height, colour: numbers(getComputedStyle(text).fill),
               size: scale * parseFloat(getComputedStyle(text).fontSize) };
    }),
  };
})(%d)"""


def contrast(one, other):
    def luminance(colour):
        parts = [c / 255 for c in colour]
        parts = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
        return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]
    low, high = sorted([luminance(one), luminance(other)])
    return (high + 0.05) / (low + 0.05)


def judge(measured):
    """What is wrong with a drawing as it was measured."""
    width, height = measured["view"]
    texts = measured["texts"]
    if len(texts) < 8:
        yield f"it holds only {len(texts)} texts"
    if measured["scripts"] or measured["handlers"]:
        yield "it holds a script, a reference, a foreign element or an inline style"
    if measured["role"] != "img" or not all(len(label) > 20 for label in measured["labels"]):
        yield f"it has no description for those who do not see it: {measured['labels']}"
    for kind in ("strokes", "points"):
        for name, colour in measured[kind]:
            if colour is not None and contrast(colour, measured["paper"]) < MIN_LINE_CONTRAST:
                yield f"{name} does not stand out from its paper"
    for index, text in enumerate(texts):
        left, top, right, bottom = text["box"]
        if left < 0 or top < 0 or right > width or bottom > height:
            yield f"\"{text['words']}\" leaves the drawing: {text['box']}"
        if text["height"] < MIN_HEIGHT:
            yield f"\"{text['words']}\" is only {text['height']:.1f} px high"
        if text["size"] < MIN_SIZE:
            yield f"\"{text['words']}\" is of a size of only {text['size']:.1f} px"
        if contrast(text["colour"], measured["paper"]) < MIN_CONTRAST:
            yield f"\"{text['words']}\" does not stand out from its paper"
        for other in texts[index + 1:]:
            across = min(right, other["box"][2]) - max(left, other["box"][0])
            down = min(bottom, other["box"][3]) - max(top, other["box"][1])
            if across > OVERLAP_TOLERANCE and down > OVERLAP_TOLERANCE:
                yield f"\"{text['words']}\" overlaps \"{other['words']}\""


# One of the widest faces that readers have; the service cannot know which face a reader's device takes.
WIDE_FACE = """(() => {
  const texts = [...document.querySelectorAll('text')];
  texts.forEach(text => { text.style.fontFamily = '"DejaVu Sans"'; });
  const probe = document.createElementNS('http://www.w3.org/2000/svg', 'text');
  probe.textContent = 'mmmm';
  probe.style.cssText = 'font:100px "DejaVu Sans"';
  document.querySelector('svg').append(probe);
  const width = probe.getBBox().width;
  probe.remove();
  return width;
})()"""
# What the probe comes to in that face; pixels.
PROBE_WIDTH = 389.6


def measure(browser, index=0):
    """A drawing of the page that is shown, as numbers."""
    return browser.ask(MEASURE % index)


def judge_in_wide_face(browser, index=0):
    """What is wrong with a drawing where the reader's face is wide."""
    if abs(browser.ask(WIDE_FACE) - PROBE_WIDTH) > 2:
        raise SystemExit("render: the face DejaVu Sans is not installed (apt-get install fonts-dejavu-core)")
    measured = measure(browser, index)
    # The face was given to the texts as an inline style.
    measured["handlers"] -= len(measured["texts"])
    yield from (f"in a wide face: {fault}" for fault in judge(measured))
