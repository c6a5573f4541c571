/**
 * `<loopwright-helper>`: from "my gate is 24 ft" to loops, a picture, what to watch and a cart, on somebody else's page.
 *
 * One module without dependencies. It decides nothing of the trade: fields, labels, ranges and menus come from the service's form, and
 * what it shows of an answer comes from the report. Text goes in as text and drawings as parsed documents, so it works where a page
 * forbids inline styles and string sinks. Only the words of the helper's own controls stand here.
 */

/**
 * @typedef {Record<string, any>} Json An object as it is sent or received.
 * @typedef {{code: string, label: string, description?: string}} Option
 * @typedef {{pointer: string, section: string, label: string, help?: string, kind: string, is_required: boolean, audience: string,
 *   usual_unit?: Systems, example?: Systems, least?: Systems, greatest?: Systems, minimum?: number, maximum?: number,
 *   default_quantity?: Systems, default_code?: string, default_codes?: string[], default_number?: number, default_flag?: boolean,
 *   default_words?: string, defaults_by_option?: {pointer: string, code: string, default_codes: string[]}[], options?: Option[]}} Field
 * @typedef {{us: string, metric: string}} Systems
 * @typedef {{language: string, sections: {code: string, label: string}[], fields: Field[]}} Form
 * @typedef {{pointer: string, code: string, detail: string, hint?: string, suggestion?: string}} Fault
 * @typedef {{type: string, title: string, status: number, code: string, detail: string, errors: Fault[], request_id?: string}} Problem
 * @typedef {{sku?: string, specification?: string, quantity: number, marks: string[]}} CartLine
 * @typedef {{question: string, body: string, language: string, report: Json, requestId: string}} Answer
 * @typedef {{field: Field, node: HTMLElement, read: () => void, focus: () => void, show: () => void, showUnit: () => void,
 *   refuse: (faults: Fault[], takes?: string[]) => void, left: boolean}} Control
 * @typedef {Error & {problem: Problem}} Refusal
 */

// ---- Words ---------------------------------------------------------------------------------------------------------------------

/** The helper's own words. Those of fields, findings and refusals are the service's. */
const WORDS = {
  en: {
    title: "Which loops does it need?",
    intro: "Say how wide the opening is and what closes it. You get the loops, a picture and what to watch.",
    submit: "Show the loops",
    again: "Try again",
    busy: "Calculating…",
    loading: "Loading…",
    more: "More, if you know it",
    needed: "needed",
    choose: "Choose",
    usual: "Usual: {x}",
    missing: "Fill this in.",
    missingChoice: "Choose one.",
    whichUnit: "Which unit?",
    unitOf: "Unit: {x}",
    number: "Write a number from {min} to {max}.",
    take: "Use {x}",
    entries: "{n} entry needs attention.|{n} entries need attention.",
    stop: "Do not build it like this",
    watch: "What to watch",
    loops: "The loops",
    turns: "{n} turn|{n} turns",
    picture: "Plan",
    noPicture: "The picture could not be loaded. Everything else is here.",
    details: "What else was found ({n})",
    levelWarning: "Warning",
    levelNote: "Note",
    cautions: "Cautions for whoever does the work ({n})",
    cart: "To order",
    forMarks: "for {x}",
    add: "Add to cart",
    added: "Handed to the shop's cart.",
    notYet: "Not for the cart yet: first settle what stands against it.",
    noMatch: "None of the loops in stock fits. This is what to ask the shop for:",
    sheet: "Job sheet to print",
    sheetSaved: "The job sheet was saved as a file. Open it to print it.",
    previous: "This answer is for what you entered before.",
    offline: "You are offline. What you entered stays here.",
    slow: "The answer takes too long. Try again.",
    gone: "The service cannot be reached. Try again in a minute.",
    many: "There are too many questions just now. Try again in a minute.",
    notHere: "This page may not ask for loops. Please tell the shop.",
    failed: "That did not work. Try again, or ask the shop.",
    nobody: "A vehicle loop sees metal, not people: it protects nobody. Local codes and licensed people decide.",
  },
  es: {
    title: "¿Qué lazos necesita?",
    intro: "Diga qué ancho tiene el claro y qué lo cierra. Verá los lazos, un dibujo y lo que hay que vigilar.",
    submit: "Ver los lazos",
    again: "Intentar de nuevo",
    busy: "Calculando…",
    loading: "Cargando…",
    more: "Más datos, si los sabe",
    needed: "necesario",
    choose: "Elija",
    usual: "Lo usual: {x}",
    missing: "Complete este dato.",
    missingChoice: "Elija una opción.",
    whichUnit: "¿En qué unidad?",
    unitOf: "Unidad: {x}",
    number: "Escriba un número de {min} a {max}.",
    take: "Usar {x}",
    entries: "Hay {n} dato por corregir.|Hay {n} datos por corregir.",
    stop: "No lo construya así",
    watch: "Lo que hay que vigilar",
    loops: "Los lazos",
    turns: "{n} vuelta|{n} vueltas",
    picture: "Plano",
    noPicture: "No se pudo cargar el dibujo. Todo lo demás está aquí.",
    details: "Lo demás que se encontró ({n})",
    levelWarning: "Advertencia",
    levelNote: "Nota",
    cautions: "Precauciones para quien hace el trabajo ({n})",
    cart: "Para pedir",
    forMarks: "para {x}",
    add: "Agregar al carrito",
    added: "Entregado al carrito de la tienda.",
    notYet: "Todavía no va al carrito: primero resuelva lo que está en contra.",
    noMatch: "Ninguno de los lazos en existencia sirve. Esto es lo que debe pedir a la tienda:",
    sheet: "Hoja de trabajo para imprimir",
    sheetSaved: "La hoja de trabajo se guardó como archivo. Ábrala para imprimirla.",
    previous: "Esta respuesta es de los datos anteriores.",
    offline: "No hay conexión. Sus datos siguen aquí.",
    slow: "La respuesta tarda demasiado. Intente de nuevo.",
    gone: "No se puede llegar al servicio. Intente de nuevo en un minuto.",
    many: "Hay demasiadas consultas en este momento. Intente de nuevo en un minuto.",
    notHere: "Esta página no tiene permiso para consultar los lazos. Avise a la tienda.",
    failed: "No funcionó. Intente de nuevo o pregunte a la tienda.",
    nobody:
      "Un lazo vehicular detecta metal, no personas: no protege a nadie. Deciden los códigos locales y los profesionales con licencia.",
  },
  fr: {
    title: "Quelles boucles faut-il?",
    intro: "Indiquez la largeur de l'ouverture et ce qui la ferme. Vous verrez les boucles, un dessin et ce qu'il faut surveiller.",
    submit: "Voir les boucles",
    again: "Réessayer",
    busy: "Calcul en cours…",
    loading: "Chargement…",
    more: "Plus de détails, si vous les connaissez",
    needed: "requis",
    choose: "Choisissez",
    usual: "Habituel\u00a0: {x}",
    missing: "Remplissez ce champ.",
    missingChoice: "Choisissez une option.",
    whichUnit: "Dans quelle unité?",
    unitOf: "Unité\u00a0: {x}",
    number: "Écrivez un nombre de {min} à {max}.",
    take: "Utiliser {x}",
    entries: "{n} donnée est à corriger.|{n} données sont à corriger.",
    stop: "Ne le construisez pas ainsi",
    watch: "À surveiller",
    loops: "Les boucles",
    turns: "{n} tour|{n} tours",
    picture: "Plan",
    noPicture: "Le dessin n'a pas pu être chargé. Tout le reste est ici.",
    details: "Ce qui a été relevé d'autre ({n})",
    levelWarning: "Avertissement",
    levelNote: "Note",
    cautions: "Mises en garde pour qui fait le travail ({n})",
    cart: "À commander",
    forMarks: "pour {x}",
    add: "Ajouter au panier",
    added: "Remis au panier de la boutique.",
    notYet: "Pas encore au panier\u00a0: réglez d'abord ce qui s'y oppose.",
    noMatch: "Aucune des boucles en stock ne convient. Voici ce qu'il faut demander à la boutique\u00a0:",
    sheet: "Fiche de travail à imprimer",
    sheetSaved: "La fiche de travail a été enregistrée dans un fichier. Ouvrez-le pour l'imprimer.",
    previous: "Cette réponse correspond à vos données précédentes.",
    offline: "Vous êtes hors ligne. Vos données restent ici.",
    slow: "La réponse tarde trop. Réessayez.",
    gone: "Le service est injoignable. Réessayez dans une minute.",
    many: "Il y a trop de demandes en ce moment. Réessayez dans une minute.",
    notHere: "Cette page n'est pas autorisée à demander des boucles. Prévenez la boutique.",
    failed: "Cela n'a pas fonctionné. Réessayez ou demandez à la boutique.",
    nobody:
      "Une boucle pour véhicules détecte le métal, pas les personnes\u00a0: elle ne protège personne. Les codes locaux et les titulaires de licence décident.",
  },
};

/** What a page may not word anew, for it must not be softened. */
const FIXED_WORDS = new Set(["nobody", "stop", "notYet"]);

/** @typedef {keyof typeof WORDS} Language @typedef {keyof typeof WORDS.en} Word */

// ---- Look ----------------------------------------------------------------------------------------------------------------------

const STYLE = `
:host { display: block; min-inline-size: min(100%, 18rem); color-scheme: light dark; --_surface: #fff; --_ink: #16191d; --_accent: #0b4f94; --_stop: #a3140c; }
:host([hidden]) { display: none; }
:host([theme="light"]) { color-scheme: light; }
:host([theme="dark"]) { color-scheme: dark; }
@supports (color: light-dark(#000, #fff)) {
  :host { --_surface: light-dark(#fff, #14171b); --_ink: light-dark(#16191d, #eceff2);
    --_accent: light-dark(#0b4f94, #86bdf7); --_stop: light-dark(#a3140c, #ff9d93); }
}
@media print { :host { color-scheme: light; } }
* { box-sizing: border-box; }
.all {
  --surface: var(--loopwright-surface, var(--_surface)); --ink: var(--loopwright-ink, var(--_ink));
  --accent: var(--loopwright-accent, var(--_accent)); --wire: var(--loopwright-wire, var(--accent));
  --radius: var(--loopwright-radius, 2px); --faint: color-mix(in srgb, var(--ink) 72%, var(--surface));
  --rule: color-mix(in srgb, var(--ink) 22%, var(--surface)); --on-accent: #fff;
  container-type: inline-size; background: var(--surface); color: var(--ink); text-align: start;
  font: 1rem/1.5 var(--loopwright-font, system-ui, sans-serif); overflow-wrap: anywhere; letter-spacing: normal; text-transform: none;
}
@supports (color: oklch(from red l c h)) {
  .all { --on-accent: oklch(from var(--accent) clamp(0, (0.57 - l) * 1000, 1) 0 0); }
}
:host(:dir(rtl)) ::slotted(*) { direction: rtl; }
.page { display: grid; gap: 0 2.5rem; padding: 1rem; }
h2, h3, p, ul, figure, fieldset { margin: 0; padding: 0; border: 0; min-inline-size: 0; }
h2 { font-size: 1.5rem; line-height: 1.2; font-weight: 650; text-wrap: balance; }
h3, legend.group { font-size: 1rem; font-weight: 650; margin-block-end: .4rem; padding: 0; }
ul { list-style: none; }
.top, .foot { display: grid; gap: .5rem; }
.field > * + *, .block > * + * { margin-block-start: .5rem; }
.ticks { display: grid; grid-template-columns: repeat(auto-fill, minmax(9.5rem, 1fr)); gap: 0 1rem; }
.field + .field, .field.group { margin-block-start: 1.25rem; }
.block { border-block-start: 1px solid var(--rule); padding-block: 1.25rem; }
form { padding-block: 1.25rem; }
label, legend { display: block; font-weight: 600; padding: 0; }
.small, .help, .place { color: var(--faint); font-size: .9375rem; font-weight: 400; }
.entry { display: flex; flex-wrap: wrap; gap: .5rem; }
input, select, button { font: inherit; color: inherit; }
.entry > input, select {
  flex: 1 1 8rem; inline-size: 100%; min-inline-size: 0; min-block-size: 3rem; padding: .5rem .75rem; background: var(--surface);
  border: 1px solid var(--faint); border-radius: var(--radius); font-size: max(1rem, 16px);
}
[aria-invalid="true"] { border: 2px solid var(--_stop); }
.units { display: flex; gap: .25rem; }
.units label, .tick { cursor: pointer; }
.units label { position: relative; display: grid; min-inline-size: 3rem; min-block-size: 3rem; font-weight: 400; }
.units span { display: grid; place-items: center; padding-inline: .75rem; border: 1px solid var(--faint); border-radius: var(--radius); }
.units input { position: absolute; inset: 0; inline-size: 100%; block-size: 100%; margin: 0; opacity: 0; cursor: pointer; }
.units :checked + span { background: var(--ink); border-color: var(--ink); color: var(--surface); font-weight: 650; }
.tick { display: flex; gap: .75rem; align-items: center; min-block-size: 2.75rem; font-weight: 400; }
.tick input { inline-size: 1.5rem; block-size: 1.5rem; flex: none; margin: 0; accent-color: var(--accent); }
button { min-block-size: 3rem; padding: .5rem 1.25rem; border: 1px solid currentColor; border-radius: var(--radius); background: none;
  cursor: pointer; font-weight: 600; }
.main { inline-size: 100%; background: var(--accent); border-color: var(--accent); color: var(--on-accent); }
.main:disabled { background: none; border-color: var(--rule); color: var(--faint); cursor: default; }
:focus-visible, .units :focus-visible + span { outline: 3px solid var(--accent); outline-offset: 2px; }
.act { margin-block-start: 1.5rem; }
summary { cursor: pointer; min-block-size: 2.75rem; padding-block: .6rem; font-weight: 600; }
form > .more { margin-block-start: 1rem; }
form > .more[open] { padding-block-end: 1.25rem; }
form > .more + .more { margin-block-start: 0; border-block-start: 1px solid var(--rule); }
.rest > .more { border-block-start: 1px solid var(--rule); padding-block: .25rem; }
.error { color: var(--_stop); font-weight: 600; }
.error:empty, .small:empty { display: none; }
.error button { color: var(--ink); margin-block: .5rem 0; margin-inline-end: .5rem; }
.trouble { margin-block-start: 1rem; }
.previous { border-inline-start: 4px solid var(--rule); padding-inline-start: .75rem; color: var(--faint); }
.loop { display: grid; grid-template-columns: 2.25rem 1fr; gap: 0 .75rem; padding-block: .6rem; }
.loop + .loop, .line + .line, .found + .found { border-block-start: 1px solid var(--rule); }
.mark { inline-size: 2rem; block-size: 2rem; border: 1px solid currentColor; border-radius: 50%; display: grid; place-items: center;
  font-weight: 650; }
.line, .found { padding-block: .6rem; }
.level { font-weight: 650; }
.alarm { display: block !important; visibility: visible !important; opacity: 1 !important; position: static !important;
  font-size: max(1em, 16px) !important; clip-path: none !important; transform: none !important;
  border: 2px solid var(--_stop) !important; padding: 1rem !important; }
.alarm h3 { color: var(--_stop); }
.alarm li + li { margin-block-start: .75rem; }
.law { display: block !important; visibility: visible !important; opacity: 1 !important; font-size: max(.9375rem, 15px) !important; font-weight: 600; }
.quiet { position: absolute; inline-size: 1px; block-size: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
figure { padding-block: 1.25rem; }
figure svg { display: block; inline-size: 100%; block-size: auto; max-inline-size: 30rem; margin-inline: auto; }
@container (min-width: 44rem) {
  .answered { grid-template-columns: minmax(0, 1fr) minmax(0, 1.1fr); grid-template-areas: "top top" "form figure" "head figure" "rest figure" "foot foot";
    grid-template-rows: repeat(3, auto) 1fr auto; }
}
@container (min-width: 68rem) {
  .answered { grid-template-columns: 19rem minmax(0, 1.1fr) minmax(0, 1fr); grid-template-areas: "top top top" "form figure head" "form figure rest" "foot foot foot";
    grid-template-rows: auto auto 1fr auto; }
}
@container (min-width: 44rem) {
  .answered > .head { border-block-start: 0; }
  .answered > figure { position: sticky; inset-block-start: 0; align-self: start; }
  .answered > .top { grid-area: top; } .answered > form { grid-area: form; } .answered > .head { grid-area: head; }
  .answered > figure { grid-area: figure; } .answered > .rest { grid-area: rest; } .answered > .foot { grid-area: foot; }
  .page:not(.answered) > * { max-inline-size: 34rem; }
}
.loopwright-drawing .paper { fill: var(--surface); }
.loopwright-drawing text, .loopwright-drawing .dot { fill: var(--ink); }
.loopwright-drawing :is(.line, .heavy, .dashed, .chain) { stroke: var(--ink); }
.loopwright-drawing .fine { stroke: var(--faint); }
.loopwright-drawing .wire { stroke: var(--wire); }
.loopwright-drawing .frame { stroke: var(--_stop); }
.loopwright-drawing .stop { fill: var(--_stop); }
.loopwright-drawing .balloon { fill: var(--surface); stroke: var(--ink); }
.loopwright-drawing .wiredot { fill: var(--wire); }
.loopwright-drawing .fill { fill: var(--ink); fill-opacity: .16; }
.loopwright-drawing .core { fill: var(--surface); stroke: var(--wire); }
@media (forced-colors: active) {
  .all { --surface: Canvas; --ink: CanvasText; --accent: LinkText; --wire: LinkText; --faint: CanvasText; --rule: GrayText; --_stop: CanvasText; }
  .main { border-color: ButtonText; color: ButtonText; background: ButtonFace; }
  .main:disabled { color: GrayText; border-color: GrayText; }
  .units :checked + span { forced-color-adjust: none; background: Highlight; color: HighlightText; }
  figure svg { forced-color-adjust: none; }
}
`;

/** @type {CSSStyleSheet | undefined} */
let sharedSheet;

/** The one sheet of all helpers. A constructed sheet is no inline style, so a strict policy lets it pass. */
function styleSheet() {
  if (!sharedSheet) {
    sharedSheet = new CSSStyleSheet();
    sharedSheet.replaceSync(STYLE);
  }
  return sharedSheet;
}

// ---- Small tools ---------------------------------------------------------------------------------------------------------------

/**
 * Makes an element. Text is always text.
 * @param {string} tag
 * @param {Record<string, any>} [set] Attributes; `on` holds listeners, a boolean adds or leaves out the attribute.
 * @param {...(Node | string | undefined)} inside
 * @returns {any}
 */
function make(tag, set = {}, ...inside) {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(set)) {
    if (name === "on") {
      for (const [type, listener] of Object.entries(value)) node.addEventListener(type, /** @type {EventListener} */ (listener));
    } else if (value === true) {
      node.setAttribute(name, "");
    } else if (value !== false && value !== undefined) {
      node.setAttribute(name, String(value));
    }
  }
  node.append(...inside.filter((one) => one !== undefined));
  return node;
}

/** The steps of a pointer such as `#/opening/width`. @param {string} pointer */
const steps = (pointer) =>
  pointer.replace(/^#?\//, "").split("/").map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"));

/** @param {any} tree @param {string} pointer @returns {any} */
const readAt = (tree, pointer) => steps(pointer).reduce((at, step) => at?.[step], tree);

/** @param {Json} tree @param {string} pointer @param {any} value */
function writeAt(tree, pointer, value) {
  const way = steps(pointer);
  const last = /** @type {string} */ (way.pop());
  let at = tree;
  for (const step of way) at = isObject(at[step]) ? at[step] : (at[step] = {});
  at[last] = value;
}

/** @param {any} value @returns {value is Json} */
const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);

/** A page may set the same again with each of its own renderings. @param {unknown} one @param {unknown} other */
const isSame = (one, other) => JSON.stringify(one) === JSON.stringify(other);

/** The second over the first, at every depth. @param {Json} under @param {Json} over @returns {Json} */
function merged(under, over) {
  const both = { ...under };
  for (const [name, value] of Object.entries(over)) {
    both[name] = isObject(value) ? merged(isObject(both[name]) ? both[name] : {}, value) : value;
  }
  return both;
}

/** Without what counts as absent. @param {Json} tree @returns {Json} */
function pruned(tree) {
  /** @type {Json} */
  const kept = {};
  for (const [name, value] of Object.entries(tree)) {
    const whole = isObject(value) ? pruned(value) : value;
    const isEmpty = whole === null || whole === undefined || whole === "" ||
      (Array.isArray(whole) && !whole.length) || (isObject(whole) && !Object.keys(whole).length);
    if (!isEmpty) kept[name] = whole;
  }
  return kept;
}

/** A number and a unit in their simplest form, which need no service to be told apart. @param {string} text */
function simpleQuantity(text) {
  const found = /^(\d{1,6}(?:\.\d{1,4}|,\d{1,2})?) ?([^\d\s.,;'"-]+)$/u.exec(text.trim());
  return found ? { number: Number(found[1]?.replace(",", ".")), figures: found[1], unit: found[2] } : undefined;
}

/** A number without a unit. @param {string} text */
const isBare = (text) => /^\d[\d\s.,/½¼¾⅓⅔⅛⅜⅝⅞-]*$/u.test(text);

// ---- Network -------------------------------------------------------------------------------------------------------------------

const LIMIT_MS = 8000;
const DEBOUNCE_MS = 350;

/**
 * Asks once, within the time limit.
 *
 * `XMLHttpRequest` and not `fetch`: it gives a drawing as a parsed document, for which a page with Trusted Types has no other way.
 * @param {{url: string, body?: string | undefined, key?: string | undefined, type: XMLHttpRequestResponseType, signal: AbortSignal}} what
 * @returns {Promise<{status: number, body: any, header: (name: string) => string | null}>}
 */
function askOnce({ url, body, key, type, signal }) {
  return new Promise((resolve, reject) => {
    const asked = new XMLHttpRequest();
    /** @param {string} code */
    const fail = (code) => {
      settle();
      reject(refusal({ status: 0, code }));
    };
    const stop = () => {
      settle();
      asked.abort();
      reject(signal.reason);
    };
    const timer = setTimeout(() => {
      settle();
      asked.abort();
      reject(refusal({ status: 0, code: "timeout" }));
    }, LIMIT_MS);
    const settle = () => {
      asked.onload = asked.onerror = null;
      clearTimeout(timer);
      signal.removeEventListener("abort", stop);
    };
    if (signal.aborted) {
      stop();
      return;
    }
    signal.addEventListener("abort", stop);
    asked.open(body === undefined ? "GET" : "POST", url);
    asked.responseType = type;
    if (body !== undefined) {
      asked.setRequestHeader("content-type", "application/json");
      if (key) asked.setRequestHeader("authorization", `Bearer ${key}`);
    }
    asked.onload = () => {
      settle();
      resolve({ status: asked.status, body: asked.response, header: (name) => asked.getResponseHeader(name) });
    };
    asked.onerror = () => fail(navigator.onLine ? "unreachable" : "offline");
    asked.send(body ?? null);
  });
}

/**
 * Asks; a service that is busy is asked once more, after the seconds that it says, unless these are too many to wait.
 * @param {Parameters<typeof askOnce>[0]} what
 */
async function ask(what) {
  let answer = await askOnce(what);
  const seconds = Number(answer.header("retry-after") ?? 1);
  if ((answer.status === 429 || answer.status === 503) && seconds * 1000 <= LIMIT_MS) {
    await new Promise((resolve, reject) => {
      const timer = setTimeout(resolve, seconds * 1000);
      what.signal.addEventListener("abort", () => (clearTimeout(timer), reject(what.signal.reason)), { once: true });
    });
    answer = await askOnce(what);
  }
  const requestId = answer.header("x-request-id") ?? "";
  if (answer.status < 200 || answer.status > 299 || !answer.body) {
    const told = isObject(answer.body) ? answer.body : { code: "unexpected_answer" };
    throw refusal({ status: answer.status, request_id: requestId, ...told });
  }
  return { body: answer.body, requestId };
}

/** @param {Partial<Problem>} told @returns {Refusal} */
function refusal(told) {
  const problem = { type: "about:blank", title: "", detail: "", status: 0, code: "", errors: [], ...told };
  return Object.assign(new Error(problem.code), { problem });
}

/** The words for a problem that is no field's. @param {Problem} problem @returns {Word} */
function troubleWord({ status, code }) {
  if (code === "offline") return "offline";
  if (code === "timeout" || status === 408 || status === 504) return "slow";
  if (code === "unreachable") return "gone";
  if (status === 401 || status === 403) return "notHere";
  return status === 429 || status === 503 ? "many" : "failed";
}

/** Leaves a page without an answer in peace: the caller went on to something else. @param {unknown} error @returns {error is Refusal} */
const isRefusal = (error) => error instanceof Error && "problem" in error;

// ---- Events --------------------------------------------------------------------------------------------------------------------

/**
 * An event of a helper: it bubbles, and leaves the shadow roots around.
 * @template T
 * @extends {CustomEvent<T>}
 */
export class LoopwrightEvent extends CustomEvent {
  /** @param {string} name Without its prefix. @param {T} detail @param {boolean} [cancelable] */
  constructor(name, detail, cancelable = false) {
    super(`loopwright-${name}`, { bubbles: true, composed: true, cancelable, detail });
  }
}

// ---- The element ---------------------------------------------------------------------------------------------------------------

/** Where the script came from: the service before `/embed/`, else the origin. */
const OWN_SERVICE = import.meta.url.includes("/embed/") ? import.meta.url.split("/embed/")[0] : new URL(import.meta.url).origin;
const USUAL_SHOW = "summary drawing findings cart";
const USUAL_FINDINGS = 3;
/** From so many fields on, sections get their headings; and from so many, they are folded. */
const GROUPED_FROM = 7;
const FOLDED_FROM = 13;

/**
 * Asks for loops and shows the answer. Stops, and that a loop protects nobody, are always shown.
 *
 * @tag loopwright-helper
 * @tagname loopwright-helper
 *
 * @attr {string} api - The service. Default: where the script came from.
 * @attr {string} publishable-key - A key for pages, good with this page's origin only.
 * @attr {string} lang - `en`, `es` or `fr`. Default: the nearest `lang` around, else the document's, else English.
 * @attr {"auto" | "us" | "metric"} units - Which unit a number without one gets, shown beside the field. `auto`: none until the person has chosen.
 * @attr {"auto" | "light" | "dark"} theme - Default: as the device.
 * @attr {string} opening-width - The width to start with, as a person writes it: `24 ft`.
 * @attr {string} barrier - What closes the opening, to start with; a code of the service's table of barriers.
 * @attr {string} fields - Which fields, in which order: the last parts of their pointers, whole pointers, `usual` or `all`.
 * @attr {string} show - What to show of an answer: `summary`, `drawing`, `findings`, `cart`, `sheet`. Default: all but `sheet`.
 * @attr {string} stock-src - Where the loops in stock are, as a JSON list.
 * @attr {number} max-findings - How many warnings are shown at once; the rest is folded. Default: 3. Stops are never left out.
 *
 * @fires {LoopwrightEvent<{language: string}>} loopwright-ready - The form is there.
 * @fires {LoopwrightEvent<{pointer: string, value: object}>} loopwright-input - The person has changed a field.
 * @fires {LoopwrightEvent<{summary: object, report: object, requestId: string}>} loopwright-result - There is a new answer.
 * @fires {LoopwrightEvent<{problem: object}>} loopwright-error - Something was refused or has failed.
 * @fires {LoopwrightEvent<{lines: object[]}>} loopwright-add-to-cart - The person wants these lines. Cancel it to say yourself what became of them.
 *
 * @slot title - The heading.
 * @slot intro - What to do, in a sentence.
 * @slot no-match - What to say where none of the loops in stock fits.
 * @slot disclaimer - More to say under the sentence that a loop protects nobody. That sentence stays.
 * @slot cart-button - A button of the page's own.
 * @slot footer - The end.
 *
 * @csspart form - The form.
 * @csspart field - Each field with its label, help and refusal.
 * @csspart error - A refusal, or a trouble of the whole form.
 * @csspart summary - The loops.
 * @csspart drawing - The drawing.
 * @csspart finding - What to watch, and what was found.
 * @csspart button - Each button.
 *
 * @cssprop [--loopwright-accent] - Main button, focus and choice.
 * @cssprop [--loopwright-font] - The family of the type.
 * @cssprop [--loopwright-radius=2px] - Of corners.
 * @cssprop [--loopwright-surface] - Behind everything, the paper of the drawing too.
 * @cssprop [--loopwright-ink] - Type, and lines of the drawing.
 * @cssprop [--loopwright-wire] - The wire of the loops. Default: the accent.
 */
export class LoopwrightHelper extends HTMLElement {
  static observedAttributes = [
    "api", "publishable-key", "lang", "units", "theme", "opening-width", "barrier", "fields", "show", "stock-src", "max-findings",
  ];

  /**
   * Defines the element, unless the name is taken.
   * @param {string} [name]
   * @param {CustomElementRegistry} [registry]
   */
  static define(name = "loopwright-helper", registry = customElements) {
    if (!registry.get(name)) registry.define(name, this);
  }

  /** @type {Json} What the person and the page have set. */
  #value = {};
  /** @type {Json} */
  #defaults = {};
  /** @type {Json[] | undefined} */
  #stock;
  /** @type {Promise<Json[]> | undefined} */
  #stockOfSource;
  /** @type {((request: Json, options: {signal: AbortSignal}) => Promise<Json[]>) | undefined} */
  #resolveStock;
  /** @type {Json} */
  #messages = {};
  /** @type {Form | undefined} */
  #form;
  /** @type {Control[]} */
  #controls = [];
  /** @type {"us" | "metric" | undefined} The system that the person has chosen. */
  #system;
  /** @type {Answer | undefined} The answer that is shown. */
  #answer;
  /** @type {Answer | undefined} An answer that came of checking a field: perhaps the one that is asked for next. */
  #checked;
  /** @type {Node | undefined} */
  #picture;
  /** What is being asked for. */
  #askedFor = "";
  /** Whether the person has asked for loops, so that the answer follows what is entered. */
  #isWanted = false;
  #hadStock = false;
  /** @type {AbortController | undefined} */
  #loading;
  /** @type {AbortController | undefined} */
  #asking;
  /** @type {AbortController | undefined} */
  #checking;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #timer;
  /** @type {Set<string>} What is to be brought up to date. */
  #outdated = new Set();
  /** @type {WeakSet<Json>} The requests that pages were told of. */
  #told = new WeakSet();
  /** @type {Set<Control>} What was entered and not yet judged. */
  #changes = new Set();
  /** @type {Set<string>} The folded parts that the person has opened. */
  #opened = new Set();
  /** @type {MutationObserver | undefined} */
  #languageWatch;
  /** @type {ShadowRoot} */
  #root;
  /** @type {Record<"page" | "top" | "form" | "answer" | "foot" | "live" | "all", HTMLElement>} */
  #rooms;

  constructor() {
    super();
    this.#root = this.attachShadow({ mode: "open" });
    this.#root.adoptedStyleSheets = [styleSheet()];
    const rooms = {
      top: make("div", { class: "top" }),
      form: make("form", { part: "form", novalidate: true, on: { submit: (/** @type {Event} */ event) => this.#submit(event) } }),
      foot: make("div", { class: "foot block" }),
      live: make("p", { class: "quiet", role: "status" }),
      answer: document.createElement("div"),
    };
    const page = make("div", { class: "page" }, rooms.top, rooms.form, rooms.foot);
    // All words here are of languages that are read from left to right, whatever the page around is.
    const all = make("div", { class: "all", dir: "ltr" }, page, rooms.live);
    this.#rooms = { ...rooms, page, all };
    this.#root.append(all);
  }

  connectedCallback() {
    for (const name of ["value", "defaults", "stock", "messages", "resolveStock", "api", "publishableKey", "units", "theme", "openingWidth",
      "barrier", "fields", "show", "stockSrc", "maxFindings"]) this.#takeOver(name);
    addEventListener("online", this);
    addEventListener("offline", this);
    this.#languageWatch = new MutationObserver(() => this.#refresh("language"));
    this.#languageWatch.observe(document.documentElement, { attributes: true, attributeFilter: ["lang"] });
    this.#refresh("language", "form", "answer");
  }

  disconnectedCallback() {
    removeEventListener("online", this);
    removeEventListener("offline", this);
    this.#languageWatch?.disconnect();
    // Whoever only moves the element puts it back at once, and keeps what is on its way.
    queueMicrotask(() => {
      if (this.isConnected) return;
      clearTimeout(this.#timer);
      for (const one of [this.#loading, this.#asking, this.#checking]) one?.abort();
      this.#asking = this.#loading = undefined;
    });
  }

  /** @param {string} name @param {string | null} before @param {string | null} after */
  attributeChangedCallback(name, before, after) {
    if (before === after) return;
    if (name === "opening-width" || name === "barrier") {
      writeAt(this.#value, name === "barrier" ? "#/opening/barrier" : "#/opening/width", undefined);
      this.#refresh("values");
      return;
    }
    if (name === "stock-src") this.#stockOfSource = undefined;
    if (name === "api") this.#form = undefined;
    if (name === "units") this.#system = undefined;
    if (name === "lang" || name === "api") this.#refresh("language", "form", "answer");
    else if (name === "show" || name === "max-findings") this.#refresh("answer");
    else if (name !== "publishable-key" && name !== "stock-src" && name !== "theme") this.#refresh("form");
  }

  /** Of the window: its line is gone, or back. @param {Event} event */
  handleEvent(event) {
    if (event.type === "offline") {
      this.#trouble("offline");
    } else if (!this.#form) {
      this.#load();
    } else {
      this.#trouble(undefined);
      if (this.#isWanted && this.#isPrevious()) this.#ask();
    }
  }

  // ---- Attributes and properties

  /** The service. @type {string} */
  get api() { return (this.getAttribute("api") || OWN_SERVICE || "").replace(/\/+$/, ""); }
  set api(to) { this.#reflect("api", to); }
  /** A key for pages. @type {string} */
  get publishableKey() { return this.getAttribute("publishable-key") ?? ""; }
  set publishableKey(to) { this.#reflect("publishable-key", to); }
  /** `auto`, `us` or `metric`. @type {string} */
  get units() { return this.#oneOf("units", ["auto", "us", "metric"]); }
  set units(to) { this.#reflect("units", to); }
  /** `auto`, `light` or `dark`. @type {string} */
  get theme() { return this.#oneOf("theme", ["auto", "light", "dark"]); }
  set theme(to) { this.#reflect("theme", to); }
  /** The width to start with. @type {string} */
  get openingWidth() { return this.getAttribute("opening-width") ?? ""; }
  set openingWidth(to) { this.#reflect("opening-width", to); }
  /** What closes the opening, to start with. @type {string} */
  get barrier() { return this.getAttribute("barrier") ?? ""; }
  set barrier(to) { this.#reflect("barrier", to); }
  /** Which fields, in which order. @type {string} */
  get fields() { return this.getAttribute("fields") ?? ""; }
  set fields(to) { this.#reflect("fields", to); }
  /** What to show of an answer. @type {string} */
  get show() { return this.getAttribute("show") ?? USUAL_SHOW; }
  set show(to) { this.#reflect("show", to); }
  /** Where the loops in stock are. @type {string} */
  get stockSrc() { return this.getAttribute("stock-src") ?? ""; }
  set stockSrc(to) { this.#reflect("stock-src", to); }
  /** How many warnings are shown at once. @type {number} */
  get maxFindings() {
    const text = this.getAttribute("max-findings") ?? "";
    return /^\d+$/.test(text) ? Number(text) : USUAL_FINDINGS;
  }
  set maxFindings(to) { this.#reflect("max-findings", to); }

  /**
   * The request: defaults, attributes and what was entered. Setting it replaces what was entered; the very object that came with an event
   * is taken for an echo and changes nothing.
   * @type {Json}
   */
  get value() {
    const attributes = { opening: { width: this.openingWidth, barrier: this.barrier } };
    return pruned(merged(merged(this.#defaults, pruned(attributes)), this.#entered()));
  }
  set value(to) {
    // A page that follows each key hands back what it was told, and may be one key behind: the person's entries hold.
    if (this.#told.has(to) || isSame(to, this.value)) return;
    this.#value = isObject(to) ? structuredClone(to) : {};
    this.#refresh("values");
  }
  /** A request that holds where nothing was entered. @type {Json} */
  get defaults() { return this.#defaults; }
  set defaults(to) {
    if (isSame(to, this.#defaults)) return;
    this.#defaults = isObject(to) ? structuredClone(to) : {};
    this.#refresh("values");
  }
  /** The loops in stock. @type {Json[] | undefined} */
  get stock() { return this.#stock; }
  set stock(to) {
    if (isSame(to, this.#stock)) return;
    this.#stock = Array.isArray(to) ? to : undefined;
    if (this.#isWanted) this.#later();
  }
  /** Gives the loops in stock for a request. @type {((request: Json, options: {signal: AbortSignal}) => Promise<Json[]>) | undefined} */
  get resolveStock() { return this.#resolveStock; }
  set resolveStock(to) { this.#resolveStock = typeof to === "function" ? to : undefined; }
  /** Words instead of the helper's own, for all languages or by language. @type {Json} */
  get messages() { return this.#messages; }
  set messages(to) {
    if (isSame(to, this.#messages)) return;
    this.#messages = isObject(to) ? to : {};
    this.#refresh("form", "answer");
  }
  /** The last report. @type {Json | undefined} @readonly */
  get report() { return this.#answer?.report; }

  /** Asks for loops, as the button does. */
  ask() {
    return this.#submit();
  }

  /** @param {string} name @param {any} to */
  #reflect(name, to) {
    if (to === undefined || to === null || to === "") this.removeAttribute(name);
    else this.setAttribute(name, String(to));
  }

  /** @param {string} name @param {string[]} known */
  #oneOf(name, known) {
    const text = this.getAttribute(name) ?? "";
    return /** @type {string} */ (known.includes(text) ? text : known[0]);
  }

  /** Takes over a property that was set before the element was defined. @param {string} name */
  #takeOver(name) {
    if (!Object.hasOwn(this, name)) return;
    const self = /** @type {any} */ (this);
    const set = self[name];
    delete self[name];
    self[name] = set;
  }

  /** What was entered, with `undefined` where the attributes hold. */
  #entered() {
    /** @param {Json} tree @returns {Json} */
    const set = (tree) => Object.fromEntries(Object.entries(tree).filter(([, one]) => one !== undefined)
      .map(([name, one]) => [name, isObject(one) ? set(one) : one]));
    return set(this.#value);
  }

  // ---- Language and words

  /** @returns {Language} */
  get #language() {
    /** @type {Element | null} */
    let at = this;
    while (at && !at.closest("[lang]")) {
      const root = at.getRootNode();
      at = root instanceof ShadowRoot ? root.host : null;
    }
    const tag = at?.closest("[lang]")?.getAttribute("lang") ?? "";
    const base = tag.toLowerCase().split("-")[0] ?? "";
    return base in WORDS ? /** @type {Language} */ (base) : "en";
  }

  /**
   * A word or sentence. With `n`, its singular or plural.
   * @param {Word} word @param {Record<string, string | number>} [values]
   */
  #text(word, values = {}) {
    const language = this.#language;
    const own = FIXED_WORDS.has(word) ? undefined : (this.#messages[language]?.[word] ?? this.#messages[word]);
    const forms = String(typeof own === "string" ? own : WORDS[language][word]).split("|");
    const isPlural = "n" in values && new Intl.PluralRules(language).select(Number(values.n)) !== "one";
    const form = (isPlural ? forms[1] : forms[0]) ?? forms[0] ?? "";
    return form.replace(/\{(\w+)\}/g, (_, name) => String(values[name] ?? ""));
  }

  /**
   * Tells the page. `false` where the page has cancelled it.
   * @param {string} name @param {object} detail @param {boolean} [cancelable]
   */
  #emit(name, detail, cancelable = false) {
    return this.dispatchEvent(new LoopwrightEvent(name, detail, cancelable));
  }

  /** Says it to who does not see it. @param {string} text */
  #say(text) {
    this.#rooms.live.textContent = text;
  }

  // ---- Bringing up to date

  /** @param {...string} what */
  #refresh(...what) {
    if (!this.#outdated.size) queueMicrotask(() => this.#bringUpToDate());
    for (const one of what) this.#outdated.add(one);
  }

  #bringUpToDate() {
    const outdated = this.#outdated;
    this.#outdated = new Set();
    if (!this.isConnected) return;
    if (outdated.has("values")) this.#showValues();
    if (!this.#form || (outdated.has("language") && this.#form.language !== this.#language)) {
      this.#load();
    } else if (this.#isWanted && this.#isPrevious() && !(this.#asking && this.#askedFor === this.#question)) {
      this.#ask();
    }
    this.#rooms.all.lang = this.#language;
    if (outdated.has("form") || outdated.has("language")) this.#renderForm();
    if (outdated.has("answer")) this.#renderAnswer();
  }

  /** Shows what the page has set. */
  #showValues() {
    for (const control of this.#controls) {
      control.show();
      control.refuse([]);
    }
    this.#showPrevious();
  }

  async #load() {
    this.#loading?.abort();
    const loading = (this.#loading = new AbortController());
    const language = this.#language;
    try {
      const url = `${this.api}/v1/forms/loop-sizing?lang=${language}`;
      const { body } = await ask({ url, type: "json", signal: loading.signal });
      if (loading !== this.#loading) return;
      this.#form = { ...body, language };
      this.#renderForm();
      this.#emit("ready", { language });
      if (this.#isWanted) this.#ask();
    } catch (error) {
      if (loading === this.#loading) this.#failed(error);
    } finally {
      if (loading === this.#loading) this.#loading = undefined;
      this.#button();
    }
  }

  /** @param {unknown} error */
  #failed(error) {
    if (!isRefusal(error)) {
      if (error instanceof DOMException && error.name === "AbortError") return;
      throw error;
    }
    this.#emit("error", { problem: error.problem });
    this.#trouble(troubleWord(error.problem));
  }

  /** Shows what is the matter with all of it, or nothing. @param {Word | undefined} word @param {string} [more] */
  #trouble(word, more) {
    const room = this.#root.querySelector(".trouble");
    const text = word ? this.#text(word) : (more ?? "");
    if (room) room.textContent = text;
    if (text) this.#say(text);
    this.#button();
  }

  /** The words on the main button. */
  #button() {
    const button = this.#root.querySelector("form .main");
    if (!button) return;
    const hasTrouble = Boolean(this.#root.querySelector(".trouble")?.textContent);
    button.textContent = this.#text(this.#loading && !this.#form ? "loading" : this.#asking ? "busy" : hasTrouble ? "again" : "submit");
  }

  // ---- The form

  /** The fields that are shown at once, and those that are folded. @returns {[Field[], Field[]]} */
  #chosenFields() {
    const all = (this.#form?.fields ?? []).filter((field) => field.kind !== "list" || field.options?.length);
    const usual = all.filter((field) => field.audience === "usual");
    const names = this.fields.split(/[\s,]+/).filter(Boolean);
    if (!names.length) return [usual.filter((field) => field.is_required), usual.filter((field) => !field.is_required)];
    const named = names.flatMap((name) => {
      if (name === "all") return all;
      if (name === "usual") return usual;
      const end = `/${name.replace(/^#?\//, "")}`;
      const found = all.find((field) => field.pointer === `#${end}`) ?? all.find((field) => field.pointer.endsWith(end));
      return found ? [found] : [];
    });
    return [[...new Set(named)], []];
  }

  #renderForm() {
    const { top, form, foot } = this.#rooms;
    top.replaceChildren(
      make("slot", { name: "title" }, make("h2", {}, this.#text("title"))),
      make("slot", { name: "intro" }, make("p", {}, this.#text("intro"))),
    );
    foot.replaceChildren(
      make("p", { class: "law" }, this.#text("nobody")),
      make("slot", { name: "disclaimer" }),
      make("slot", { name: "footer" }),
    );
    const [open, folded] = this.#chosenFields();
    this.#controls = [...open, ...folded].map((field) => this.#control(field));
    const nodes = this.#controls.map((control) => control.node);
    const parts = this.#grouped(open, nodes.slice(0, open.length));
    if (folded.length) parts.push(this.#folded("more", this.#text("more"), ...nodes.slice(open.length)));
    const typing = this.#root.activeElement;
    form.replaceChildren(
      ...parts,
      make("div", { class: "act" }, make("button", { class: "main", part: "button", type: "submit" })),
      make("p", { class: "error trouble", part: "error" }),
    );
    this.#button();
    if (typing?.id) this.#goOnTyping(typing);
  }

  /** A form that is made anew leaves who is typing where they were. @param {Element} before */
  #goOnTyping(before) {
    const after = this.#root.getElementById(before.id);
    if (before instanceof HTMLInputElement && after instanceof HTMLInputElement && before.type === "text") {
      after.value = before.value;
      after.setSelectionRange(before.selectionStart, before.selectionEnd);
    }
    after?.focus({ preventScroll: true });
  }

  /**
   * Many fields get the headings of their sections. Of very many only those that are needed are open, the others are folded there.
   * @param {Field[]} fields @param {HTMLElement[]} nodes
   */
  #grouped(fields, nodes) {
    if (fields.length < GROUPED_FROM) return nodes;
    const isFolded = fields.length >= FOLDED_FROM;
    const rest = isFolded ? fields.filter((field) => !field.is_required) : fields;
    const groups = [...new Set(rest.map((field) => field.section))].map((code) => {
      const label = this.#form?.sections.find((section) => section.code === code)?.label ?? "";
      const own = nodes.filter((_, index) => rest.some((field) => field === fields[index] && field.section === code));
      return isFolded
        ? this.#folded(code, label, ...own)
        : make("fieldset", { class: "field group" }, make("legend", { class: "group" }, label), ...own);
    });
    return [...nodes.filter((_, index) => isFolded && fields[index]?.is_required), ...groups];
  }

  /** A part that is folded until the person opens it, and stays so. @param {string} name @param {string} title @param {...HTMLElement} inside */
  #folded(name, title, ...inside) {
    const fold = make("details", { class: "more", "data-fold": name, open: this.#opened.has(name) }, make("summary", {}, title), ...inside);
    fold.addEventListener("toggle", () => (fold.open ? this.#opened.add(name) : this.#opened.delete(name)));
    return fold;
  }

  /** A field of the form with its label, help and refusal. @param {Field} field @returns {Control} */
  #control(field) {
    const id = steps(field.pointer).join("-");
    const help = make("p", { id: `${id}-help`, class: "help" }, [field.help, this.#usualOf(field)].filter(Boolean).join(" "));
    const error = make("div", { id: `${id}-error`, class: "error", part: "error" });
    const marks = { "aria-describedby": `${id}-error ${id}-help` };
    const needed = field.is_required ? make("span", { class: "small" }, ` (${this.#text("needed")})`) : undefined;
    /** @type {Control} */
    const control = { field, left: false, node: help, read: () => {}, focus: () => {}, show: () => {}, showUnit: () => {}, refuse: () => {} };
    const made = { id, marks, help };
    const entry = field.kind === "choice" ? this.#choice(control, made)
      : field.kind === "list" ? this.#list(control, made)
      : field.kind === "flag" ? this.#flag(control, made)
      : this.#line(control, made);
    const isGroup = field.kind === "list";
    const title = field.kind === "flag" ? [] : [isGroup
      ? make("legend", {}, field.label, needed)
      : make("label", { for: id }, field.label, needed)];
    control.node = make(isGroup ? "fieldset" : "div", { class: "field", part: "field", ...(isGroup ? marks : {}) },
      ...title, ...(isGroup ? [help, ...entry, error] : [...entry, error, help]));
    const inputs = /** @type {HTMLElement[]} */ ([...control.node.querySelectorAll("input:not([type=radio]), select")]);
    control.focus = () => inputs[0]?.focus();
    control.refuse = (faults, takes = []) => {
      const isRefused = faults.length > 0;
      for (const input of inputs) {
        if (isRefused) input.setAttribute("aria-invalid", "true");
        else input.removeAttribute("aria-invalid");
      }
      const texts = [...new Set([...faults.flatMap((fault) => fault.suggestion ?? []), ...takes])];
      error.replaceChildren(
        ...(isRefused ? [make("p", {}, faults.map((fault) => [fault.detail, fault.hint].filter(Boolean).join(" ")).join(" "))] : []),
        ...texts.map((text) => make("button", { type: "button", part: "button", on: { click: () => this.#take(control, text) } },
          this.#text("take", { x: text }))),
      );
      if (isRefused) control.node.closest("details")?.setAttribute("open", "");
    };
    control.show();
    return control;
  }

  /** What holds if the field is left empty. Of a choice it stands in the menu. @param {Field} field */
  #usualOf(field) {
    if (field.is_required) return "";
    const usual = field.default_quantity?.[this.#readingSystem] ?? field.default_number?.toLocaleString(this.#language);
    return [usual && this.#text("usual", { x: `${usual}.` }), field.default_words].filter(Boolean).join(" ");
  }

  /** @param {string[]} words */
  #joined(words) {
    return new Intl.ListFormat(this.#language).format(words);
  }

  /** The system to show first: chosen, as the width is written, else by language. @returns {"us" | "metric"} */
  get #readingSystem() {
    return this.#chosenSystem ?? (this.#language === "en" ? "us" : "metric");
  }

  /** The system that the person, or the page, has chosen. @returns {"us" | "metric" | undefined} */
  get #chosenSystem() {
    return this.#system ?? (this.units === "us" || this.units === "metric" ? this.units : undefined);
  }

  /**
   * Text, a number, or a quantity with its unit.
   * @param {Control} control @param {{id: string, marks: object}} made @returns {HTMLElement[]}
   */
  #line(control, { id, marks }) {
    const { field } = control;
    const isNumber = field.kind === "number" || field.kind === "count";
    const input = make("input", {
      id, ...marks, type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", maxlength: 64,
      required: field.is_required, inputmode: isNumber ? "decimal" : undefined, placeholder: field.example?.[this.#readingSystem],
    });
    control.show = () => {
      const set = readAt(this.value, field.pointer) ?? "";
      const text = Array.isArray(set) ? set.join(" ") : String(set);
      // Who is typing has a space at the end now and then.
      if (input.value.trim() !== text) input.value = text;
    };
    control.read = () => {
      const text = input.value.trim();
      /** @param {string} one */
      const number = (one) => (Number.isNaN(Number(one.replace(",", "."))) ? one : Number(one.replace(",", ".")));
      writeAt(this.#value, field.pointer,
        text === "" ? null : field.kind === "numbers" ? text.split(/[\s;]+/).map(number) : isNumber ? number(text) : text);
    };
    this.#listen(input, control);
    if (!field.usual_unit) return [make("div", { class: "entry" }, input)];

    const { us, metric } = field.usual_unit;
    const units = /** @type {const} */ ([["us", us], ["metric", metric]]);
    const ordered = this.#readingSystem === "us" ? units : [...units].reverse();
    const radios = ordered.map(([system, unit]) => make("input", { type: "radio", name: `${id}-unit`, value: unit,
      on: { change: () => {
        this.#system = system;
        const simple = simpleQuantity(input.value);
        // The figures stay: this says in which unit they were meant.
        if (simple && (simple.unit === us || simple.unit === metric)) input.value = `${simple.figures} ${unit}`;
        this.#appendUnit(control, input, unit);
        this.#showUnits();
        this.#changed(control);
      } } }));
    const showUnit = () => {
      const written = simpleQuantity(input.value)?.unit;
      for (const [index, [system, unit]] of ordered.entries()) {
        radios[index].checked = written && (written === us || written === metric) ? written === unit : this.#chosenSystem === system;
      }
      // Once the unit is chosen figures are enough, and those have the larger keys.
      input.inputMode = this.#chosenSystem && !/[^\d\s.,]/.test(input.value) ? "decimal" : "text";
    };
    const showValue = control.show;
    control.show = () => (showValue(), showUnit());
    input.addEventListener("input", showUnit);
    input.addEventListener("change", showUnit);
    control.showUnit = showUnit;
    // With one unit for all there is nothing to choose.
    if (us === metric) return [make("div", { class: "entry" }, input)];
    const group = make("div", { class: "units", role: "radiogroup", "aria-label": this.#text("unitOf", { x: field.label }) },
      ...ordered.map(([, unit], index) => make("label", {}, radios[index], make("span", {}, unit))));
    return [make("div", { class: "entry" }, input, group)];
  }

  /** Shows at every field which unit holds. */
  #showUnits() {
    for (const control of this.#controls) control.showUnit();
  }

  /** Gives a number without a unit the one that the person has chosen. @param {Control} control @param {HTMLInputElement} input @param {string} unit */
  #appendUnit(control, input, unit) {
    if (isBare(input.value.trim())) input.value = `${input.value.trim()} ${unit}`;
    control.read();
  }

  /** Its help is about the option that is chosen. @param {Control} control @param {{id: string, marks: object, help: HTMLElement}} made */
  #choice(control, { id, marks, help }) {
    const { field } = control;
    const usual = help.textContent ?? "";
    const label = field.options?.find((option) => option.code === field.default_code)?.label;
    const empty = field.is_required ? this.#text("choose") : label ? this.#text("usual", { x: label }) : "—";
    const select = make("select", { id, ...marks, required: field.is_required },
      make("option", { value: "" }, empty),
      ...(field.options ?? []).map((option) => make("option", { value: option.code }, option.label)));
    const tell = () => (help.textContent = field.options?.find((option) => option.code === select.value)?.description ?? usual);
    control.show = () => {
      select.value = readAt(this.value, field.pointer) ?? "";
      tell();
    };
    control.read = () => {
      writeAt(this.#value, field.pointer, select.value || null);
      tell();
    };
    this.#listen(select, control);
    return [make("div", { class: "entry" }, select)];
  }

  /** @param {Control} control @param {{id: string}} made @returns {HTMLElement[]} */
  #list(control, { id }) {
    const { field } = control;
    const boxes = (field.options ?? []).map((option) => make("input", { type: "checkbox", id: `${id}-${option.code}`, value: option.code }));
    control.show = () => {
      const byOption = field.defaults_by_option?.find((one) => readAt(this.value, one.pointer) === one.code);
      const set = readAt(this.value, field.pointer) ?? byOption?.default_codes ?? field.default_codes ?? [];
      for (const box of boxes) box.checked = set.includes(box.value);
    };
    control.read = () => {
      const codes = boxes.filter((box) => box.checked).map((box) => box.value);
      writeAt(this.#value, field.pointer, codes.length ? codes : null);
      // With none of them the usual ones hold, and that is to be seen.
      if (!codes.length) control.show();
    };
    for (const box of boxes) this.#listen(box, control);
    return [make("div", { class: "ticks" },
      ...(field.options ?? []).map((option, index) => make("label", { class: "tick" }, boxes[index], option.label)))];
  }

  /** @param {Control} control @param {{id: string, marks: object}} made @returns {HTMLElement[]} */
  #flag(control, { id, marks }) {
    const { field } = control;
    const box = make("input", { type: "checkbox", id, ...marks });
    control.show = () => (box.checked = readAt(this.value, field.pointer) ?? field.default_flag ?? false);
    control.read = () => writeAt(this.#value, field.pointer, box.checked);
    this.#listen(box, control);
    return [make("label", { class: "tick" }, box, field.label)];
  }

  /** @param {HTMLElement} input @param {Control} control */
  #listen(input, control) {
    input.addEventListener("input", () => {
      control.read();
      control.refuse([]);
      this.#showPrevious();
      this.#tellInput(control);
    });
    input.addEventListener("change", () => {
      const unit = this.#chosenSystem && control.field.usual_unit?.[this.#chosenSystem];
      if (input instanceof HTMLInputElement && unit) this.#appendUnit(control, input, unit);
      this.#changed(control);
    });
  }

  /** @param {Control} control */
  #tellInput(control) {
    const { value } = this;
    this.#told.add(value);
    this.#emit("input", { pointer: control.field.pointer, value });
  }

  /** Takes a text that was offered. @param {Control} control @param {string} text */
  #take(control, text) {
    writeAt(this.#value, control.field.pointer, text);
    control.show();
    control.refuse([]);
    control.focus();
    this.#tellInput(control);
    this.#changed(control);
  }

  /** A field was left with something new in it. @param {Control} control */
  #changed(control) {
    control.left = true;
    const written = simpleQuantity(String(readAt(this.value, control.field.pointer) ?? ""));
    const { us, metric } = control.field.usual_unit ?? {};
    if (!this.#chosenSystem && written && (written.unit === us || written.unit === metric)) {
      this.#system = written.unit === us ? "us" : "metric";
      this.#showUnits();
    }
    // What is usual for one field may depend on another.
    for (const other of this.#controls) if (other.field.defaults_by_option?.length) other.show();
    this.#showPrevious();
    this.#changes.add(control);
    this.#later();
  }

  /**
   * Judges a field by itself: `true` where it surely passes, `false` where it does not, `undefined` where only the service can tell.
   * @param {Control} control @param {boolean} [isSubmitted]
   */
  #judge(control, isSubmitted = false) {
    const { field } = control;
    const set = readAt(this.value, field.pointer);
    /** @param {string} detail @param {string[]} [takes] */
    const refuse = (detail, takes) => (control.refuse([{ pointer: field.pointer, code: "", detail }], takes), false);
    if (set === undefined) {
      if (!field.is_required || !isSubmitted) return true;
      return refuse(this.#text(field.kind === "choice" || field.kind === "list" ? "missingChoice" : "missing"));
    }
    if (field.kind === "number" || field.kind === "count") {
      const { minimum: min = -Infinity, maximum: max = Infinity } = field;
      const passes = typeof set === "number" && set >= min && set <= max && (field.kind === "number" || Number.isInteger(set));
      return passes || refuse(this.#text("number", { min, max }));
    }
    if (field.kind !== "quantity") return ["choice", "list", "flag"].includes(field.kind) || undefined;
    if (field.usual_unit && isBare(set)) {
      const { us, metric } = field.usual_unit;
      const takes = (this.#readingSystem === "us" ? [us, metric] : [metric, us]).map((unit) => `${set} ${unit}`);
      return refuse(this.#text("whichUnit"), takes);
    }
    const written = simpleQuantity(set);
    for (const system of /** @type {const} */ (["us", "metric"])) {
      const least = simpleQuantity(field.least?.[system] ?? "");
      const greatest = simpleQuantity(field.greatest?.[system] ?? "");
      if (written && least && greatest && written.unit === least.unit && written.unit === greatest.unit
        && written.number >= least.number && written.number <= greatest.number) return true;
    }
    return undefined;
  }

  // ---- Asking

  /** @param {Event} [event] */
  async #submit(event) {
    event?.preventDefault();
    clearTimeout(this.#timer);
    this.#changes.clear();
    if (!this.#form) return this.#load();
    for (const control of this.#controls) control.left = true;
    const refused = this.#controls.filter((control) => this.#judge(control, true) === false);
    if (refused.length) {
      this.#tellRefused(refused, true);
      return;
    }
    await this.#ask(true);
  }

  /** @param {Control[]} refused @param {boolean} takesFocus */
  #tellRefused(refused, takesFocus) {
    this.#trouble(undefined);
    this.#say(this.#text("entries", { n: refused.length }));
    if (takesFocus) refused[0]?.focus();
  }

  /**
   * Goes on soon: whoever ticks three boxes asks once, and whoever leaves a field to press the button finds it where it was, not moved
   * away by a refusal.
   */
  #later() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      const judged = [...this.#changes].map((control) => this.#judge(control));
      this.#changes.clear();
      if (!this.#isWanted) {
        if (judged.includes(undefined)) this.#check();
      } else if (this.#controls.every((control) => this.#judge(control, true) !== false)) {
        this.#ask();
      }
    }, DEBOUNCE_MS);
  }

  /** Asks for loops, and shows what comes. @param {boolean} [isExplicit] Whether the person has pressed the button. */
  async #ask(isExplicit = false) {
    clearTimeout(this.#timer);
    this.#asking?.abort();
    this.#checking?.abort();
    const asking = (this.#asking = new AbortController());
    this.#askedFor = this.#question;
    this.#isWanted = true;
    this.#trouble(undefined);
    this.#showPrevious();
    this.#say(this.#text("busy"));
    this.#rooms.page.setAttribute("aria-busy", "true");
    try {
      const request = await this.#withStock(this.value, asking.signal);
      const { answer, picture } = await this.#sized(request, asking.signal);
      if (asking !== this.#asking) return;
      this.#answer = { ...answer, question: this.#askedFor };
      this.#picture = undefined;
      this.#hadStock = Boolean(request.stock);
      for (const control of this.#controls) control.refuse([]);
      this.#renderAnswer();
      const { report, requestId } = answer;
      this.#say(report.summary.headline);
      this.#emit("result", { summary: report.summary, report, requestId });
      if (isExplicit) this.#bringIntoView();
      await this.#placePicture(picture, asking);
    } catch (error) {
      if (asking !== this.#asking) return;
      this.#asking = undefined;
      this.#refused(error, isExplicit);
    } finally {
      if (asking === this.#asking || !this.#asking) {
        this.#asking = undefined;
        this.#rooms.page.removeAttribute("aria-busy");
        this.#button();
        this.#showPrevious();
      }
    }
  }

  /** The report, and the picture on its way. @param {Json} request @param {AbortSignal} signal @returns {Promise<{answer: Answer, picture: Promise<any>}>} */
  async #sized(request, signal) {
    const body = JSON.stringify(request);
    // Both at once: on a telephone each way there and back is felt.
    const picture = this.#shows("drawing") ? this.#draw(body, signal) : Promise.resolve(undefined);
    picture.catch(() => {});
    try {
      if (this.#checked?.body === body && this.#checked.language === this.#language) return { answer: this.#checked, picture };
      return { answer: await this.#report(body, signal), picture };
    } catch (error) {
      const faults = isRefusal(error) ? error.problem.errors : [];
      if (!faults.length || !faults.every((fault) => fault.pointer.startsWith("#/stock"))) throw error;
      // The shop's list is at fault, and nobody here can mend it: the loops are told without it.
      this.#emit("error", { problem: /** @type {Refusal} */ (error).problem });
      delete request.stock;
      return this.#sized(request, signal);
    }
  }

  /** @param {string} body @param {AbortSignal} signal @returns {Promise<Answer>} */
  async #report(body, signal) {
    const language = this.#language;
    const url = `${this.api}/v1/loop-sizing?lang=${language}`;
    const answer = await ask({ url, body, key: this.publishableKey, type: "json", signal });
    return { question: "", body, language, report: answer.body, requestId: answer.requestId };
  }

  /** @param {string} body @param {AbortSignal} signal */
  async #draw(body, signal) {
    const url = `${this.api}/v1/drawings/plan?lang=${this.#language}&theme=${this.theme}&content=figure&id_prefix=helper-`;
    const answer = await ask({ url, body, key: this.publishableKey, type: "document", signal });
    return document.importNode(/** @type {Document} */ (answer.body).documentElement, true);
  }

  /** @param {Promise<any>} picture @param {AbortController} asking */
  async #placePicture(picture, asking) {
    try {
      const drawn = await picture;
      if (asking !== this.#asking) return;
      this.#picture = drawn;
    } catch (error) {
      if (asking !== this.#asking || !isRefusal(error)) return;
      this.#picture = make("p", { class: "small" }, this.#text("noPicture"));
      this.#emit("error", { problem: error.problem });
    }
    if (this.#picture) this.#root.querySelector("figure")?.replaceChildren(this.#picture);
  }

  /** The request with the loops in stock. @param {Json} request @param {AbortSignal} signal */
  async #withStock(request, signal) {
    let stock = this.#stock;
    try {
      if (this.#resolveStock) {
        stock = await within(this.#resolveStock(structuredClone(request), { signal }), signal);
      } else if (!stock && this.stockSrc) {
        this.#stockOfSource ??= this.#loadStock();
        stock = await this.#stockOfSource;
      }
    } catch (error) {
      signal.throwIfAborted();
      this.#stockOfSource = undefined;
      const detail = error instanceof Error ? error.message : String(error);
      this.#emit("error", { problem: refusal({ code: "stock_unavailable", detail }).problem });
    }
    signal.throwIfAborted();
    return stock?.length ? { ...request, stock } : request;
  }

  /** @returns {Promise<Json[]>} */
  async #loadStock() {
    const url = new URL(this.stockSrc, document.baseURI).href;
    const { body } = await ask({ url, type: "json", signal: new AbortController().signal });
    return Array.isArray(body) ? body : (body.stock ?? []);
  }

  /** Asks only to learn what is wrong with the fields that were left. */
  async #check() {
    this.#checking?.abort();
    const checking = (this.#checking = new AbortController());
    try {
      const body = JSON.stringify(await this.#withStock(this.value, checking.signal));
      const answer = await this.#report(body, checking.signal);
      if (checking !== this.#checking) return;
      this.#checked = answer;
      for (const control of this.#controls) control.refuse([]);
    } catch (error) {
      if (checking !== this.#checking || !isRefusal(error)) return;
      const faults = error.problem.errors.filter((fault) => fault.code !== "field_missing");
      for (const control of this.#controls) {
        const own = faults.filter((fault) => isAt(fault, control.field));
        if (!control.left || this.#judge(control) === false) continue;
        control.refuse(own);
        if (own.length) this.#say(`${control.field.label}: ${own[0]?.detail}`);
      }
    }
  }

  /** Shows a refusal at its fields, and a trouble below the form. @param {unknown} error @param {boolean} takesFocus */
  #refused(error, takesFocus) {
    const faults = isRefusal(error) ? error.problem.errors : [];
    if (!faults.length) {
      this.#failed(error);
      return;
    }
    this.#emit("error", { problem: /** @type {Refusal} */ (error).problem });
    const left = new Set(faults);
    const refused = this.#controls.filter((control) => {
      const own = faults.filter((fault) => isAt(fault, control.field));
      for (const fault of own) left.delete(fault);
      control.refuse(own.map((fault) => (fault.code === "field_missing" ? { ...fault, detail: this.#text("missing"), hint: "" } : fault)));
      return own.length > 0;
    });
    if (refused.length) this.#tellRefused(refused, takesFocus);
    // What is wrong where no field is shown is told with the label that the field would have.
    const elsewhere = [...left].flatMap((fault) => {
      const field = this.#form?.fields.find((one) => isAt(fault, one));
      return field ? [`${field.label}: ${fault.detail}`] : [];
    });
    if (left.size) this.#trouble(elsewhere.length ? undefined : "failed", elsewhere.join(" "));
  }

  // ---- The answer

  /** @param {string} part */
  #shows(part) {
    return this.show.split(/[\s,]+/).includes(part);
  }

  /** What would be asked now. */
  get #question() {
    return JSON.stringify([this.#language, this.value]);
  }

  /** Whether the answer that is shown is for something else than what is entered. */
  #isPrevious() {
    return this.#answer?.question !== this.#question;
  }

  /** Marks an answer for something else, which must not go into a cart. */
  #showPrevious() {
    const note = /** @type {HTMLElement | null} */ (this.#root.querySelector(".previous"));
    const isPrevious = this.#isPrevious();
    if (note) note.hidden = !isPrevious;
    for (const button of this.#root.querySelectorAll(".of-answer")) {
      /** @type {HTMLButtonElement} */ (button).disabled = isPrevious;
    }
  }

  #renderAnswer() {
    const { page, form } = this.#rooms;
    for (const old of page.querySelectorAll(":scope > .answer")) old.remove();
    page.classList.toggle("answered", Boolean(this.#answer));
    if (!this.#answer) return;
    const { report } = this.#answer;
    /** @type {HTMLElement[]} */
    const rest = [];
    if (this.#shows("findings")) rest.push(...this.#findings(report));
    if (this.#shows("cart")) rest.push(this.#cart(report));
    if (this.#shows("sheet")) rest.push(this.#sheet());
    rest.push(this.#cautions(report));
    const parts = [this.#head(report)];
    if (this.#shows("drawing")) {
      parts.push(make("figure", { class: "answer", part: "drawing", "aria-label": this.#text("picture") }, this.#picture));
    }
    parts.push(make("div", { class: "answer rest" }, ...rest));
    form.after(...parts);
    this.#showPrevious();
  }

  /** The sentence, what stands against it, and the loops. @param {Json} report */
  #head(report) {
    const { headline, lines } = report.summary;
    const stops = report.findings.filter((/** @type {Json} */ finding) => finding.level === "stop");
    const head = make("section", { class: "answer head block" },
      make("p", { class: "previous", hidden: true }, this.#text("previous")));
    const summary = make("div", { part: "summary" });
    if (this.#shows("summary")) summary.append(make("h3", { class: "headline" }, headline));
    // Not a part: a page must not be able to take a stop away.
    const alarm = stops.length ? [make("div", { class: "alarm" }, make("h3", {}, this.#text("stop")),
      make("ul", {}, ...stops.map((/** @type {Json} */ finding) => make("li", {}, finding.message))))] : [];
    head.append(summary, ...alarm);
    if (this.#shows("summary")) {
      head.append(make("ul", { part: "summary", "aria-label": this.#text("loops") }, ...lines.map((/** @type {Json} */ line) =>
        make("li", { class: "loop" }, make("span", { class: "mark" }, line.mark), make("div", {},
          make("div", { class: "level" }, line.role_label),
          make("div", {}, `${line.size} · ${this.#text("turns", { n: line.turns })}`),
          make("div", { class: "place" }, line.place))))));
    }
    return head;
  }

  /** What to watch: warnings, each kind once, as many as the page wants; folded, what else was found. @param {Json} report */
  #findings(report) {
    /** @type {Json[]} */
    const found = report.findings.filter((/** @type {Json} */ finding) => finding.level !== "stop");
    const first = found.filter(({ code, level }, index) => level === "warning" && found.findIndex((other) => other.code === code) === index);
    const watched = first.slice(0, this.maxFindings);
    const rest = found.filter((finding) => !watched.includes(finding));
    const parts = [];
    if (watched.length) {
      parts.push(make("section", { class: "block" }, make("h3", {}, this.#text("watch")),
        make("ul", {}, ...watched.map(({ message }) => make("li", { class: "found", part: "finding" }, message)))));
    }
    if (rest.length) {
      parts.push(this.#folded("details", this.#text("details", { n: rest.length }),
        make("ul", {}, ...rest.map(({ level, message }) => make("li", { class: "found", part: "finding" },
          make("span", { class: "level" }, `${this.#text(level === "warning" ? "levelWarning" : "levelNote")}: `), message)))));
    }
    return parts;
  }

  /** @param {Json} report */
  #cautions(report) {
    return this.#folded("cautions", this.#text("cautions", { n: report.cautions.length }),
      make("ul", {}, ...report.cautions.map((/** @type {Json} */ caution) => make("li", { class: "found" }, caution.message))));
  }

  /** What to take from the shelf, what to order, and the button. @param {Json} report */
  #cart(report) {
    const { cart, to_order: toOrder, worst_level: worst } = report.summary;
    const lines = this.#cartLines(report).map((line) => make("li", { class: "line" },
      `${line.quantity} × ${line.sku ?? line.specification}`,
      line.marks.length ? make("div", { class: "place" }, this.#text("forMarks", { x: this.#joined(line.marks) })) : undefined));
    const section = make("section", { class: "block" }, make("h3", {}, this.#text("cart")));
    if (this.#hadStock && !cart.length && toOrder.length) {
      section.append(make("slot", { name: "no-match" }, make("p", {}, this.#text("noMatch"))));
    }
    section.append(make("ul", {}, ...lines));
    if (worst === "stop") {
      section.append(make("p", { class: "level" }, this.#text("notYet")));
      return section;
    }
    const button = make("button", { class: "main of-answer", part: "button", type: "button" }, this.#text("add"));
    const note = make("p", { class: "small added" });
    section.append(make("slot", { name: "cart-button", on: { click: () => this.#addToCart(note) } }, button), note);
    return section;
  }

  /** @param {Json} report @returns {CartLine[]} */
  #cartLines(report) {
    return [
      ...report.summary.cart.map((/** @type {Json} */ { sku, quantity, marks }) => ({ sku, quantity, marks })),
      ...report.summary.to_order.map((/** @type {Json} */ { specification, quantity, marks }) => ({ specification, quantity, marks })),
    ];
  }

  /** @param {HTMLElement} note */
  #addToCart(note) {
    if (!this.#answer || this.#isPrevious()) return;
    const { report, requestId } = this.#answer;
    const detail = { lines: this.#cartLines(report), summary: report.summary, requestId };
    if (!this.#emit("add-to-cart", detail, true)) return;
    note.textContent = this.#text("added");
    this.#say(this.#text("added"));
  }

  // ---- The sheet for the crew

  #sheet() {
    const note = make("p", { class: "small" });
    const button = make("button", { class: "of-answer", part: "button", type: "button", on: { click: () => this.#openSheet(note) } },
      this.#text("sheet"));
    return make("section", { class: "block" }, button, note);
  }

  /**
   * Opens the job sheet in a window of its own, or saves it where none may open.
   *
   * The window opens with the click, for later it would be blocked. It has the policy of this page, which may forbid the style of the
   * sheet as an inline one, and would report it even in a parsed document. So the sheet goes there without, and gets a constructed one.
   * @param {HTMLElement} note
   */
  async #openSheet(note) {
    note.textContent = "";
    const opened = /** @type {(Window & typeof globalThis) | null} */ (open("", "_blank"));
    const body = this.#answer?.body;
    try {
      const url = `${this.api}/v1/installation-plan/job-sheet?lang=${this.#language}`;
      const signal = new AbortController().signal;
      const answer = await ask({ url, body, key: this.publishableKey, type: "text", signal });
      if (opened && !opened.closed) {
        await fillWindow(opened, answer.body);
      } else {
        saveSheet(answer.body);
        note.textContent = this.#text("sheetSaved");
        this.#say(this.#text("sheetSaved"));
      }
    } catch (error) {
      opened?.close();
      this.#failed(error);
      if (isRefusal(error)) note.textContent = this.#text(troubleWord(error.problem));
    }
  }

  /** Of a telephone the answer lies below what is seen. */
  #bringIntoView() {
    const head = this.#root.querySelector(".head");
    if (!head || head.getBoundingClientRect().top < innerHeight * 0.6) return;
    const isCalm = matchMedia("(prefers-reduced-motion: reduce)").matches;
    head.scrollIntoView({ behavior: isCalm ? "auto" : "smooth", block: "start" });
  }
}

/**
 * Waits for what the page promised, but not longer than for the service.
 * @template T
 * @param {Promise<T>} promised @param {AbortSignal} signal @returns {Promise<T>}
 */
function within(promised, signal) {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error("no answer in time")), LIMIT_MS);
    signal.addEventListener("abort", () => reject(signal.reason), { once: true });
    Promise.resolve(promised).then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

/** Whether a fault is about a field, or something inside it. @param {Fault} fault @param {Field} field */
function isAt(fault, field) {
  return fault.pointer === field.pointer || fault.pointer.startsWith(`${field.pointer}/`);
}

/** @param {Window & typeof globalThis} opened @param {string} sheet */
async function fillWindow(opened, sheet) {
  const inline = /<style[^>]*>([^]*?)<\/style>/g;
  const url = URL.createObjectURL(new Blob([sheet.replace(inline, "")], { type: "text/html" }));
  opened.location.replace(url);
  // A window that goes elsewhere loses whoever listens to it.
  while (!opened.closed && (opened.location.href !== url || opened.document.readyState !== "complete")) {
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  URL.revokeObjectURL(url);
  if (opened.closed) return;
  const style = new opened.CSSStyleSheet();
  style.replaceSync([...sheet.matchAll(inline)].map((found) => found[1]).join("\n"));
  opened.document.adoptedStyleSheets = [style];
}

/** @param {string} sheet */
function saveSheet(sheet) {
  const href = URL.createObjectURL(new Blob([sheet], { type: "text/html" }));
  make("a", { href, download: "job-sheet.html" }).click();
  setTimeout(() => URL.revokeObjectURL(href), LIMIT_MS);
}

LoopwrightHelper.define();
