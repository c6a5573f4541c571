import { React, createRoot } from "./react.js";
import { WORDS, line } from "./words.js";

const { createElement: e, useState } = React;

const shelf = await (await fetch("stock.json")).json();

/** The shop's page. The helper is an element like another: attributes, properties and events are those of React 19. */
function Page() {
  const [lines, setLines] = useState([]);
  const [headline, setHeadline] = useState("");
  const [value, setValue] = useState(undefined);
  return e(React.Fragment, null,
    e("header", null, e("strong", null, "Tern Island Boatyard")),
    e("main", null,
      e("h1", null, WORDS.name),
      e("loopwright-helper", {
        "publishable-key": "tern-island-page",
        show: "summary drawing findings cart sheet",
        // Objects that are new with each rendering, as pages write them.
        stock: [...shelf],
        messages: { en: { previous: "This is for what stood there before." } },
        defaults: { surface: "existing_asphalt" },
        value,
        "onloopwright-input": (event) => setValue(event.detail.value),
        "onloopwright-result": (event) => setHeadline(event.detail.summary.headline),
        "onloopwright-add-to-cart": (event) => setLines(event.detail.lines),
      }),
      e("p", { id: "headline" }, headline),
      e("h2", null, WORDS.basket),
      e("ul", { id: "basket" }, lines.map((one) => e("li", { key: line(one) }, line(one))))));
}

createRoot(document.getElementById("page")).render(e(Page));
