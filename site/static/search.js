// Search as one types: asks /search.json, lists modes, moves by arrow keys; text is only ever set as text.
const box = document.getElementById("search");
const list = document.getElementById("found");
const count = document.getElementById("found-count");
let turn = 0;
let at = -1;

function typing(target) {
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}

document.addEventListener("keydown", (event) => {
  if (event.key === "/" && !typing(event.target) && !event.ctrlKey && !event.metaKey && !event.altKey) {
    event.preventDefault();
    box.focus();
    box.select();
  }
});

function close() {
  list.hidden = true;
  at = -1;
  box.setAttribute("aria-expanded", "false");
  box.removeAttribute("aria-activedescendant");
}

function choose(next) {
  const options = [...list.children];
  if (!options.length) return;
  at = (next + options.length + 1) % (options.length + 1);
  options.forEach((option, index) => option.setAttribute("aria-selected", String(index === at)));
  if (at < options.length) {
    box.setAttribute("aria-activedescendant", options[at].id);
    options[at].scrollIntoView({ block: "nearest" });
  } else {
    box.removeAttribute("aria-activedescendant");
  }
}

function span(text, name) {
  const made = document.createElement("span");
  made.textContent = text;
  if (name) made.className = name;
  return made;
}

function show(told) {
  list.replaceChildren(
    ...told.modes.map((mode, index) => {
      const option = document.createElement("div");
      option.id = `found-${index}`;
      option.setAttribute("role", "option");
      option.setAttribute("aria-selected", "false");
      option.dataset.href = mode.href;
      option.append(
        span(`${mode.maker} ${mode.model} · ${mode.mode}`),
        span(`${mode.footprint} slots · smoothing: ${mode.smoothing_by.join(", ")}`, "soft"),
      );
      option.addEventListener("mousedown", (event) => {
        event.preventDefault();
        location.assign(mode.href);
      });
      return option;
    }),
  );
  at = -1;
  list.hidden = told.modes.length === 0;
  box.setAttribute("aria-expanded", String(!list.hidden));
  const drafts = told.drafts ? `, ${told.drafts} more in drafts` : "";
  count.textContent = `${told.total} mode${told.total === 1 ? "" : "s"}${drafts}`;
}

async function ask() {
  const mine = ++turn;
  const words = box.value.trim();
  if (!words) {
    close();
    count.textContent = "";
    return;
  }
  const answer = await fetch(`/search.json?limit=12&q=${encodeURIComponent(words)}`);
  if (mine !== turn) return;
  if (!answer.ok) {
    close();
    count.textContent = "the search did not answer: press Enter to try it as a page";
    return;
  }
  const told = await answer.json();
  if (mine === turn) show(told);
}

if (box) {
  box.addEventListener("input", ask);
  box.addEventListener("blur", close);
  box.addEventListener("keydown", (event) => {
    if (event.key === "ArrowDown") {
      event.preventDefault();
      choose(at + 1);
    } else if (event.key === "ArrowUp") {
      event.preventDefault();
      choose(at < 0 ? list.children.length - 1 : at - 1);
    } else if (event.key === "Escape") {
      close();
    } else if (event.key === "Enter" && at >= 0 && at < list.children.length) {
      event.preventDefault();
      location.assign(list.children[at].dataset.href);
    }
  });
}
