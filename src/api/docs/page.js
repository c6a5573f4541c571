// The list of requests: what is opened is loaded, those are shown that the words of the filter name, and each has its address.
const entries = [...document.querySelectorAll("main section > details")];
const filter = document.getElementById("filter");

const load = async (entry) => {
  const body = entry.querySelector("div");
  const link = body.querySelector(".more");
  if (!link || entry.dataset.asked) return;
  entry.dataset.asked = "now";
  try {
    const answer = await fetch(link.href);
    if (!answer.ok) throw new Error(answer.status);
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    body.replaceChildren(...document.adoptNode(page.querySelector("article")).childNodes);
  } catch {
    delete entry.dataset.asked;
    body.querySelector("p").hidden = false;
  }
};

// An address names a request, or an object of one behind a point. The viewer that stood here wrote /group/operation.
const follow = async () => {
  const name = decodeURIComponent(location.hash.slice(1));
  const old = /^\/[^/]+\/(\w+)$/.exec(name)?.[1];
  const entry = entries.find((entry) => (old ? entry.dataset.operation === old : entry.id === name.split(".")[0]));
  if (!entry) return;
  entry.hidden = entry.parentElement.hidden = false;
  entry.open = true;
  await load(entry);
  (document.getElementById(name) ?? entry).scrollIntoView();
  entry.querySelector("summary").focus({ preventScroll: true });
};

const narrow = () => {
  const words = filter.value.toLowerCase().split(/[\s_]+/).filter(Boolean);
  for (const entry of entries) {
    const text = `${entry.firstElementChild.textContent} ${entry.dataset.operation}`.toLowerCase();
    entry.hidden = !words.every((word) => text.includes(word));
  }
  for (const section of document.querySelectorAll("main section")) {
    section.hidden = !section.querySelector(":scope > details:not([hidden])");
  }
  const count = entries.filter((entry) => !entry.hidden).length;
  document.getElementById("shown").value = count;
  document.getElementById("nothing").hidden = count > 0;
};

if (filter) {
  for (const entry of entries) {
    entry.addEventListener("toggle", () => {
      if (!entry.open) return;
      load(entry);
      // What the reader opens is what the address names.
      if (location.hash.slice(1).split(".")[0] !== entry.id) history.replaceState(null, "", `#${entry.id}`);
    });
  }
  filter.addEventListener("input", narrow);
  filter.addEventListener("keydown", (event) => {
    const first = entries.find((entry) => !entry.hidden);
    if (event.key !== "Enter" || !first) return;
    // The key would close what it has just opened.
    event.preventDefault();
    first.open = true;
    first.firstElementChild.focus();
  });
  addEventListener("hashchange", follow);
  filter.closest("div").hidden = false;
  // A reader who came back finds the words that stood there.
  narrow();
  follow();
}
