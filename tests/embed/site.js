/**
 * The two origins of every test: the shop's page under a strict policy, and the service.
 *
 * The service is a real instance behind a relay, which hands out the script from this tree, counts what goes over the line, and can be
 * told to fail as networks do.
 */

import { createReadStream, readFileSync } from "node:fs";
import { createServer, request as ask } from "node:http";
import { fileURLToPath } from "node:url";
import { reactModule } from "./react_module.js";

const HELPER = fileURLToPath(new URL("../../src/api/embed/helper.js", import.meta.url));
const PAGES = new URL("pages/", import.meta.url);
export const SCRIPT = "/embed/0.0.0/helper.js";

const TYPES = { html: "text/html; charset=utf-8", js: "text/javascript; charset=utf-8", css: "text/css", json: "application/json" };

/** Listens on a loopback port. */
const listen = (handler, port = 0) =>
  new Promise((resolve) => {
    const server = createServer(handler);
    server.listen(port, "127.0.0.1", () => resolve(server));
  });

/** The service behind a relay. */
export class Relay {
  /** The instance without keys, and the one with them. */
  instances = [];
  /** What was asked: method, path, status and bytes of the answer as they went over the line. */
  calls = [];
  /** Answers instead of the service where it gives `true`. */
  fault = undefined;
  #waiting = new Set();

  static async start(...instances) {
    const relay = new Relay();
    relay.instances = instances.map((instance) => new URL(instance));
    relay.reset();
    relay.server = await listen((request, response) => relay.#answer(request, response));
    relay.origin = `http://127.0.0.1:${relay.server.address().port}`;
    return relay;
  }

  reset() {
    this.instance = this.instances[0];
    this.calls = [];
    this.fault = undefined;
    for (const release of this.#waiting) release();
    this.#waiting.clear();
  }

  /** From here on the instance with keys answers. */
  askForKeys() {
    this.instance = this.instances[1];
  }

  /** Holds an answer back until the test lets it go. */
  hold() {
    let release;
    const held = new Promise((resolve) => (release = resolve));
    this.#waiting.add(release);
    return { held, release };
  }

  async #answer(request, response) {
    const call = { method: request.method, path: request.url, status: 0, bytes: 0, body: "", authorization: request.headers.authorization };
    this.calls.push(call);
    if (request.url.startsWith("/embed/")) {
      call.status = 200;
      response.writeHead(200, { "content-type": TYPES.js, "access-control-allow-origin": "*" });
      createReadStream(HELPER).on("data", (part) => (call.bytes += part.length)).pipe(response);
      return;
    }
    const parts = [];
    for await (const part of request) parts.push(part);
    call.body = Buffer.concat(parts).toString();
    if (request.method !== "OPTIONS" && this.fault && (await this.fault(call, response, this.#headers(request)))) return;
    this.#pass(request, response, call);
  }

  /** The headers that a page of the shop needs to read an answer. */
  #headers(request) {
    return {
      "access-control-allow-origin": request.headers.origin ?? "*",
      "access-control-expose-headers": "retry-after, x-request-id",
      "x-request-id": "of-the-relay",
    };
  }

  #pass(request, response, call) {
    const options = {
      host: this.instance.hostname, port: this.instance.port, method: request.method, path: request.url, headers: { ...request.headers },
    };
    options.headers.host = this.instance.host;
    const upstream = ask(options, (answer) => {
      const parts = [];
      answer.on("data", (part) => parts.push(part));
      answer.on("end", () => {
        const body = Buffer.concat(parts);
        call.status = answer.statusCode;
        call.bytes = body.length;
        if (response.destroyed) return;
        response.writeHead(answer.statusCode, { ...answer.headers, "content-length": body.length });
        response.end(body);
      });
    });
    upstream.on("error", () => response.destroy());
    upstream.end(call.body);
  }
}

/** The pages of the shop. */
export class Shop {
  /** Violations that browsers have reported. */
  reports = [];

  static async start(port, relay) {
    const shop = new Shop();
    shop.relay = relay;
    shop.server = await listen((request, response) => shop.#answer(request, response), port);
    shop.origin = `http://127.0.0.1:${port}`;
    return shop;
  }

  /** What a careful shop permits: its own files, and one service. */
  get policy() {
    const api = this.relay.origin;
    return [
      "default-src 'none'", `script-src 'self' ${api}`, "style-src 'self'", `connect-src 'self' ${api}`, "img-src 'self'", "base-uri 'none'",
      "form-action 'none'", "require-trusted-types-for 'script'", "trusted-types 'none'", "report-uri /reports",
    ].join("; ");
  }

  #answer(request, response) {
    const { pathname, searchParams } = new URL(request.url, this.origin);
    if (pathname === "/reports") {
      let text = "";
      request.on("data", (part) => (text += part)).on("end", () => this.reports.push(text));
      response.writeHead(204).end();
      return;
    }
    const type = TYPES[pathname.split(".").pop()];
    try {
      const known = { api: this.relay.origin, script: this.relay.origin + SCRIPT, lang: "en", attributes: "", inside: "", ...Object.fromEntries(searchParams) };
      const source = pathname === "/react.js" ? reactModule() : readFileSync(new URL(pathname.slice(1), PAGES), "utf8");
      const text = pathname === "/react.js" ? source : source.replace(/\{\{(\w+)\}\}/g, (_, name) => known[name]);
      response.writeHead(200, { "content-type": type, "content-security-policy": this.policy }).end(text);
    } catch {
      response.writeHead(404).end();
    }
  }
}
