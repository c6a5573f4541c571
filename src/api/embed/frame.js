// The frame: what its address says becomes attributes of the helper (but for the key, which the service has set), and the page that shows it learns of height and cart, if it is one of
// the pages that may.
const helper = document.querySelector("loopwright-helper");
const named = document.documentElement.dataset.origins.split(" ").filter(Boolean);
const ATTRIBUTES = ["lang", "units", "theme", "opening-width", "barrier", "fields", "show", "stock-src", "max-findings"];

for (const [name, value] of new URLSearchParams(location.search)) {
  if (ATTRIBUTES.includes(name)) helper.setAttribute(name, value);
}
const language = helper.getAttribute("lang");
if (language) document.documentElement.lang = language;

// The page's own origin, as far as the browser tells; nobody else is written to, and nobody else is heard.
const told = location.ancestorOrigins?.[0] ?? (document.referrer && new URL(document.referrer).origin);
const page = named.includes("*") ? told : named.find((origin) => origin === told);
const tell = (message) => {
  if (page && parent !== window) parent.postMessage(message, page);
};

new ResizeObserver(() => tell({ type: "loopwright-height", height: Math.ceil(document.documentElement.getBoundingClientRect().height) }))
  .observe(document.documentElement);
helper.addEventListener("loopwright-add-to-cart", (event) => tell({ type: "loopwright-add-to-cart", lines: event.detail.lines }));

// A page may give its stock to the frame: { type: "loopwright-stock", stock: [...] }.
addEventListener("message", (event) => {
  const isPage = page && event.origin === page && event.source === parent;
  if (isPage && event.data?.type === "loopwright-stock") helper.stock = event.data.stock;
});
