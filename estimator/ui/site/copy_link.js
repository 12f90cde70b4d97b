// How is the address of the page, which holds the case, put where it can be sent from? Where the browser keeps its
// clipboard to itself, the address stands there marked, to be copied by hand.

const WORDS = "Copy the link";

export default function ({ parentElement }) {
  if (parentElement.querySelector("button")) return;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = WORDS;
  const said = document.createElement("span");
  said.setAttribute("role", "status");
  parentElement.append(button, said);

  button.onclick = async () => {
    try {
      await navigator.clipboard.writeText(location.href);
      said.textContent = "Copied: paste it into a message.";
    } catch {
      const field = document.createElement("input");
      field.readOnly = true;
      field.value = location.href;
      field.setAttribute("aria-label", "Address of this page");
      said.replaceChildren(field);
      field.select();
    }
  };
}
