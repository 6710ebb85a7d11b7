// The fade page: asks again while one drags, drops answers that are out of date, plays patches on request alone.
import { flashesMost, player } from "./patches.js";

const WAIT_MS = 70;
const form = document.getElementById("fade");
const problem = document.getElementById("fade-problem");
const cases = document.getElementById("fade-cases");
const play = document.getElementById("play");
let asked = null;
let timer = 0;

for (const field of form.querySelectorAll("[data-slide]")) {
  const slide = document.createElement("input");
  slide.type = "range";
  slide.min = field.min;
  slide.max = { seconds: 20, white: 500, refresh: 60 }[field.name] ?? field.max;
  slide.step = field.dataset.slide;
  slide.value = field.value;
  slide.setAttribute("aria-label", field.parentElement.firstChild.textContent.trim());
  slide.addEventListener("input", () => {
    field.value = slide.value;
    soon();
  });
  field.addEventListener("input", () => (slide.value = field.value));
  const both = document.createElement("span");
  both.className = "slide";
  field.parentElement.replaceWith(both);
  both.append(field.parentElement, slide);
}

function question() {
  return new URLSearchParams([...new FormData(form)].filter(([name, value]) => name && typeof value === "string"));
}

function piece(tag, words) {
  const made = document.createElement(tag);
  made.textContent = words;
  return made;
}

function drawing(markup) {
  const figure = document.createElement("figure");
  const read = new DOMParser().parseFromString(markup.replace("<svg ", '<svg xmlns="http://www.w3.org/2000/svg" '), "image/svg+xml");
  figure.append(document.importNode(read.documentElement, true));
  return figure;
}

function column(told) {
  const made = document.createElement("section");
  made.className = "case";
  const head = piece("h2", told.label);
  if (told.verdict) head.append(" ", piece("small", told.verdict));
  const facts = document.createElement("dl");
  facts.className = "facts";
  for (const [title, figure] of told.figures) facts.append(piece("dt", title), piece("dd", figure));
  const picture = told.svg
    ? drawing(told.svg)
    : piece("p", "Its length is unknown: the figures are a range, and there is no one light to draw.");
  made.append(head, picture, facts);
  return made;
}

function show(answer) {
  document.getElementById("fade-asked").textContent = answer.asked;
  document.getElementById("fade-words").replaceChildren(...answer.sentences.map((words) => piece("p", words)));
  document.getElementById("fade-assumed").replaceChildren(...answer.assumptions.map((words) => piece("li", words)));
  cases.replaceChildren(...answer.cases.map(column));
  patches.take(answer.cases.filter((one) => one.play));
}

async function ask() {
  asked?.abort();
  asked = new AbortController();
  const query = question();
  document.getElementById("fade-json").href = `/-/fade.json?${query}`;
  cases?.classList.add("stale");
  try {
    const reply = await fetch(`/-/fade.json?${query}`, { signal: asked.signal });
    const answer = await reply.json();
    problem.textContent = reply.ok ? "" : answer.error;
    if (!reply.ok) return;
    if (!cases) return location.assign(`/fade?${query}`);
    show(answer);
    cases.classList.remove("stale");
    history.replaceState(null, "", `/fade?${query}`);
  } catch (error) {
    if (error.name !== "AbortError") problem.textContent = "the server did not answer";
  }
}

function soon() {
  clearTimeout(timer);
  timer = setTimeout(ask, WAIT_MS);
}

form.addEventListener("input", (event) => {
  if (event.target.name === "mode") return;
  soon();
});
form.addEventListener("change", (event) => {
  if (event.target.name === "mode") form.requestSubmit();
});

const patches = player({
  holder: document.getElementById("patches"),
  start: document.getElementById("play-start"),
  stop: document.getElementById("play-stop"),
  told: document.getElementById("play-told"),
  limit: document.getElementById("play-limit"),
  flashesMost,
});
if (play) {
  play.hidden = false;
  ask();
}
