"""Small line charts in one SVG, which reads on light and on dark pages."""

import math
from xml.sax.saxutils import escape

WIDTH, HEIGHT = 360, 250  # of one chart
LEFT, RIGHT, TOP, BOTTOM = 48, 18, 42, 42
STYLE = """
text { font: 12px system-ui, sans-serif; fill: #1c2430 } .title { font-weight: 600; font-size: 13px } .tick { fill: #56606e }
.page { fill: #ffffff } .axis { stroke: #56606e; fill: none } .grid { stroke: #dde2e8 }
.line { fill: none; stroke-width: 2 } .a { stroke: #0b6bb8; fill: #0b6bb8 } .b { stroke: #b3501a; fill: #b3501a }
.line.a, .line.b { fill: none } .mark.a { fill: #0b6bb8 } .mark.b { fill: #b3501a }
@media (prefers-color-scheme: dark) {
  text { fill: #e6eaf0 } .tick { fill: #a3adba } .page { fill: #14181e } .axis { stroke: #a3adba } .grid { stroke: #2c343f }
  .line.a { stroke: #6db3f2 } .line.b { stroke: #f0a06a } .mark.a { fill: #6db3f2; stroke: #6db3f2 } .mark.b { fill: #f0a06a; stroke: #f0a06a }
}"""
# Of several builds the last is drawn whole, those before it in dashes.
DASHES = ["", "5 4", "2 3", "8 3 2 3"]


def step(most):
    """A round step that divides an axis into four or so."""
    rough = most / 4
    power = 10 ** math.floor(math.log10(rough))
    return next(power * factor for factor in (1, 2, 2.5, 5, 10) if power * factor >= rough)


def chart(title, across, up, lines):
    """One chart; `lines` are (class, dash, points), each a line from the first point to the last."""
    most_x = max(x for _, _, points in lines for x, _ in points)
    most_y = max(y for _, _, points in lines for _, y in points) * 1.05
    wide, high = WIDTH - LEFT - RIGHT, HEIGHT - TOP - BOTTOM

    def place(x, y):
        return LEFT + wide * x / most_x, TOP + high * (1 - y / most_y)

    parts = [f'<text class="title" x="{LEFT}" y="18">{escape(title)}</text>', f'<text class="tick" x="{LEFT - 6}" text-anchor="end" y="36">{escape(up)}</text>']
    size = step(most_y)
    for tick in range(int(most_y / size) + 1):
        x, y = place(0, tick * size)
        parts.append(f'<line class="grid" x1="{x}" x2="{WIDTH - RIGHT}" y1="{y:.1f}" y2="{y:.1f}"/>'
                     f'<text class="tick" text-anchor="end" x="{x - 6}" y="{y + 4:.1f}">{tick * size:g}</text>')
    size = max(1, step(most_x))
    for tick in range(int(most_x / size) + 1):
        x, y = place(tick * size, 0)
        parts.append(f'<text class="tick" text-anchor="middle" x="{x:.1f}" y="{y + 16:.1f}">{tick * size:g}</text>')
    parts.append(f'<path class="axis" d="M{LEFT} {TOP}V{TOP + high}H{WIDTH - RIGHT}"/>'
                 f'<text text-anchor="middle" x="{LEFT + wide / 2}" y="{HEIGHT - 8}">{escape(across)}</text>')
    for kind, dash, points in lines:
        placed = [place(x, y) for x, y in points]
        path = "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in placed)
        parts.append(f'<path class="line {kind}" stroke-dasharray="{dash}" d="{path}"/>')
        parts += [f'<circle class="mark {kind}" r="2.5" cx="{x:.1f}" cy="{y:.1f}"/>' for x, y in placed]
    return "".join(parts)


def picture(described, legend, charts):
    """Charts two by two under a legend of (class, dash, words), as a whole SVG."""
    rows = math.ceil(len(charts) / 2)
    wide, high, head = 2 * WIDTH, rows * HEIGHT + 30 * math.ceil(len(legend) / 2), 30 * math.ceil(len(legend) / 2)
    parts = [f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" role="img"><title>{escape(described)}</title>'
             f'<style>{STYLE}</style><rect class="page" width="{wide}" height="{high}"/>']
    for index, (kind, dash, words) in enumerate(legend):
        x, y = LEFT + index % 2 * WIDTH, 20 + 30 * (index // 2)
        parts.append(f'<line class="line {kind}" stroke-dasharray="{dash}" x1="{x}" x2="{x + 28}" y1="{y}" y2="{y}"/>'
                     f'<text x="{x + 36}" y="{y + 4}">{escape(words)}</text>')
    for index, one in enumerate(charts):
        parts.append(f'<g transform="translate({index % 2 * WIDTH} {head + index // 2 * HEIGHT})">{one}</g>')
    return "\n".join(parts) + "\n</svg>\n"
