/** Types of `helper.js`, for pages that are written in TypeScript. */

/** A loop in stock, as requests take it. */
export interface StockItem {
  /** The shop's own number for it. */
  sku: string;
  /** The leg in the direction of driving: `6 ft`. */
  along_travel: string;
  /** The leg across the lane. */
  across_lane: string;
  /** The length of the lead-in on it. */
  lead_in_length: string;
  turns?: number;
  construction?: string;
  /** What one costs, as decimal text. */
  price?: string;
  /** How many are there. Default: enough. */
  available?: number;
}

/** A line for a cart: by the shop's number where it has one, else in words. */
export interface CartLine {
  sku?: string;
  specification?: string;
  quantity: number;
  /** The marks of the loops that it is for; empty for what is for all. */
  marks: string[];
}

/** A job in a few lines, as reports hold it. */
export interface Summary {
  headline: string;
  worst_level?: string;
  lines: { mark: string; role: string; role_label: string; size: string; place: string; turns: number }[];
  cart: { sku: string; quantity: number; marks: string[] }[];
  to_order: { specification: string; quantity: number; marks: string[] }[];
  top_findings: { level: string; marks: string[]; message: string }[];
}

/** A report of `loop-sizing`. The description of the service has all of it. */
export interface Report {
  summary: Summary;
  [member: string]: unknown;
}

/** A request of `loop-sizing`, whole or in part. */
export interface Request {
  opening?: { width?: string; barrier?: string; [member: string]: unknown };
  stock?: StockItem[];
  [member: string]: unknown;
}

/**
 * A problem as the service sends it (RFC 9457). Where there was no answer `status` is 0 and `code` is `offline`, `timeout` or
 * `unreachable`; `stock_unavailable` says that the page's own stock could not be had.
 */
export interface Problem {
  type: string;
  title: string;
  status: number;
  code: string;
  detail: string;
  request_id?: string;
  errors: { pointer: string; code: string; detail: string; hint?: string; suggestion?: string }[];
}

export type Units = "auto" | "us" | "metric";
export type Theme = "auto" | "light" | "dark";

/** Words instead of the helper's own, by their names, for all languages or by language. What protects people cannot be worded anew. */
export type Messages = Record<string, string | Record<string, string>>;

export interface LoopwrightEvents {
  "loopwright-ready": LoopwrightEvent<{ language: string }>;
  "loopwright-input": LoopwrightEvent<{ pointer: string; value: Request }>;
  "loopwright-result": LoopwrightEvent<{ summary: Summary; report: Report; requestId: string }>;
  "loopwright-error": LoopwrightEvent<{ problem: Problem }>;
  /** Cancel it to say yourself what became of the lines. */
  "loopwright-add-to-cart": LoopwrightEvent<{ lines: CartLine[]; summary: Summary; requestId: string }>;
}

/** An event of a helper: it bubbles, and leaves the shadow roots around. */
export class LoopwrightEvent<T> extends CustomEvent<T> {
  constructor(name: string, detail: T, cancelable?: boolean);
}

/** Asks for loops and shows the answer. */
export class LoopwrightHelper extends HTMLElement {
  static readonly observedAttributes: string[];
  /** Defines the element, unless the name is taken. */
  static define(name?: string, registry?: CustomElementRegistry): void;

  /** The service. Default: where the script came from. */
  api: string;
  /** A key for pages. */
  publishableKey: string;
  units: Units;
  theme: Theme;
  /** The width to start with, as a person writes it. */
  openingWidth: string;
  /** What closes the opening, to start with. */
  barrier: string;
  /** Which fields, in which order. */
  fields: string;
  /** What to show of an answer. */
  show: string;
  /** Where the loops in stock are. */
  stockSrc: string;
  /** How many warnings are shown at once. */
  maxFindings: number;

  /**
   * The request: defaults, attributes and what was entered. Setting it replaces what was entered; the very object that came with an event is
   * taken for an echo and changes nothing.
   */
  value: Request;
  /** A request that holds where nothing was entered. */
  defaults: Request;
  /** The loops in stock. */
  stock: StockItem[] | undefined;
  /** Gives the loops in stock for a request. */
  resolveStock: ((request: Request, options: { signal: AbortSignal }) => Promise<StockItem[]>) | undefined;
  messages: Messages;
  /** The last report. */
  readonly report: Report | undefined;

  /** Asks for loops, as the button does. */
  ask(): Promise<void>;

  addEventListener<K extends keyof LoopwrightEvents>(
    type: K, listener: (this: LoopwrightHelper, event: LoopwrightEvents[K]) => void, options?: boolean | AddEventListenerOptions,
  ): void;
  addEventListener<K extends keyof HTMLElementEventMap>(
    type: K, listener: (this: HTMLElement, event: HTMLElementEventMap[K]) => void, options?: boolean | AddEventListenerOptions,
  ): void;
  addEventListener(type: string, listener: EventListenerOrEventListenerObject, options?: boolean | AddEventListenerOptions): void;
}

declare global {
  interface HTMLElementTagNameMap {
    "loopwright-helper": LoopwrightHelper;
  }
  interface HTMLElementEventMap extends LoopwrightEvents {}
  interface DocumentEventMap extends LoopwrightEvents {}
  interface WindowEventMap extends LoopwrightEvents {}
}
