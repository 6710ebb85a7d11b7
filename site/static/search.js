// Search as one types: hits below the box, chosen with the arrows, opened with Enter; `/` comes back to it.
const box = document.getElementById("search");
const list = document.getElementById("hits");
const told = document.getElementById("hits-told");
const WAIT_MS = 60;
let asked = null;
let timer = 0;
let at = -1;
let shownFor = ""; // the words that the list answers: a choice among older hits would open what nobody asked for
let coming = null;

box.setAttribute("role", "combobox");
box.setAttribute("aria-autocomplete", "list");
box.setAttribute("aria-controls", "hits");
box.setAttribute("aria-expanded", "false");
list.setAttribute("role", "listbox");
list.setAttribute("aria-label", "Modes that answer");

function close() {
  list.hidden = true;
  at = -1;
  box.setAttribute("aria-expanded", "false");
  box.removeAttribute("aria-activedescendant");
}

function mark(place) {
  const hits = list.children;
  if (!hits.length) return;
  at = (place + hits.length) % hits.length;
  for (const [index, hit] of [...hits].entries()) hit.setAttribute("aria-selected", String(index === at));
  box.setAttribute("aria-activedescendant", hits[at].id);
  hits[at].scrollIntoView({ block: "nearest" });
}

function unmark() {
  at = -1;
  for (const hit of list.children) hit.setAttribute("aria-selected", "false");
  box.removeAttribute("aria-activedescendant");
}

function piece(tag, words) {
  const made = document.createElement(tag);
  made.textContent = words;
  return made;
}

function show(answer) {
  list.replaceChildren(
    ...answer.modes.map((mode, index) => {
      const hit = document.createElement("li");
      hit.id = `hit-${index}`;
      hit.setAttribute("role", "option");
      hit.setAttribute("aria-selected", "false");
      hit.dataset.href = mode.href;
      hit.append(
        piece("b", `${mode.maker} ${mode.model}`),
        ` ${mode.mode}`,
        piece("small", `${mode.footprint} slots; smoothing changed by: ${mode.ways}; ${mode.standing}`),
      );
      return hit;
    }),
  );
  unmark();
  list.hidden = !answer.modes.length;
  box.setAttribute("aria-expanded", String(!list.hidden));
  told.textContent = answer.total ? `${answer.total} modes answer` : "nothing answers";
}

async function ask() {
  asked?.abort();
  const words = box.value.trim();
  if (!words) return close();
  asked = new AbortController();
  try {
    const reply = await fetch(`/-/search.json?drafts=1&q=${encodeURIComponent(words)}`, { signal: asked.signal });
    if (!reply.ok || words !== box.value.trim()) return;
    show(await reply.json());
    shownFor = words;
  } catch (error) {
    if (error.name !== "AbortError") close();
  }
}

async function first() {
  clearTimeout(timer);
  await ask();
  mark(0);
  coming = null;
}

box.addEventListener("input", () => {
  unmark();
  clearTimeout(timer);
  timer = setTimeout(ask, WAIT_MS);
});
box.addEventListener("keydown", (event) => {
  if (event.key === "ArrowDown" || event.key === "ArrowUp") {
    event.preventDefault();
    if (list.hidden || shownFor !== box.value.trim()) coming = first();
    else mark(event.key === "ArrowDown" ? at + 1 : at < 0 ? -1 : at - 1);
  } else if (event.key === "Enter" && (coming || at >= 0)) {
    event.preventDefault();
    Promise.resolve(coming).then(() => list.children[at] && location.assign(list.children[at].dataset.href));
  } else if (event.key === "Escape") {
    event.preventDefault();
    close();
  } else if (event.key === "/" && !box.value) {
    event.preventDefault();
  }
});
box.addEventListener("blur", () => setTimeout(close, 150));
list.addEventListener("pointerdown", (event) => {
  const hit = event.target.closest("li");
  if (hit) location.href = hit.dataset.href;
});
document.addEventListener("keydown", (event) => {
  const typing = event.target.closest?.("input, textarea, select, [contenteditable]");
  if (event.key === "/" && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) {
    event.preventDefault();
    box.focus();
    box.select();
  }
});
if (document.body.classList.contains("front")) box.focus({ preventScroll: true });
