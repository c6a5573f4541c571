customElements.define("tern-island", class extends HTMLElement {
  connectedCallback() {
    this.attachShadow({ mode: "open" }).append(document.createElement("loopwright-helper"));
  }
});
