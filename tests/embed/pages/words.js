/** What the shop itself says. */
export const WORDS = {
  en: { name: "Loops for gates and barriers", basket: "Basket" },
  es: { name: "Lazos para portones y barreras", basket: "Carrito" },
  fr: { name: "Boucles pour portails et barrières", basket: "Panier" },
}[document.documentElement.lang];

/** A line of the basket. */
export const line = ({ sku, specification, quantity }) => `${quantity} × ${sku ?? specification}`;
