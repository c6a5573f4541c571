import { React, createRoot } from "./react.js";
import { WORDS, line } from "./words.js";

const { createElement: e, useState } = React;

const stock = await (await fetch("stock.json")).json();

/** The shop's page. The helper is an element like another: attributes, properties and events are those of React 19. */
function Page() {
  const [lines, setLines] = useState([]);
  const [headline, setHeadline] = useState("");
  return e(React.Fragment, null,
    e("header", null, e("strong", null, "Tern Island Boatyard")),
    e("main", null,
      e("h1", null, WORDS.name),
      e("loopwright-helper", {
        "publishable-key": "tern-island-page",
        show: "summary drawing findings cart sheet",
        stock,
        "onloopwright-result": (event) => setHeadline(event.detail.summary.headline),
        "onloopwright-add-to-cart": (event) => setLines(event.detail.lines),
      }),
      e("p", { id: "headline" }, headline),
      e("h2", null, WORDS.basket),
      e("ul", { id: "basket" }, lines.map((one) => e("li", { key: line(one) }, line(one))))));
}

createRoot(document.getElementById("page")).render(e(Page));
