// The viewer: all operations collapsed, those shown that the words of the filter name, drawings drawn.
const textOf = (entry) =>
  ["path", "method"].map((name) => entry.get(name)).concat(entry.getIn(["operation", "operationId"]), entry.getIn(["operation", "summary"]))
    .join(" ").toLowerCase();

const FilterByWords = () => ({
  fn: {
    opsFilter: (tags, phrase) => {
      const words = phrase.toLowerCase().split(/[\s_]+/).filter(Boolean);
      const isMeant = (entry) => words.every((word) => textOf(entry).includes(word));
      return tags
        .map((tag) => tag.set("operations", tag.get("operations").filter(isMeant)))
        .filter((tag) => tag.get("operations").size > 0);
    },
  },
});

const Drawings = () => ({
  wrapComponents: {
    responseBody: (Original, system) => (props) => {
      const make = system.React.createElement;
      const body = make(Original, props);
      if (typeof props.content !== "string" || !String(props.contentType).startsWith("image/svg+xml")) {
        return body;
      }
      const source = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(props.content);
      const image = make("img", { src: source, alt: "The drawing of this answer", className: "drawing" });
      return make("div", null, image, make("details", null, make("summary", null, "As text"), body));
    },
  },
});

window.ui = SwaggerUIBundle({
  url: "../../openapi-compact.json",
  dom_id: "#swagger-ui",
  deepLinking: true,
  defaultModelsExpandDepth: -1,
  docExpansion: "list",
  filter: true,
  plugins: [FilterByWords, Drawings],
  tryItOutEnabled: true,
  validatorUrl: null,
});
