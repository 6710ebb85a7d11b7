// A chart: slots become addresses as one types; a bar's ranges are read with the pointer or the arrow keys.
const LAST = 512;
const field = document.getElementById("address");
const told = document.getElementById("address-told");

function words(address, slot) {
  const from = address + slot - 2;
  const at = (from % LAST) + 1;
  return from < LAST ? `@ ${at}` : `@ next universe, ${at}`;
}

function addressed() {
  const typed = field.value.trim();
  const address = /^\d{1,3}$/.test(typed) ? Number(typed) : 0;
  const fits = address >= 1 && address <= LAST;
  for (const byte of document.querySelectorAll("[data-slot]")) {
    byte.querySelector(".at").textContent = fits ? words(address, Number(byte.dataset.slot)) : "";
  }
  for (const line of document.querySelectorAll("[data-footprint]")) {
    const footprint = Number(line.dataset.footprint);
    const past = fits && footprint <= LAST && address + footprint - 1 > LAST;
    line.textContent = past && !line.dataset.continues
      ? `From address ${address} its ${footprint} slots run past 512: it starts at ${513 - footprint} at most.`
      : "";
  }
  const own = document.querySelector("[data-slot]");
  if (fits && !own) told.textContent = "its parts have start addresses of their own: see the chart";
  else if (fits) told.textContent = `slots stand with their addresses from ${address}`;
  else told.textContent = typed ? "an address is a whole number from 1 to 512" : "";
  field.toggleAttribute("aria-invalid", Boolean(typed) && !fits);
  const here = new URL(location.href);
  if (fits) here.searchParams.set("address", String(address));
  else here.searchParams.delete("address");
  history.replaceState(null, "", here);
}

field.addEventListener("input", addressed);
field.addEventListener("keydown", (event) => {
  if (event.key !== "/") return;
  event.preventDefault();
  document.getElementById("search").focus();
});
// Whoever has chosen a mode wants its addresses next: the field waits for the number, where there is a keyboard.
const asksAddress = new URL(location.href).searchParams.has("mode") && !field.value;
if (asksAddress && matchMedia("(pointer: fine)").matches) field.focus({ preventScroll: true });

// A part has a start address of its own: a field at its head, for its bytes in the chart and in what to send.
for (const head of document.querySelectorAll("[data-part-head]")) {
  const [, mode] = head.closest("section").id.split("-");
  const label = document.createElement("label");
  const typed = document.createElement("input");
  typed.inputMode = "numeric";
  typed.size = 4;
  typed.maxLength = 3;
  label.className = "part-address";
  label.append("its start address ", typed);
  head.append(" ", label);
  typed.addEventListener("input", () => {
    const address = /^\d{1,3}$/.test(typed.value.trim()) ? Number(typed.value) : 0;
    const fits = address >= 1 && address <= LAST;
    typed.toggleAttribute("aria-invalid", Boolean(typed.value.trim()) && !fits);
    for (const byte of document.querySelectorAll(`#mode-${mode} [data-part-slot], #set-${mode} [data-part-slot]`)) {
      if (byte.dataset.part !== head.dataset.partHead) continue;
      byte.querySelector(".at").textContent = fits ? words(address, Number(byte.dataset.partSlot)) : "";
    }
  });
}

for (const bar of document.querySelectorAll(".bar")) {
  const drawn = [...bar.querySelectorAll("rect")];
  const list = [...bar.parentElement.querySelectorAll("ol.ranges li")];
  const top = Number(bar.dataset.top);
  const line = document.createElement("p");
  line.className = "bar-told";
  line.setAttribute("aria-hidden", "true");
  bar.after(line);
  bar.tabIndex = 0;
  bar.setAttribute("role", "slider");
  bar.setAttribute("aria-label", `${bar.dataset.name}: ranges`);
  bar.setAttribute("aria-valuemin", "1");
  bar.setAttribute("aria-valuemax", String(list.length));
  let at = 0;

  function mark(place) {
    at = Math.max(0, Math.min(list.length - 1, place));
    for (const [index, rect] of drawn.entries()) rect.classList.toggle("now", index === at);
    for (const [index, item] of list.entries()) item.classList.toggle("now", index === at);
    const said = list[at].textContent.trim().replace(/\s+/g, " ");
    line.textContent = said;
    bar.setAttribute("aria-valuenow", String(at + 1));
    bar.setAttribute("aria-valuetext", said);
  }
  function clear() {
    line.textContent = "";
    for (const one of [...drawn, ...list]) one.classList.remove("now");
  }
  bar.setAttribute("aria-valuenow", "1");
  bar.setAttribute("aria-valuetext", list[0].textContent.trim().replace(/\s+/g, " "));
  bar.addEventListener("focus", () => mark(at));
  bar.addEventListener("blur", clear);
  bar.addEventListener("keydown", (event) => {
    const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
    if (step) mark(at + step);
    else if (event.key === "Home") mark(0);
    else if (event.key === "End") mark(list.length - 1);
    else return;
    event.preventDefault();
  });
  bar.addEventListener("pointermove", (event) => {
    const edge = bar.getBoundingClientRect();
    const value = ((event.clientX - edge.left) / edge.width) * (top + 1);
    const found = list.findIndex((item) => value >= item.dataset.from && value < Number(item.dataset.to) + 1);
    if (found >= 0) mark(found);
  });
  bar.addEventListener("pointerleave", () => {
    if (document.activeElement !== bar) clear();
  });
}

addEventListener("beforeprint", () => {
  for (const one of document.querySelectorAll("details:not([open])")) {
    one.open = true;
    one.dataset.shut = "";
  }
});
addEventListener("afterprint", () => {
  for (const one of document.querySelectorAll("details[data-shut]")) {
    one.open = false;
    delete one.dataset.shut;
  }
});
