// The plan's boxes are remembered by this browser, for this rig's address alone; a plan in the making is asked for again.
const waiting = document.querySelector("[data-again-s]");
if (waiting) setTimeout(() => location.reload(), 1000 * Number(waiting.dataset.againS));

const key = `ticks ${location.pathname}`;
const boxes = [...document.querySelectorAll("[data-tick]")];
const told = document.getElementById("ticks-told");
const clear = document.getElementById("clear-ticks");

function kept() {
  try {
    return new Set(JSON.parse(localStorage.getItem(key) ?? "[]"));
  } catch {
    return new Set();
  }
}

function show() {
  const done = kept();
  for (const box of boxes) {
    box.checked = done.has(box.dataset.tick);
    box.closest("li").classList.toggle("done", box.checked);
  }
  if (told) told.textContent = `${boxes.filter((box) => box.checked).length} of ${boxes.length} done`;
}

function keep() {
  try {
    localStorage.setItem(key, JSON.stringify(boxes.filter((box) => box.checked).map((box) => box.dataset.tick)));
  } catch {
    told.textContent = "this browser keeps nothing: the boxes are forgotten with the page";
    return;
  }
  show();
}

for (const box of boxes) box.addEventListener("change", keep);
if (clear) {
  clear.hidden = false;
  clear.addEventListener("click", () => {
    for (const box of boxes) box.checked = false;
    keep();
  });
}
if (boxes.length) show();
