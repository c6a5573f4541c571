// All that a page needs of the API, without a library: the form, drawn; the sizing, asked with a publishable key; the drawing, inline.
const { lang, dataset: { api, key } } = document.documentElement;
const [form, said, figure] = ["form", "#said", "figure"].map((name) => document.querySelector(name));
const element = (tag, properties, ...children) => {
  const made = Object.assign(document.createElement(tag), properties);
  made.append(...children);
  return made;
};

// Which fields, in which order, with which words and menus: the service says.
const { fields } = await (await fetch(`${api}/v1/forms/loop-sizing?lang=${lang}`)).json();
const shown = fields.filter((field) => field.audience === "usual" && ["quantity", "choice"].includes(field.kind));
for (const { pointer: name, label, help, options, is_required: required } of shown) {
  const choices = options?.map((option) => element("option", { value: option.code }, option.label)) ?? [];
  const input = element(options ? "select" : "input", { name, required }, ...(options ? [element("option"), ...choices] : []));
  form.append(element("label", {}, `${label} `, input), element("small", {}, help), element("strong", { id: name }));
}
form.append(element("button", {}, "Ask"));

/** Asks for the form's values with the key; a drawing comes as a document, for under this policy no text may become elements. */
function ask(path, responseType) {
  const body = {};
  for (const [pointer, value] of new FormData(form)) {
    const [last, ...parents] = pointer.split("/").slice(1).reverse();
    if (value) parents.reverse().reduce((at, name) => (at[name] ??= {}), body)[last] = value;
  }
  const asked = new XMLHttpRequest();
  asked.open("POST", `${api}/v1/${path}${path.includes("?") ? "&" : "?"}lang=${lang}`);
  asked.setRequestHeader("content-type", "application/json");
  asked.setRequestHeader("authorization", `Bearer ${key}`);
  asked.responseType = responseType;
  return new Promise((resolve) => (asked.onloadend = () => resolve(asked), asked.send(JSON.stringify(body))));
}

form.onsubmit = async (event) => {
  event.preventDefault();
  const { status, response } = await ask("loop-sizing/summary", "json");
  for (const mark of form.querySelectorAll("strong")) mark.textContent = "";
  for (const { pointer, detail, hint } of response?.errors ?? []) document.getElementById(pointer)?.append(`${detail} ${hint}`);
  said.textContent = response?.headline ?? response?.detail ?? "The service cannot be reached from this page.";
  const drawing = status === 200 && await ask("drawings/plan?content=figure&id_prefix=plan", "document");
  figure.replaceChildren(...(drawing ? [document.importNode(drawing.response.documentElement, true)] : []));
};
