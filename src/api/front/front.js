// Shows the request and the answer behind what the helper shows, and addresses as the reader's browser has them.
const helper = document.querySelector("loopwright-helper");
const here = new URL(".", location.href).href.replace(/\/$/, "");
const quoted = {
  curl: (text) => text.replaceAll("'", "'\\''"),
  typescript: (text) => text,
  python: (text) => text,
};

// An instance without a public address names the one that it listens on; what is copied must work from here.
const named = document.documentElement.dataset.address;
if (named && named !== here) {
  for (const snippet of document.querySelectorAll("[data-snippet]")) {
    for (const node of snippet.childNodes) {
      if (node.nodeType === Node.TEXT_NODE) node.textContent = node.textContent.replaceAll(named, here);
    }
  }
}

helper.addEventListener("loopwright-result", ({ detail }) => {
  const request = JSON.stringify(helper.value, null, 2);
  for (const place of document.querySelectorAll("[data-request]")) {
    place.textContent = quoted[place.dataset.request](request);
  }
  document.getElementById("answer").textContent = JSON.stringify(detail.summary, null, 2);
});
