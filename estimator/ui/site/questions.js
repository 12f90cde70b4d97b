// How do the links of the row carry the case as it is when they are used, and the address of the page with them?
//
// The line that names the last change holds the case. A browser takes as long over a new address as over a new answer,
// so the answer is drawn first: the address follows a moment later, or at once when somebody does anything more.

const MOMENT = 60; // ms
const CASE = "case"; // as in estimator/ui/link.py

const PHONE = matchMedia("(max-width: 640px)");
const CALM = matchMedia("(prefers-reduced-motion: reduce)");
const ON_A_PHONE = 7; // links that take two lines there; the rest stand behind one word

export default function ({ data, parentElement, setTriggerValue }) {
  let row = parentElement.querySelector("nav");
  if (!row) {
    row = document.createElement("nav");
    row.setAttribute("aria-label", "Questions");
    parentElement.append(row);
    follow(parentElement.closest(".st-key-top"));
    calm();
  }

  const link = ([to, words]) => {
    const one = document.createElement("a");
    one.textContent = words;
    one.dataset.to = to;
    if (to === data.now) one.setAttribute("aria-current", "page");
    return one;
  };
  const lay = () => {
    const far_off = data.near.findIndex(([to]) => to === data.now) >= ON_A_PHONE; // and takes the place of another
    const fits = ([to], at) => !PHONE.matches || at < ON_A_PHONE - far_off || to === data.now;
    const near = data.near.filter(fits);
    const far = [...data.near.filter((one) => !near.includes(one)), ...data.far];
    row.replaceChildren(...near.map(link));
    if (far.length) row.append(...more(far.map(link)));
    carry();
  };
  const carry = () => {
    for (const one of row.querySelectorAll("a")) one.href = (one.dataset.to || "./") + location.search;
  };
  lay();
  PHONE.onchange = lay;
  row.onpointerover = row.onpointerdown = row.oncontextmenu = row.onfocusin = carry;
  row.onclick = (event) => {
    const one = event.target.closest("a");
    const elsewhere = event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey;
    if (!one || elsewhere) return; // the browser opens another window by the link itself
    event.preventDefault();
    setTriggerValue("to", "/" + one.dataset.to);
  };
}

function follow(top) {
  let seen, waiting;
  const tell = () => {
    if (waiting === undefined) return;
    clearTimeout(waiting);
    waiting = undefined;
    const asked = new URLSearchParams(location.search);
    if ((asked.get(CASE) ?? "") === seen) return;
    if (seen) asked.set(CASE, seen);
    else asked.delete(CASE);
    history.pushState({}, "", location.pathname + (String(asked) && "?" + asked) + location.hash);
  };
  const look = () => {
    const said = top.querySelector("[data-case]")?.dataset.case;
    if (said === seen) return;
    clearTimeout(waiting);
    seen = said;
    waiting = said === undefined ? undefined : setTimeout(tell, MOMENT);
  };
  new MutationObserver(look).observe(top, { childList: true, subtree: true });
  for (const sooner of ["pointerdown", "keydown", "pagehide", "visibilitychange"]) addEventListener(sooner, tell, true);
  look();
}

// A fold of the framework grows for half a second by its own script, which no rule of style can keep from moving.
function calm() {
  const folds = HTMLDetailsElement.prototype;
  if (Object.hasOwn(folds, "animate")) return;
  folds.animate = function (frames, timing) {
    return Element.prototype.animate.call(this, frames, CALM.matches ? 0 : timing);
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
