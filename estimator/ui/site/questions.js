// How do the links of the row carry the case as it is when they are used? The address of the page always holds it.

export default function ({ data, parentElement, setTriggerValue }) {
  let row = parentElement.querySelector("nav");
  if (!row) {
    row = document.createElement("nav");
    row.setAttribute("aria-label", "Questions");
    parentElement.append(row);
  }

  const link = ([to, words]) => {
    const one = document.createElement("a");
    one.textContent = words;
    one.dataset.to = to;
    if (to === data.now) one.setAttribute("aria-current", "page");
    return one;
  };
  row.replaceChildren(...data.near.map(link));
  if (data.far.length) row.append(...more(data.far.map(link)));

  const carry = () => {
    for (const one of row.querySelectorAll("a")) one.href = (one.dataset.to || "./") + location.search;
  };
  carry();
  row.onpointerover = row.onpointerdown = row.oncontextmenu = row.onfocusin = carry;
  row.onclick = (event) => {
    const one = event.target.closest("a");
    const elsewhere = event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey;
    if (!one || elsewhere) return; // the browser opens another window by the link itself
    event.preventDefault();
    setTriggerValue("to", "/" + one.dataset.to);
  };
}

function more(links) {
  const word = document.createElement("button");
  word.type = "button";
  word.textContent = "More";
  word.setAttribute("aria-expanded", "false");
  for (const one of links) one.hidden = true;
  word.onclick = () => {
    const open = word.getAttribute("aria-expanded") === "false";
    word.setAttribute("aria-expanded", String(open));
    for (const one of links) one.hidden = !open;
  };
  return [word, ...links];
}
