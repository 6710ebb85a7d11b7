// The rig's units are filtered as one chooses, and counted; the address keeps the choice.
const form = document.getElementById("unit-filters");
const rows = [...document.querySelectorAll("[data-unit]")];
const told = document.getElementById("units-told");
const fields = [...form.querySelectorAll("select")];

function matches(row, name, value) {
  if (!value) return true;
  return name === "finding" ? row.dataset.finding.split(" ").includes(value) : row.dataset[name] === value;
}

function filter() {
  for (const row of rows) row.hidden = !fields.every((field) => matches(row, field.name, field.value));
  const shown = rows.filter((row) => !row.hidden).length;
  told.textContent = shown === rows.length ? String(shown) : `${shown} of ${rows.length}`;
  document.getElementById("no-units").hidden = shown > 0;
  const asked = new URLSearchParams(fields.filter((field) => field.value).map((field) => [field.name, field.value]));
  document.getElementById("all-units").hidden = !asked.size;
  history.replaceState(null, "", asked.size ? `${form.action}?${asked}` : form.action);
}

form.querySelector("button").hidden = true;
form.addEventListener("change", filter);
