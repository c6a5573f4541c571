import { WORDS, line } from "./words.js";

document.getElementById("name").textContent = WORDS.name;
document.getElementById("basket-name").textContent = WORDS.basket;
document.addEventListener("loopwright-add-to-cart", (event) => {
  document.getElementById("basket").replaceChildren(...event.detail.lines.map((one) => {
    const item = document.createElement("li");
    item.textContent = line(one);
    return item;
  }));
});
