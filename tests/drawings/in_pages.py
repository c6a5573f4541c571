"""Drawings in pages of others: under a policy that forbids inline style, with the sheet of openapi/GUIDE.md, in every theme and in the
colours that a reader forces; and two on one page."""

import pathlib
import re

from cases import DRAWINGS, IN_PAGES
from measuring import NARROW, NARROWEST, WIDE, judge, measure

GUIDE = pathlib.Path(__file__).resolve().parents[2] / "openapi/GUIDE.md"
STRICT = "default-src 'none'; style-src 'self'; script-src 'self'"
LENIENT = "default-src 'none'; style-src 'self' 'unsafe-inline'; script-src 'self'"
# It runs before the drawing is read, so that it misses nothing.
WATCH = b"""window.violations = [];
document.addEventListener('securitypolicyviolation', event => violations.push(event.effectiveDirective));"""
# Two frames later, whatever the page has reported has arrived.
VIOLATIONS = "new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(violations))))"
HEIGHT = """(() => {
  const root = document.documentElement, view = root.viewBox?.baseVal;
  return view ? innerWidth * view.height / view.width : root.getBoundingClientRect().height;
})()"""
EQUAL_IDS = """(() => {
  const ids = [...document.querySelectorAll('[id]')].map(one => one.id);
  return ids.filter((id, index) => ids.indexOf(id) !== index);
})()"""
LIGHT_PAPER, DARK_PAPER = [255, 255, 255], [20, 23, 27]


class Pages:
    """Pages with drawings in them, as a browser gets them."""

    def __init__(self, server):
        self.server = server
        sheet = re.search(r"```css\n(.*?)```", GUIDE.read_text(), re.S).group(1)
        bare = "body { margin: 0 } svg { display: block; width: 100% }"
        server.put("guide sheet", (bare + sheet).encode(), {"content-type": "text/css"})
        server.put("bare sheet", bare.encode(), {"content-type": "text/css"})
        server.put("watch", WATCH, {"content-type": "text/javascript"})

    def put(self, name, drawings, sheet, policy=STRICT):
        page = (b"<!doctype html><meta charset=utf-8><script src=/watch></script>"
                b"<link rel=stylesheet href=/" + sheet + b"-sheet><body>" + b"".join(drawings))
        return self.server.put(name, page, {"content-type": "text/html", "content-security-policy": policy})


def check_in_pages(browser, server, service, only, shots):
    """Gives what is wrong with drawings in pages, each fault with the name of the case."""
    pages = Pages(server)
    for drawing, name in IN_PAGES:
        case = f"{drawing} {name}"
        if only in case:
            request = dict(DRAWINGS[drawing]())[name]
            shown = Shown(browser, pages, service, drawing, request, case, shots)
            for fault in dict.fromkeys(shown.check()):
                yield case, fault


class Shown:
    """One request, drawn and shown in every way."""

    def __init__(self, browser, pages, service, drawing, request, case, shots):
        self.browser, self.pages, self.service = browser, pages, service
        self.drawing, self.request, self.case, self.shots = drawing, request, case, shots

    def draw(self, parameters):
        return self.service.draw(self.drawing, self.request, parameters=parameters)

    def show(self, address, width, scheme="light", media="", forced=False):
        """Shows an address, and gives its drawing as numbers."""
        self.browser.complaints.clear()
        self.browser.open(address, width, 600, scheme, media, forced)
        # A drawing without a page around it is as high as its window.
        self.browser.resize(width, round(self.browser.ask(HEIGHT)))
        if self.shots and not media and width != NARROW:
            words = "forced" if forced else scheme
            self.browser.shoot(self.shots / f"{address.rsplit('/', 1)[1]}-{width}-{words}.png")
        return measure(self.browser)

    def check(self):
        yield from self.check_figure()
        yield from self.check_full()
        yield from self.check_themes()
        yield from self.check_several()

    def check_figure(self):
        """A picture alone: nothing is reported, whether the page has a sheet or not."""
        body, _ = self.draw("content=figure")
        with_sheet = self.pages.put(f"{self.case} figure", [body], b"guide")
        papers = {}
        for width in (NARROWEST, NARROW, WIDE):
            for look, how in {"light": {}, "dark": {"scheme": "dark"}, "forced": {"forced": True}}.items():
                measured = self.show(with_sheet, width, **how)
                papers[look] = measured["paper"]
                yield from (f"figure, {width} px, {look}: {fault}" for fault in judge(measured))
                yield from self.reports("figure", [])
        if papers["light"] == papers["dark"] or LIGHT_PAPER in (papers["light"], papers["dark"]):
            yield f"the sheet of the page does not reach the figure: {papers}"
        bare = self.pages.put(f"{self.case} bare figure", [body], b"bare")
        for scheme in ("light", "dark"):
            measured = self.show(bare, NARROWEST, scheme)
            yield from (f"figure without a sheet: {fault}" for fault in judge(measured))
            yield from self.reports("figure without a sheet", [])
            if measured["paper"] != LIGHT_PAPER:
                yield f"a figure without a sheet is {measured['paper']}"

    def check_full(self):
        """All of it: legible though its sheet is blocked, and in forced colours where it is not."""
        body, headers = self.draw("")
        blocked = self.pages.put(f"{self.case} blocked", [body], b"bare")
        for width in (NARROWEST, NARROW, WIDE):
            yield from (f"blocked sheet, {width} px: {fault}" for fault in judge(self.show(blocked, width, "dark")))
            yield from self.reports("blocked sheet", ["style-src-elem"])
        alone = self.pages.server.put(f"{self.case} alone", body, headers)
        for scheme in ("light", "dark"):
            measured = self.show(alone, NARROWEST, scheme, forced=True)
            yield from (f"forced colours, {scheme}: {fault}" for fault in judge(measured))
            if len({tuple(colour) for _, colour in measured["strokes"] if colour}) < 2:
                yield "in forced colours wire looks like ink"

    def check_themes(self):
        """A theme holds whatever the device asks; in print all is light, but for a dark figure, which has no sheet."""
        for content in ("full", "figure"):
            for theme, paper in {"light": LIGHT_PAPER, "dark": DARK_PAPER}.items():
                body, headers = self.draw(f"content={content}&theme={theme}")
                address = self.pages.server.put(f"{self.case} {content} {theme}", body, headers)
                for scheme in ("light", "dark"):
                    measured = self.show(address, NARROWEST, scheme)
                    yield from (f"{content}, {theme}: {fault}" for fault in judge(measured))
                    if measured["paper"] != paper:
                        yield f"{content}, {theme}: paper is {measured['paper']} where the device asks for {scheme}"
                printed = self.show(address, NARROWEST, "dark", "print")
                yield from (f"{content}, {theme}, print: {fault}" for fault in judge(printed))
                if printed["paper"] != (LIGHT_PAPER if content == "full" else paper):
                    yield f"{content}, {theme}: paper is {printed['paper']} in print"

    def check_several(self):
        """Several on one page: no id stands twice, and each has its own description and its own theme."""
        papers = {"dark": DARK_PAPER, "light": LIGHT_PAPER, "auto": DARK_PAPER}
        bodies = [self.draw(f"id_prefix={theme}-&theme={theme}")[0] for theme in papers]
        address = self.pages.put(f"{self.case} several", bodies, b"bare", LENIENT)
        for media in ("", "print"):
            self.show(address, NARROWEST, "dark", media)
            for index, (theme, paper) in enumerate(papers.items()):
                measured = measure(self.browser, index)
                yield from (f"{theme} among several: {fault}" for fault in judge(measured))
                if measured["paper"] != (LIGHT_PAPER if media else paper):
                    yield f"{theme} among several is {measured['paper']} {media}"
        yield from self.reports("several", [])
        if equal := self.browser.ask(EQUAL_IDS):
            yield f"several on a page have {equal}"

    def reports(self, what, expected):
        """What the page reports must be this."""
        if (found := self.browser.ask(VIOLATIONS)) != expected:
            yield f"{what}: the page reports {found}"
        if not expected:
            yield from (f"{what}: {complaint}" for complaint in self.browser.complaints)
